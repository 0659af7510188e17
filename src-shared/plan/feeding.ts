/** Which yarn is where, row by row: in which feeder, or laid by hand. Read from the running order. */
import type { Act, ActOf, Holding, RunningOrder, YarnIndex } from './running-order/types.ts';

/** From where a row takes its yarns. */
export interface Feeding {
  readonly feeders: Holding['feeders'];
  /** Yarns that are laid by hand, in the order of the palette. */
  readonly byHand: readonly YarnIndex[];
}

/** Neighbouring rows that are fed alike. */
export interface FeedingRun extends Feeding {
  readonly first: number;
  readonly last: number;
}

/** From the lowest row up, without a gap. */
export function feedingRuns(order: RunningOrder): FeedingRun[] {
  const runs: FeedingRun[] = [];
  for (const part of order) {
    const [first, last] = part.kind === 'stop' ? [part.row, part.row] : [part.first, part.last];
    if (first === null || last === null) continue;
    const byHand = part.kind === 'stop' ? laidIn(part.acts) : [];
    const before = runs.at(-1);
    const { feeders } = part;
    if (before && isFedAlike(before, { feeders, byHand })) runs[runs.length - 1] = { ...before, last };
    else runs.push({ first, last, feeders, byHand });
  }
  return runs;
}

function laidIn(acts: readonly Act[]): YarnIndex[] {
  const lays = acts.filter((act): act is ActOf<'lay'> => act.kind === 'lay');
  return [...new Set(lays.map(({ yarn }) => yarn))].sort((a, b) => a - b);
}

function isFedAlike(one: Feeding, other: Feeding): boolean {
  return keyOf(one) === keyOf(other);
}

function keyOf({ feeders, byHand }: Feeding): string {
  return `${feeders[1]} ${feeders[2]} ${byHand.join(' ')}`;
}

/** A line of the table: all rows of it are fed alike. */
export interface FeedingLine extends Feeding {
  /** From the lowest up. */
  readonly rows: readonly (readonly [first: number, last: number])[];
}

/** More runs than this are told by what is fed, each with all of its rows. */
const MOST_IN_ORDER = 14;

/** The lines of a table: run by run up the piece, or, where that makes many, one for each way of feeding, by its lowest row. */
export function feedingLines(runs: readonly FeedingRun[]): FeedingLine[] {
  if (runs.length <= MOST_IN_ORDER) {
    return runs.map(({ first, last, feeders, byHand }) => ({ feeders, byHand, rows: [[first, last]] }));
  }
  const lines = new Map<string, FeedingLine>();
  for (const run of runs) {
    const { feeders, byHand, first, last } = run;
    const line = lines.get(keyOf(run));
    lines.set(keyOf(run), { feeders, byHand, rows: [...(line?.rows ?? []), [first, last]] });
  }
  return [...lines.values()];
}
