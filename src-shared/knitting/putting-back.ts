/**
 * Ripping back: what has to be put back at the machine before the rows can be
 * knitted again. Common practice, no source.
 *
 * Rows above a reading are ravelled, the loops of its row hung on their needles
 * again, and the machine set as it was when the counter first came there. What
 * is done at that reading is done again after this, so what is left as those
 * acts leave it is not told.
 */
import { widthOf, type Run, type Side, type Slot } from '../bed/index.ts';
import type { Act, ActOf, Feeder } from '../plan/index.ts';
import { runsOf } from './act-needles.ts';
import type { KnittingOrder } from './model.ts';
import { isSameSupply, settingsAfter, settingsAt, type Settings, type Supply } from './settings.ts';
import { lastReading, stopsOf, type KnittingStop } from './stops.ts';

/** One thing to put back. */
export type PutBack =
  /** Each loop of `row` (0: of the cast-on) on its own needle: on `needles`, of which `back` come into work again; `out` go out of work. */
  | {
      readonly kind: 'stitches';
      readonly row: number;
      readonly needles: Run;
      readonly back: readonly Run[];
      readonly out: readonly Run[];
    }
  /** The loops of the hem come off the needles. `hasWaste`: they hang on waste yarn still, else nothing holds them. */
  | { readonly kind: 'hem-off'; readonly hasWaste: boolean }
  /** Without knitting or counting. */
  | { readonly kind: 'carriage-to'; readonly side: Side; readonly isThere: boolean }
  | { readonly kind: 'counter'; readonly reading: number }
  | { readonly kind: 'carriage'; readonly set: 'plain' | 'pattern' }
  | { readonly kind: 'selecting' | 'end-needles'; readonly isOn: boolean }
  | { readonly kind: 'tension'; readonly part: ActOf<'tension'>['part']; readonly text: string }
  | { readonly kind: 'weights'; readonly do: 'hang' | 'off' }
  /** The needles of the row (1-based) that follows stand forward again; by hand, or by a pass that does not knit. */
  | {
      readonly kind: 'choose-again';
      readonly row: number;
      readonly needles: readonly Run[];
      readonly count: number;
      readonly how: 'by-hand' | 'by-pass';
      readonly pattern: ActOf<'first-needles'>;
    }
  /** The pattern is set so that the next pass chooses the needles of `row`. */
  | { readonly kind: 'pattern-row'; readonly row: number; readonly pattern: ActOf<'first-needles'> }
  | ({ readonly kind: 'yarn-out'; readonly feeder: Feeder } & Supply)
  /** `wasCut`: it was cut on the rows that are gone, and is joined again. */
  | ({ readonly kind: 'yarn-in'; readonly feeder: Feeder; readonly wasCut: boolean } & Supply)
  | ({ readonly kind: 'yarn-waits'; readonly needle: Slot; readonly wasCut: boolean } & Supply)
  /** Wrapping strands: one in use again, at the needle of its last wrap, and one that is not in use yet. */
  | { readonly kind: 'strand-waits'; readonly strand: number; readonly needle: Slot | null; readonly wasEnded: boolean }
  | { readonly kind: 'strand-out'; readonly strand: number };

/** The side at which the carriage stands when the counter comes to `reading`. Throws `RangeError` beyond the order. */
export function paritySide(knitting: KnittingOrder, reading: number): Side {
  return stopAt(knitting, reading).carriageAt;
}

/**
 * All that is put back, in the order in which hands do it, where rows above
 * reading `to` are ripped out of a piece whose counter read `from`. `ticked`:
 * which acts at `from` (by index) were done already. Throws `RangeError` unless
 * 0 ≤ `to` < `from` ≤ the last reading.
 */
export function puttingBack(
  knitting: KnittingOrder,
  from: number,
  to: number,
  ticked: readonly number[] = [],
): readonly PutBack[] {
  if (!(to < from)) throw new RangeError(`Nothing is ripped back from ${from} to ${to}`);
  const [stop, left] = [stopAt(knitting, to), stopAt(knitting, from)];
  const leftActs = left.acts.flatMap(({ act }, index) => (ticked.includes(index) ? [act] : []));
  const is = settingsAfter(settingsAt(knitting.order, from), leftActs, left.carriageAt);
  const undone = [...stopsOf(knitting).slice(to, from).flatMap(actsOf), ...leftActs];
  const { machine, choices } = putRight(knitting, to, is, undone);
  return [
    ...stitches(knitting, from, to, leftActs),
    ...hemOff(knitting, to, is),
    { kind: 'carriage-to', side: stop.carriageAt, isThere: left.carriageAt === stop.carriageAt },
    { kind: 'counter', reading: to },
    ...machine,
    ...choices,
  ];
}

/**
 * What is put right at a machine with the settings `is`, so that `knitting` can
 * be gone on with at `reading`: its switches and yarns, then the needles that
 * stand forward. `undone`: acts since then, of which nothing is left.
 */
export function putRight(
  knitting: KnittingOrder,
  reading: number,
  is: Settings,
  undone: readonly Act[],
): { readonly machine: readonly PutBack[]; readonly choices: readonly PutBack[] } {
  const stop = stopAt(knitting, reading);
  const was = settingsAt(knitting.order, reading);
  const then = settingsAfter(was, actsOf(stop), stop.carriageAt);
  return {
    machine: [...switches(was, then, is), ...yarns(was, then, is, undone), ...wrappingStrands(was, then, is, undone)],
    choices: choices(knitting, stop, was),
  };
}

function stopAt(knitting: KnittingOrder, reading: number): KnittingStop {
  const stop = stopsOf(knitting)[reading];
  if (!stop) throw new RangeError(`The order has readings 0 to ${lastReading(knitting)}, not ${reading}`);
  return stop;
}

function actsOf({ acts }: KnittingStop): Act[] {
  return acts.map(({ act }) => act);
}

/** The needles of the row that brought the counter to a reading; before the first, those that were cast on. */
function needlesAt(knitting: KnittingOrder, reading: number): Run {
  const row = stopAt(knitting, Math.max(0, reading - 1)).row;
  return (row as NonNullable<typeof row>).needles;
}

function stitches(knitting: KnittingOrder, from: number, to: number, leftActs: readonly Act[]): PutBack[] {
  const needles = needlesAt(knitting, to);
  const isShaped = leftActs.some(({ kind }) => SHAPING.has(kind));
  const now = isShaped ? (stopAt(knitting, from).row?.needles ?? needlesAt(knitting, from)) : needlesAt(knitting, from);
  return [{ kind: 'stitches', row: to, needles, back: beyond(needles, now), out: beyond(now, needles) }];
}

const SHAPING: ReadonlySet<Act['kind']> = new Set(['increase', 'decrease', 'cast-off', 'cast-on-more']);

/** The needles of one run that the other has not. */
function beyond(run: Run, other: Run): Run[] {
  const needles: Slot[] = [];
  for (let at: number = run.first; at <= run.last; at++) {
    if (at < other.first || at > other.last) needles.push(at as Slot);
  }
  return runsOf(needles);
}

function hemOff({ order }: KnittingOrder, to: number, is: Settings): PutBack[] {
  // Where it is hung at that very reading, it comes off as well, and the acts there hang it again.
  return is.isHemHung && !settingsAt(order, to).isHemHung ? [{ kind: 'hem-off', hasWaste: is.isOnWaste }] : [];
}

function switches(was: Settings, then: Settings, is: Settings): PutBack[] {
  /** Whether a setting is neither as it was nor as the acts at the reading leave it. */
  const isOther = (setting: keyof Settings): boolean =>
    [was, then].every((one) => JSON.stringify(one[setting]) !== JSON.stringify(is[setting]));
  const back: PutBack[] = [];
  if (isOther('carriage')) back.push({ kind: 'carriage', set: was.carriage });
  if (isOther('isSelecting')) back.push({ kind: 'selecting', isOn: was.isSelecting });
  if (isOther('endNeedles') && was.endNeedles !== null) back.push({ kind: 'end-needles', isOn: was.endNeedles });
  // Where the acts at the reading set it, it is told there.
  const isSetThere = JSON.stringify(was.tension) !== JSON.stringify(then.tension);
  if (isOther('tension') && !isSetThere) {
    // Before any is told the piece is knitted as its swatch.
    const { part, text } = was.tension ?? { part: 'main' as const, text: '' };
    back.push({ kind: 'tension', part, text });
  }
  if (isOther('hasWeights')) back.push({ kind: 'weights', do: was.hasWeights ? 'hang' : 'off' });
  return back;
}

function yarns(was: Settings, then: Settings, is: Settings, undone: readonly Act[]): PutBack[] {
  const wasCut = (supply: Supply): boolean =>
    undone.some(
      (act) => (act.kind === 'cut' || (act.kind === 'unthread' && act.waitsAt === 'cut')) && isSameSupply(act, supply),
    );
  const isIn = ({ feeders }: Settings, feeder: Feeder, supply: Supply): boolean =>
    feeders[feeder] !== null && isSameSupply(feeders[feeder], supply);
  const back: PutBack[] = [];
  for (const feeder of [2, 1] as const) {
    const now = is.feeders[feeder];
    const stays = now && (isIn(was, feeder, now) || isIn(then, feeder, now));
    if (now && !stays) back.push({ kind: 'yarn-out', feeder, yarn: now.yarn, ball: now.ball });
  }
  for (const feeder of [1, 2] as const) {
    const before = was.feeders[feeder];
    if (!before || isIn(is, feeder, before)) continue;
    // It comes out at that reading anyway, and another is in its place.
    if (!isIn(then, feeder, before) && is.feeders[feeder] && isIn(then, feeder, is.feeders[feeder])) continue;
    back.push({ kind: 'yarn-in', feeder, yarn: before.yarn, ball: before.ball, wasCut: wasCut(before) });
  }
  for (const { yarn, ball, needle } of was.waiting) {
    back.push({ kind: 'yarn-waits', yarn, ball, needle, wasCut: wasCut({ yarn, ball }) });
  }
  return back;
}

function wrappingStrands(was: Settings, then: Settings, is: Settings, undone: readonly Act[]): PutBack[] {
  const isUsed = ({ strands }: Settings, number: number): boolean => strands.some(({ strand }) => strand === number);
  const ended = new Set(undone.flatMap((act) => (act.kind === 'strand' && act.at === 'end' ? [act.strand] : [])));
  return [
    ...was.strands.map(({ strand, needle }): PutBack => ({
      kind: 'strand-waits',
      strand,
      needle,
      wasEnded: ended.has(strand),
    })),
    ...is.strands.flatMap(({ strand }): PutBack[] =>
      isUsed(was, strand) || isUsed(then, strand) ? [] : [{ kind: 'strand-out', strand }],
    ),
  ];
}

/** The needles that the last pass had chosen, and what the next one chooses. */
function choices(knitting: KnittingOrder, stop: KnittingStop, was: Settings): PutBack[] {
  const { pattern } = was;
  if (!was.isSelecting || !pattern || !stop.row) return [];
  const needles = chosenBefore(knitting, stop);
  const { row, carriage } = stop.row;
  // Before the first row that it is set for nothing has been chosen yet.
  const isChosen = carriage === 'pattern' && row >= pattern.row && needles.length > 0;
  const chosen: PutBack = {
    kind: 'choose-again',
    row,
    needles,
    count: needles.reduce((all, run) => all + widthOf(run), 0),
    how: knitting.chooses === 'ahead-seen' ? 'by-hand' : 'by-pass',
    pattern,
  };
  const next = nextChosen(knitting, stop);
  return [
    ...(isChosen ? [chosen] : []),
    ...(next === null ? [] : [{ kind: 'pattern-row', row: Math.max(next, pattern.row), pattern } as const]),
  ];
}

/** The row that the pass after this reading chooses by what is set already; null where it chooses none, or by what is set at this reading or the next. */
function nextChosen(knitting: KnittingOrder, stop: KnittingStop): number | null {
  const above = stopsOf(knitting)[stop.counter + 1];
  if (!stop.row?.isSelecting || !above?.row || setsPattern(stop)) return null;
  // A row of one yarn in a pattern is counted by the machine as any other.
  const goesOn = above.row.isSelecting && !setsPattern(above);
  return above.row.carriage === 'pattern' || goesOn ? above.row.row : null;
}

function setsPattern({ acts }: KnittingStop): boolean {
  return acts.some(({ act }) => act.kind === 'first-needles');
}

/** The needles that stand forward for the row before the acts at its reading put any right. */
function chosenBefore(knitting: KnittingOrder, { counter, row, acts }: KnittingStop): Run[] {
  const forward = new Set<Slot>();
  for (const { first, last } of row?.selected ?? []) {
    for (let at: number = first; at <= last; at++) forward.add(at as Slot);
  }
  for (const { act } of acts) {
    if (act.kind === 'push-forward') for (const needle of act.needles) forward.delete(needle);
    if (act.kind === 'push-back') for (const needle of act.needles) forward.add(needle);
  }
  const inWork = needlesAt(knitting, counter);
  const needles = [...forward].filter((needle) => inWork.first <= needle && needle <= inWork.last);
  return runsOf(needles.sort((one, other) => one - other));
}
