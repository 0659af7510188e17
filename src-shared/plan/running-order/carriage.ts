/** The carriage set to plain or to pattern, and the yarns in its feeders. */
import type { Slot } from '../../bed/index.ts';
import { isCarriedUp } from '../../strands/index.ts';
import { finishingMm, TAIL_MM } from './ends.ts';
import type { KnittedRow, Supply } from './knitted-rows.ts';
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
 * for its next row where that is near, else it is cut; so is everything at the end.
 */
export function feedingOf(work: Work): Feeding {
  const out: (readonly [number, Act])[] = [];
  const into: (readonly [number, Act])[] = [];
  const next = nextRows(work);
  let before: KnittedRow | undefined;
  for (const row of [...work.rows, undefined]) {
    const reading = before?.row ?? 0;
    // The second feeder is emptied first: it is the one that changes more often.
    for (const feeder of [2, 1] as const) {
      const [was, is] = [before && inFeeder(before, feeder), row && inFeeder(row, feeder)];
      if (!was || !before || was === is) continue;
      const waits = isNear(work, reading, next[reading - 1]?.get(was) ?? null);
      const how = waits
        ? { waitsAt: lastKnit(before, feeder), tailMm: null }
        : { waitsAt: 'cut' as const, tailMm: isCastOffWith(work, reading, feeder) ? finishingMm(work) : TAIL_MM };
      out.push([reading, { kind: 'unthread', feeder, yarn: was.yarn, ...how }]);
    }
    for (const feeder of [1, 2] as const) {
      const [was, is] = [before && inFeeder(before, feeder), row && inFeeder(row, feeder)];
      if (is && was !== is) into.push([reading, { kind: 'thread', feeder, yarn: is.yarn }]);
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

/** For each row (index 0 is row 1) the next one in which a supply of it is in a feeder again. */
function nextRows({ rows }: Work): ReadonlyMap<Supply, number>[] {
  const found: Map<Supply, number>[] = [];
  const seen = new Map<Supply, number>();
  for (let index = rows.length - 1; index >= 0; index--) {
    const { row, first, second } = rows[index] as KnittedRow;
    const next = new Map<Supply, number>();
    for (const supply of [first, second]) {
      if (!supply) continue;
      const later = seen.get(supply);
      if (later !== undefined) next.set(supply, later);
    }
    for (const supply of [first, second]) if (supply) seen.set(supply, row);
    found[index] = next;
  }
  return found;
}

function isNear({ plan }: Work, from: number, to: number | null): boolean {
  return to !== null && isCarriedUp(plan.gauges, from, to);
}

/** The needle at which a yarn left its feeder: the last that it knitted, main's being at the edge. */
function lastKnit({ from, edges, contrast, carriage }: KnittedRow, feeder: Feeder): Slot {
  const run = carriage === 'pattern' && feeder === 2 ? contrast : [edges];
  return (from === 'left' ? run.at(-1)?.last : run[0]?.first) ?? edges.first;
}
