/**
 * The cells that a reading was not sure of, on the motif that it became, until
 * somebody has settled them.
 *
 * They belong to the motif for as long as the window is open: not to the file,
 * nor to what is kept for recovery. Each state of the project has its own, so
 * that undo brings the mark of a cell back whose paint it takes back, and redo
 * settles it again. A cell that is right as it was read changes nothing of the
 * project: it is settled in all states, and {@link Doubts.bringBack} is its way
 * back.
 */
import type { MotifId } from '@shared/motif/index.ts';
import type { Cell, Grid } from '@shared/grid/index.ts';
import type { Picture } from '@shared/reading/index.ts';
import type { Session } from '../../session/session.ts';
import type { Live } from '../../ui/live.ts';
import { stillOpen, type OpenDoubts } from './open-doubts.ts';

/** What a reading leaves behind for the motif that it became. */
export interface ReadDoubts {
  readonly motif: MotifId;
  /** Columns and rows as read. */
  readonly width: number;
  readonly height: number;
  /** Row by row from the lower left, by their places in the grid. */
  readonly doubts: readonly { readonly at: number; /** 0 … 1 */ readonly sure: number }[];
  /** The chart on the photo, straightened. */
  readonly straight: Picture;
}

/** A cell to be settled. */
export interface CellToSettle {
  /** Its number among those of the reading. */
  readonly doubt: number;
  /** Where it is on the motif, and was on the photo. */
  readonly cell: Cell;
  readonly onPhoto: Cell;
  readonly sure: number;
}

/** What is to be settled on the motif that is looked at. */
export interface ToSettle {
  readonly read: ReadDoubts;
  /** Row by row as they were read. */
  readonly cells: readonly CellToSettle[];
  /** How many were said to be right as read. */
  readonly asRead: number;
  /** The motif was redrawn, and which cells they are is not known any more. */
  readonly isLost: boolean;
}

interface Kept {
  readonly read: ReadDoubts;
  /** The motif as it was when it was last looked at here. */
  grid: Grid;
  /** The state of the project that the reading made; those before it have no doubts. */
  readonly from: number;
  /** The open ones in each state from there on. */
  readonly inState: Map<number, OpenDoubts>;
  /** Numbers of those that are right as read, in the order in which that was said. */
  readonly asRead: number[];
}

/** Readings of one motif that are kept, each with its photo. */
const MOST_READINGS = 3;

/** When more states are remembered than this, those are forgotten that cannot be gone back to: the samples of a stroke. */
const MANY_STATES = 2048;

export class Doubts {
  /** Of each motif its readings, the latest last: undo may come back to one before. */
  readonly #kept = new Map<MotifId, readonly Kept[]>();
  readonly #shown: Live<ToSettle | null>;
  #opened: number;
  #state: number;
  #motif: MotifId;

  constructor(private readonly session: Session) {
    this.#shown = session.live<ToSettle | null>(null);
    this.#opened = session.opened;
    this.#state = session.state;
    this.#motif = session.motifId;
    session.subscribe(() => this.#follow());
  }

  /** What is to be settled on the motif that is looked at; null where nothing is. */
  get now(): ToSettle | null {
    return this.#shown.now;
  }

  /** How many states are remembered, of all motifs; for tests. */
  get remembered(): number {
    return [...this.#kept.values()].flat().reduce((sum, { inState }) => sum + inState.size, 0);
  }

  /** The motif was just read, and these cells are doubtful. */
  keep(read: ReadDoubts): void {
    const motif = this.session.project.motifs.find(({ id }) => id === read.motif);
    if (motif && read.doubts.length > 0) {
      const open = read.doubts.map(({ at }, doubt) => ({ doubt, at }));
      const { state } = this.session;
      const kept: Kept = { read, grid: motif.grid, from: state, inState: new Map([[state, open]]), asRead: [] };
      const before = this.#kept.get(read.motif) ?? [];
      this.#kept.set(read.motif, [...before, kept].slice(-MOST_READINGS));
    }
    this.#show();
  }

  /** The cell is right as it was read. */
  takeAsRead(doubt: number): void {
    const kept = this.#current();
    if (!kept || kept.asRead.includes(doubt)) return;
    kept.asRead.push(doubt);
    this.#show();
  }

  /** All that are open are right as they were read. */
  takeAllAsRead(): void {
    const kept = this.#current();
    kept?.asRead.push(...(this.now?.cells ?? []).map(({ doubt }) => doubt));
    this.#show();
  }

  /** Asks again about the last that was said to be right; its number, or null if there is none. */
  bringBack(): number | null {
    const doubt = this.#current()?.asRead.pop() ?? null;
    this.#show();
    return doubt;
  }

  /** Asks no more about the motif that is looked at. */
  letGo(): void {
    this.#kept.delete(this.session.motifId);
    this.#show();
  }

  #follow(): void {
    const { opened, state, motifId } = this.session;
    if (opened !== this.#opened) this.#kept.clear();
    else if (state !== this.#state)
      for (const [id, readings] of this.#kept) for (const kept of readings) this.#step(id, kept);
    else if (motifId === this.#motif) return;
    this.#opened = opened;
    this.#state = state;
    this.#motif = motifId;
    this.#show();
  }

  /** The project went to another state: one that was there before, or one that a change has just made. */
  #step(id: MotifId, kept: Kept): void {
    const { session } = this;
    const grid = session.project.motifs.find((motif) => motif.id === id)?.grid;
    const open = kept.inState.get(this.#state);
    if (session.state > kept.from && !kept.inState.has(session.state) && open) {
      const isKnown = typeof open !== 'string' && grid !== undefined;
      kept.inState.set(
        session.state,
        isKnown ? stillOpen(open, kept.grid, grid, session.undoName) : grid ? open : 'over',
      );
      if (kept.inState.size > MANY_STATES) {
        const atHand = session.statesAtHand;
        for (const state of kept.inState.keys()) if (!atHand.has(state)) kept.inState.delete(state);
      }
    }
    if (grid) kept.grid = grid;
  }

  #show(): void {
    this.#shown.now = this.#toSettle();
  }

  /** The reading that the motif which is looked at comes from, as it is now. */
  #current(): Kept | undefined {
    const { motifId, state } = this.session;
    return this.#kept.get(motifId)?.findLast(({ inState }) => inState.has(state));
  }

  #toSettle(): ToSettle | null {
    const { motif, state } = this.session;
    const kept = this.#current();
    const open = kept?.inState.get(state);
    if (!kept || !open || open === 'over') return null;
    const { read } = kept;
    if (open === 'lost') return { read, cells: [], asRead: 0, isLost: true };
    const settled = new Set(kept.asRead);
    const cells = open
      .filter(({ doubt }) => !settled.has(doubt))
      .map(({ doubt, at }): CellToSettle => {
        const was = read.doubts[doubt]?.at ?? 0;
        return {
          doubt,
          cell: cellAt(at, motif.grid.width),
          onPhoto: cellAt(was, read.width),
          sure: read.doubts[doubt]?.sure ?? 0,
        };
      });
    return { read, cells, asRead: settled.size, isLost: false };
  }
}

function cellAt(place: number, width: number): Cell {
  return { column: place % width, row: Math.floor(place / width) };
}
