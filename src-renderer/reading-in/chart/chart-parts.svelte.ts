/**
 * A chart read photo by photo. Each photo is read by itself; a further one is
 * then put together with what was read before it. What came before stays as it
 * was, to be gone back to.
 */
import type { Corners } from '@shared/reading/index.ts';
import type { DecodedPicture } from '../../pictures/decode.ts';
import { ChartReadingModel } from './chart-reading-model.svelte.ts';
import { CornerClicks } from './corner-clicks.svelte.ts';
import { JoinModel } from './join-model.svelte.ts';
import type { ReadPart } from './read-part.ts';

export interface PhotoStep {
  readonly kind: 'photo';
  readonly model: ChartReadingModel;
  readonly clicks: CornerClicks;
  /** What was read before it; null for the first photo. */
  readonly before: ReadPart | null;
}

export interface JoinStep {
  readonly kind: 'join';
  readonly model: JoinModel;
}

export type Step = PhotoStep | JoinStep;

export class ChartParts {
  readonly first: PhotoStep;
  #later = $state.raw<readonly Step[]>([]);

  constructor(
    picture: DecodedPicture,
    private readonly announce: (said: string) => void,
  ) {
    this.first = this.#photo(new ChartReadingModel(picture), null);
  }

  readonly now: Step = $derived.by(() => this.#later.at(-1) ?? this.first);

  /** What is read; null while it is not whole, or not confirmed. */
  readonly part: ReadPart | null = $derived.by(() => {
    const { now } = this;
    if (now.kind === 'join') return now.model.part;
    const { reading, answer, isReady, cells } = now.model;
    return isReady && reading && answer ? { reading, straight: answer.straight, settled: cells.many } : null;
  });

  /** How many cells a person has settled in all that would be lost. */
  get settled(): number {
    const { now } = this;
    if (now.kind === 'photo') return now.model.cells.many + (now.before?.settled ?? 0);
    return now.model.first.settled + now.model.second.settled + now.model.cells.many;
  }

  /** The chart goes on over a further photo. */
  addPhoto(picture: DecodedPicture): void {
    const before = this.part;
    if (!before) return;
    this.#later = [...this.#later, this.#photo(new ChartReadingModel(picture, this.first.model.settings), before)];
  }

  /** Puts the photo that was read last together with what was read before. */
  join(): void {
    const { now, part } = this;
    if (now.kind !== 'photo' || !now.before || !part) return;
    // Symbols in one ink have no colours by which they could be known again.
    const by = this.first.model.settings.kind === 'symbols' ? 'places' : 'colours';
    this.#later = [...this.#later, { kind: 'join', model: new JoinModel(now.before, part, by) }];
  }

  /** Back to what was before: from where photos meet to the further photo, from there to what was read before it. */
  back(): void {
    this.#later.at(-1)?.model.close();
    this.#later = this.#later.slice(0, -1);
  }

  close(): void {
    for (const { model } of [this.first, ...this.#later]) model.close();
  }

  #photo(model: ChartReadingModel, before: ReadPart | null): PhotoStep {
    const place = (corners: Corners): void => model.place(corners);
    return { kind: 'photo', model, clicks: new CornerClicks(place, (said) => this.announce(said)), before };
  }
}
