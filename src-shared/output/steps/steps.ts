/**
 * The running order in the steps that a knitter reads: a stop with all rows
 * that follow it, neighbouring stops of shaping as one table, and what is done
 * again and again told once with its readings.
 */
import type { Act, ActOf, RunningOrder, Stop } from '../../plan/index.ts';
import { toldOnce } from './repeats.ts';

/** A stop, and the rows that are knitted until the next one: its own and those of the stretch after it. */
export interface Step {
  readonly stop: Stop;
  /** Null after the last row. */
  readonly knit: RowSpan | null;
}

export interface RowSpan {
  readonly first: number;
  readonly last: number;
}

export type ToldStep =
  | { readonly kind: 'step'; readonly step: Step }
  /** Neighbouring stops at which little but shaping is done. */
  | { readonly kind: 'shaping'; readonly steps: readonly Step[] }
  /** `rows` are knitted as `of`, which lie right below them, beginning at each of the readings. */
  | { readonly kind: 'again'; readonly rows: RowSpan; readonly of: RowSpan; readonly readings: readonly number[] };

/** Each stop with its rows. */
export function stepsOf(order: RunningOrder): Step[] {
  const steps: Step[] = [];
  for (const item of order) {
    if (item.kind === 'stop') {
      steps.push({ stop: item, knit: item.row === null ? null : { first: item.row, last: item.row } });
      continue;
    }
    const before = steps.at(-1);
    if (before?.knit) steps[steps.length - 1] = { ...before, knit: { ...before.knit, last: item.last } };
  }
  return steps;
}

/** More stops than this are not read as one thing that comes again. */
const MOST_IN_REPEAT = 48;

/** The steps as they are told. */
export function toldSteps(order: RunningOrder): ToldStep[] {
  const steps = stepsOf(order);
  const told: ToldStep[] = [];
  for (const { at, size, times } of toldOnce(steps.map(keyOf), MOST_IN_REPEAT)) {
    const [first] = steps.slice(at, at + size) as [Step];
    const last = told.at(-1);
    if (isTableRow(first)) {
      if (last?.kind === 'shaping') told[told.length - 1] = { ...last, steps: [...last.steps, first] };
      else told.push({ kind: 'shaping', steps: [first] });
      continue;
    }
    for (const step of steps.slice(at, at + size)) told.push({ kind: 'step', step });
    if (times > 1) told.push(again(steps, at, size, times));
  }
  return told;
}

function again(steps: readonly Step[], at: number, size: number, times: number): ToldStep {
  const knitFrom = (index: number): number => steps[index]?.stop.row ?? 0;
  const readings = Array.from({ length: times - 1 }, (_, time) => knitFrom(at + (time + 1) * size) - 1);
  const [first, next] = [knitFrom(at), knitFrom(at + size)];
  const last = steps[at + size * times - 1]?.knit?.last ?? 0;
  return { kind: 'again', rows: { first: next, last }, of: { first, last: next - 1 }, readings };
}

const SHAPING: ReadonlySet<Act['kind']> = new Set(['increase', 'decrease', 'cast-off', 'cast-on-more']);
const BESIDE_SHAPING: ReadonlySet<Act['kind']> = new Set(['weights', 'push-forward', 'push-back', 'check']);

export type ShapingAct = ActOf<'increase' | 'decrease' | 'cast-off' | 'cast-on-more'>;

export function isShaping(act: Act): act is ShapingAct {
  return SHAPING.has(act.kind);
}

/** Little but shaping, once an edge, which a line of a table has room for. */
function isTableRow({ stop, knit }: Step): boolean {
  const shaping = stop.acts.filter(isShaping);
  const edges = shaping.map(({ edge }) => edge);
  return (
    knit !== null &&
    shaping.length > 0 &&
    new Set(edges).size === edges.length &&
    stop.acts.every((act) => isShaping(act) || BESIDE_SHAPING.has(act.kind))
  );
}

/** Shaping is never told by what came before, and strands are told one by one: each has its own number. */
const TOLD_ALONE: ReadonlySet<Act['kind']> = new Set([
  ...SHAPING,
  'strand',
  'hang-hem',
  'eyelets',
  'cast-on',
  'finish',
]);

/** The act with its rows counted from the reading at which it is done. */
function fromReading(act: Act, reading: number): Act {
  if (act.kind === 'first-needles') return { ...act, row: act.row - reading };
  if (act.kind === 'latch-up') return { ...act, first: act.first - reading, last: act.last - reading };
  return act;
}

function keyOf({ stop, knit }: Step): string | null {
  if (knit === null || stop.acts.some(({ kind }) => TOLD_ALONE.has(kind))) return null;
  const acts = stop.acts.map((act) => fromReading(act, stop.counter));
  const { carriageAt, needles, carriage, isSelecting, feeders } = stop;
  return JSON.stringify([acts, knit.last - knit.first, carriageAt, needles, carriage, isSelecting, feeders]);
}
