/**
 * Two photos of one chart being put together: where they meet is looked for,
 * and a person says that it is so, or where they do.
 */
import { outcome, type Problem } from '@shared/problem/index.ts';
import {
  differingIn,
  JOIN_SIDES,
  joinCharts,
  mostShared,
  type ChartReading,
  type JoinSide,
  type Overlap,
  type Picture,
  type Progress,
  type SameYarns,
  type TriedOverlap,
} from '@shared/reading/index.ts';
import { WorkerClient } from '../../worker/index.ts';
import { pictureOfBoth, sharedCells, type ReadPart, type SharedCells } from './read-part.ts';
import { SettledCells } from './settled-cells.svelte.ts';

export class JoinModel {
  /** How they may meet, the likeliest first; null while that is looked for, or was given up. */
  ways = $state.raw<readonly TriedOverlap[] | null>(null);
  overlap = $state.raw<Overlap | null>(null);
  /** A person said that this is how they meet. */
  isConfirmed = $state(false);
  /** Why they cannot be put together. */
  problem = $state.raw<Problem | null>(null);
  progress = $state.raw<Progress | null>(null);
  readonly cells = new SettledCells();
  /** The most that can be shared at each side. */
  readonly most: Readonly<Partial<Record<JoinSide, number>>>;
  readonly #worker = new WorkerClient('join', null);

  constructor(
    readonly first: ReadPart,
    readonly second: ReadPart,
    private readonly by: SameYarns,
  ) {
    const most = outcome(() => mostShared(first.reading.grid, second.reading.grid));
    this.most = most.ok ? most.value : {};
    if (most.ok) this.#seek();
    else this.problem = most.problem;
  }

  readonly #joined = $derived.by(() => {
    const { overlap } = this;
    return overlap && outcome(() => joinCharts(this.first.reading, this.second.reading, overlap, this.by));
  });
  readonly reading: ChartReading | null = $derived(this.#joined?.ok ? this.cells.in(this.#joined.value) : null);
  readonly refused: Problem | null = $derived(
    this.problem ?? (this.#joined && !this.#joined.ok ? this.#joined.problem : null),
  );
  readonly straight: Picture | null = $derived.by(() =>
    this.overlap && this.#joined?.ok ? pictureOfBoth(this.first, this.second, this.overlap) : null,
  );
  /** Cells that both show and that differ. */
  readonly differing: number = $derived.by(() =>
    this.overlap ? differingIn(this.first.reading, this.second.reading, this.overlap, this.by) : 0,
  );
  readonly isReady: boolean = $derived(this.isConfirmed && this.reading !== null && this.progress === null);

  /** What both make, for a further photo to be joined to; null while it is not settled how they meet. */
  get part(): ReadPart | null {
    const { reading, straight } = this;
    if (!this.isReady || !reading || !straight) return null;
    return { reading, straight, settled: this.first.settled + this.second.settled + this.cells.many };
  }

  readonly shared: SharedCells | null = $derived.by(() =>
    this.overlap ? sharedCells(this.first.reading.grid, this.second.reading.grid, this.overlap) : null,
  );

  /** The sides at which they can meet. */
  get sides(): readonly JoinSide[] {
    return JOIN_SIDES.filter((side) => this.most[side] !== undefined);
  }

  /** They meet like this: a person says so. */
  meet(side: JoinSide, shared: number): void {
    const most = this.most[side];
    if (most === undefined) return;
    this.#lay({ side, shared: Math.max(1, Math.min(most, shared)) });
    this.isConfirmed = true;
  }

  /** They meet as was found. */
  confirm(): void {
    this.isConfirmed = this.overlap !== null;
  }

  /** Gives up looking; where they meet can be said all the same. */
  stop(): void {
    this.#worker.stop();
    this.#found([]);
  }

  close(): void {
    this.#worker.close();
  }

  #seek(): void {
    this.progress = { stage: 'join', done: 0 };
    const { first, second, by } = this;
    this.#worker.ask({ first: first.reading, second: second.reading, by }, null, {
      progress: (progress) => (this.progress = progress),
      answer: (ways) => {
        this.ways = ways;
        this.#found(ways);
      },
      failed: (problem) => {
        this.problem = problem;
        this.progress = null;
      },
    });
  }

  #found([best]: readonly TriedOverlap[]): void {
    this.progress = null;
    const [side] = this.sides;
    if (best) this.#lay({ side: best.side, shared: best.shared });
    else if (side) this.#lay({ side, shared: 1 });
  }

  #lay(overlap: Overlap): void {
    if (overlap.side === this.overlap?.side && overlap.shared === this.overlap.shared) return;
    this.overlap = overlap;
    this.cells.forget();
  }
}
