/** The carriage set to plain or to pattern, and the yarns in its feeders. */
import type { Slot } from '../../bed/index.ts';
import type { BallNumbers } from './ball-numbers.ts';
import { finishingMm, TAIL_MM } from './ends.ts';
import type { KnittedRow, Supply } from './knitted-rows.ts';
import { isCutAside, waitsAfter, type NextUses } from './next-uses.ts';
import type { Act, Feeder } from './types.ts';
import type { Work } from './work.ts';

/** The carriage to plain where a pattern has ended, or for a row of one yarn in it. */
export function setPlain(work: Work): void {
  for (let reading = 1; reading <= work.last; reading++) {
    const next = work.row(reading + 1)?.carriage ?? 'plain';
    if (work.row(reading)?.carriage === 'pattern' && next === 'plain') {
      work.do(reading, { kind: 'carriage', set: 'plain' });
    }
  }
}

export function setPattern(work: Work): void {
  for (const { row, carriage } of work.rows) {
    const before = work.row(row - 1)?.carriage ?? 'plain';
    if (carriage === 'pattern' && before === 'plain') work.do(row - 1, { kind: 'carriage', set: 'pattern' });
  }
}

/** What goes into the feeders and comes out of them, by reading. */
export interface Feeding {
  readonly out: readonly (readonly [reading: number, act: Act])[];
  readonly into: readonly (readonly [reading: number, act: Act])[];
}

/**
 * Each row has in its feeders what it knits and no more. What comes out waits
 * for its next row where that is near, be it fed there or laid by hand, else it
 * is cut; so is everything at the end.
 */
export function feedingOf(work: Work, uses: NextUses, numbers: BallNumbers): Feeding {
  const out: (readonly [number, Act])[] = [];
  const into: (readonly [number, Act])[] = [];
  /** Whether one comes out for another, or to go in again elsewhere. */
  const changes = (reading: number, was: Supply | null | undefined, is: Supply | null | undefined): boolean =>
    was !== is || (!!was && isCutAside(work.plan, reading, was));
  const named = (supply: Supply) => ({ yarn: supply.yarn, ball: numbers.get(supply) ?? null });
  let before: KnittedRow | undefined;
  for (const row of [...work.rows, undefined]) {
    const reading = before?.row ?? 0;
    // The second feeder is emptied first: it is the one that changes more often.
    for (const feeder of [2, 1] as const) {
      const [was, is] = [before && inFeeder(before, feeder), row && inFeeder(row, feeder)];
      if (!was || !before || !changes(reading, was, is)) continue;
      const how = waitsAfter(work, uses, reading, was)
        ? { waitsAt: lastKnit(before, feeder), tailMm: null }
        : { waitsAt: 'cut' as const, tailMm: isCastOffWith(work, reading, feeder) ? finishingMm(work) : TAIL_MM };
      out.push([reading, { kind: 'unthread', feeder, ...named(was), ...how }]);
    }
    for (const feeder of [1, 2] as const) {
      const [was, is] = [before && inFeeder(before, feeder), row && inFeeder(row, feeder)];
      if (is && changes(reading, was, is)) into.push([reading, { kind: 'thread', feeder, ...named(is) }]);
    }
    before = row;
  }
  return { out, into };
}

/** The first feeder's yarn hangs at the edge from where the piece is cast off. */
function isCastOffWith({ piece, last }: Work, reading: number, feeder: Feeder): boolean {
  return piece.ends === 'cast-off' && reading === last && feeder === 1;
}

export function inFeeder(row: KnittedRow, feeder: Feeder): Supply | null {
  return feeder === 1 ? row.first : row.second;
}

/** The needle at which a yarn left its feeder: the last that it knitted, main's being at the edge. */
function lastKnit({ from, edges, contrast, carriage }: KnittedRow, feeder: Feeder): Slot {
  const run = carriage === 'pattern' && feeder === 2 ? contrast : [edges];
  return (from === 'left' ? run.at(-1)?.last : run[0]?.first) ?? edges.first;
}
