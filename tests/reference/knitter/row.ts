/** One pass of the carriage. */
import { fabricRow } from './fabric.ts';
import { labelOf, labelsOf, other } from './needles.ts';
import { refuse } from './refusal.ts';
import { fromFirstToLast, wayOver } from './way.ts';
import type { RowLaid, Workplace } from './workplace.ts';

/** Knits the coming row; refuses where a stitch would drop or two yarns would be caught. */
export function knitRow(place: Workplace): void {
  const { bed, yarns, strands, side, notes } = place;
  if (place.hasNothingCastOn || bed.isEmpty) refuse('there is nothing on the needles to knit');
  if (place.machine.weights && !place.hasWeights) refuse('no weights hang: the loops would ride up');
  if (place.isJoining && place.carriage === 'pattern') refuse('the row that joins the hem is knitted plain');

  const row = place.counter + 1;
  if (place.choice === 'made') {
    const { edgesLeft } = place.choosing;
    if (!edgesLeft.some((edge) => bed.isInWork(edge))) place.idle.endNeedles.push(row);
    if (bed.forward.length === 0 && strands.laid.size === 0) place.idle.carriage.push(row);
  }
  const across = bed.inWork.sort((a, b) => (side === 'left' ? a - b : b - a));
  const inFeeders = new Set([yarns.in(1), yarns.in(2)].filter((yarn) => yarn !== null));
  const knitted = place.carriage === 'plain' ? plainYarns(place, across) : patternYarns(place, across);

  const lastOf = new Map<1 | 2, number>();
  for (const [needle, { yarn, feeder }] of knitted) {
    bed.knit(needle, yarn);
    if (feeder) lastOf.set(feeder, needle);
  }
  for (const [feeder, needle] of lastOf) {
    const isKnitted = (one: number): boolean => knitted.get(one)?.feeder === feeder;
    const over = feeder === 1 ? across : fromFirstToLast(across, isKnitted);
    yarns.knitted(feeder, needle, wayOver(row, over, isKnitted));
  }
  const laidNow = [...strands.balls].map(([ball, hooks]) => ({ ball: ball as string | null, needles: [...hooks] }));
  for (const [ball, hooks] of strands.balls) {
    const isKnitted = (one: number): boolean => hooks.includes(one);
    yarns.knittedBall(ball, wayOver(row, fromFirstToLast(across, isKnitted), isKnitted));
  }
  strands.knitIn();
  place.fresh.clear();
  place.isJoining = false;

  const yarnOf = new Map([...knitted].map(([needle, { yarn }]) => [needle, yarn] as const));
  notes.fabric.push(fabricRow(row, side, yarnOf));
  if (place.tension) notes.tensions.push({ row, ...place.tension });
  const fed = ([1, 2] as const).map((feeder) => ({
    ball: yarns.ballIn(feeder),
    needles: [...knitted].flatMap(([needle, one]) => (one.feeder === feeder ? [needle] : [])),
  }));
  const lengths = [...fed, ...laidNow].flatMap(({ ball, needles }) => {
    const yarn = yarnOf.get(needles[0] as number);
    return yarn === undefined ? [] : [{ yarn, ball, needles: new Set(needles) }];
  });
  place.lastRow = { yarns: yarnOf, inFeeders, lengths };
  place.rows.push(place.lastRow);
  for (const [needle, yarn] of place.chained) {
    if (yarnOf.get(needle) !== yarn)
      refuse(`the chain of ${yarn} on ${labelOf(needle)} is knitted in another yarn: it shows`);
  }
  place.chained.clear();
  place.choice = place.choosing.choose(row + 1, bed);
  place.counter = row;
  place.side = other(side);
}

/** The yarn that a needle takes, and the feeder that it comes from; null for what was laid by hand. */
type Taken = Map<number, { readonly yarn: string; readonly feeder: 1 | 2 | null }>;

/** All needles take the first feeder's yarn, whatever stands forward. */
function plainYarns({ yarns, strands }: Workplace, across: readonly number[]): Taken {
  const yarn = yarns.in(1) ?? refuse(`no yarn is in feeder 1: ${across.length} stitches would drop`);
  // A plain pass takes both yarns into every hook, so the second feeder is empty (running order, rows of one yarn).
  if (yarns.in(2) !== null) refuse(`a plain pass would catch ${yarns.in(2)} in feeder 2 as well`);
  if (strands.laid.size > 0) refuse('what was laid by hand would be knitted together with the first feeder');
  return new Map(across.map((needle) => [needle, { yarn, feeder: 1 }]));
}

/** Needles that stand forward take what was laid, or the second feeder's yarn, all others the first one's. */
function patternYarns({ bed, yarns, strands, choice }: Workplace, across: readonly number[]): Taken {
  if (choice === 'none') refuse('no pass has chosen the needles of this row');
  if (choice === 'unknown') refuse('the pattern has ended: nobody knows which needles stand forward');
  const taken: Taken = new Map();
  const dropped: number[] = [];
  for (const needle of across) {
    const laid = strands.laid.get(needle);
    const feeder = bed.isForward(needle) ? 2 : 1;
    const yarn = laid ?? yarns.in(feeder);
    if (yarn === null) dropped.push(needle);
    else taken.set(needle, { yarn, feeder: laid === undefined ? feeder : null });
  }
  if (dropped.length > 0) {
    const [first] = dropped as [number];
    refuse(
      `${labelsOf(dropped.sort((a, b) => a - b))} would drop: ` +
        (bed.isForward(first) ? 'no yarn is in feeder 2, and none was laid' : 'no yarn is in feeder 1'),
    );
  }
  for (const feeder of [1, 2] as const) {
    const isKnitted = [...taken.values()].some((one) => one.feeder === feeder);
    if (yarns.in(feeder) !== null && !isKnitted) {
      refuse(`${yarns.in(feeder)} in feeder ${feeder} would lie loose from edge to edge`);
    }
  }
  return taken;
}

/** Whether a yarn lies behind all needles of a float of the row just knitted. */
export function liesBehind(place: Workplace, yarn: string, float: readonly [number, number]): boolean {
  const { lastRow } = place;
  if (!lastRow) return false;
  const [first, last] = float;
  for (let needle = first; needle <= last; needle++)
    if (!lastRow.yarns.has(needle)) refuse(`${labelOf(needle)} was not in work`);
  // Another ball of the same yarn may knit within it.
  return lastRow.lengths.some(({ yarn: own, needles }) => {
    if (own !== yarn || [...needles].some((needle) => first <= needle && needle <= last)) return false;
    const ends = [first - 1, last + 1];
    // What comes from a feeder goes on to the edge, so a float may have no stitch at one side.
    const isHeld = (end: number): boolean =>
      needles.has(end) || (!lastRow.yarns.has(end) && lastRow.inFeeders.has(yarn));
    return ends.every(isHeld) && ends.some((end) => needles.has(end));
  });
}

/**
 * Whether a length of a yarn, of a certain ball where that is told, lies behind
 * a needle of a row: it comes from one side and goes on to the other.
 */
export function floatsBehind(
  row: RowLaid | undefined,
  { yarn, ball }: { readonly yarn: string; readonly ball: string | null },
  needle: number,
): boolean {
  if (!row?.yarns.has(needle)) return false;
  return row.lengths.some(({ yarn: own, ball: from, needles }) => {
    if (own !== yarn || (ball !== null && from !== ball) || needles.has(needle)) return false;
    // What comes from a feeder goes on to the edge.
    if (row.inFeeders.has(yarn)) return true;
    const knits = [...needles];
    return knits.some((at) => at < needle) && knits.some((at) => at > needle);
  });
}
