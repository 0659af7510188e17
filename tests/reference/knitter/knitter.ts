/**
 * A simulated knitter: follows a running order to the letter, needle by
 * needle, and stops at the first thing that hands cannot do.
 */
import { perform } from './acts.ts';
import type { FabricRow } from './fabric.ts';
import {
  machine as machineSchema,
  patterns as patternsSchema,
  type MachineJson,
  type PatternsJson,
} from './machine.ts';
import { labelOf } from './needles.ts';
import { runningOrder, type Act, type ActName, type Holding, type Stop, type Stretch } from './order.ts';
import { refuse, Refusal } from './refusal.ts';
import { knitRow } from './row.ts';
import { timeOf } from './sequence.ts';
import type { WrappingStrand } from './strands.ts';
import { isSameLaid, type StrandLaid } from './way.ts';
import { Workplace, type Notes } from './workplace.ts';
import type { YarnEnd } from './yarns.ts';

export interface Knitted extends Readonly<Notes> {
  readonly ok: true;
  readonly fabric: FabricRow[];
  /** Where the cast-on edge is: closed, picked up from another piece, joined as a hem, or still on waste yarn. */
  readonly start: 'closed' | 'picked-up' | 'joined' | 'on waste yarn';
  /** Both ends of every length of yarn, wrapping strand and laid ball. */
  readonly ends: readonly YarnEnd[];
  /** Every uncut length of yarn, in the order in which they came in, and every wrapping strand, as they lie in the fabric. */
  readonly laid: readonly StrandLaid[];
  readonly wrapping: readonly WrappingStrand[];
  /** Rows in which a setting made no difference: nothing comes of them, but a mistake in them does no harm. */
  readonly idle: {
    /** Both edge needles are in the pattern by themselves, or are taken away before the row. */
    readonly endNeedles: readonly number[];
    /** No needle stands forward. */
    readonly carriage: readonly number[];
  };
}

/** Whether two came to the same, in the fabric and beside it. */
export function isSameWork(one: Knitted, other: Knitted): boolean {
  const { idle: _, laid, ...beside } = one;
  const { idle: _other, laid: otherLaid, ...otherBeside } = other;
  return isSameLaid(laid, otherLaid) && JSON.stringify(beside) === JSON.stringify(otherBeside);
}

export interface Refused {
  readonly ok: false;
  /** Reading of the row counter; null where the order could not be read at all. */
  readonly at: number | null;
  readonly act: ActName | 'order' | 'row' | 'end';
  /** A sentence that names the reading and the act too. */
  readonly why: string;
}

export interface ToKnitWith {
  readonly machine: MachineJson;
  /** What the machine has been given to read; none for a piece without pattern, and for one chosen by hand. */
  readonly patterns?: PatternsJson;
}

/** Knits a running order. Throws only where the machine or its pictures are not what they should be. */
export function knit(orderJson: unknown, { machine, patterns = {} }: ToKnitWith): Knitted | Refused {
  const read = runningOrder.safeParse(orderJson);
  if (!read.success) {
    const why = read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; ');
    return { ok: false, at: null, act: 'order', why: `The order cannot be read: ${why}` };
  }
  const first = read.data[0] as Stop | Stretch;
  const place = new Workplace(machineSchema.parse(machine), patternsSchema.parse(patterns), first.carriageAt);
  const doing: Doing = { act: 'order' };
  try {
    const seen = new Set<string>();
    for (const [index, item] of read.data.entries()) {
      doing.act = 'order';
      if (item.kind === 'stretch') knitStretch(place, item, read.data[index - 1], doing);
      else keepStop(place, item, { isLast: index === read.data.length - 1, seen }, doing);
    }
    doing.act = 'end';
    return finished(place);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const why = `Reading ${place.counter}, ${doing.act}: ${error.message}.`;
    return { ok: false, at: place.counter, act: doing.act, why };
  }
}

/** What is being done, for the reason of a refusal. */
interface Doing {
  act: Refused['act'];
}

function keepStop(
  place: Workplace,
  stop: Stop,
  { isLast, seen }: { isLast: boolean; seen: Set<string> },
  doing: Doing,
): void {
  if (stop.counter < place.counter) refuse(`reading ${stop.counter} has passed`);
  if (stop.counter > place.counter) refuse(`nothing says how the counter comes to ${stop.counter}`);
  if (stop.row === null && !isLast) refuse('rows follow a stop that no row belongs to');
  if (stop.row !== null && stop.row !== stop.counter + 1) refuse(`row ${stop.row} does not follow this reading`);
  if (stop.carriageAt !== place.side) refuse(`the carriage stands at the ${place.side}`);
  if (seen.has(stop.id)) refuse(`two stops are called ${stop.id}`);
  seen.add(stop.id);
  const reading = stop.counter;
  let time = 0;
  for (const act of stop.acts) {
    doing.act = act.act;
    if (stop.row === null) mayEnd(act);
    else if (act.act === 'finish') refuse('rows follow');
    time = timeOf(act, time);
    perform(place, act);
  }
  doing.act = 'order';
  if (place.counter !== reading) refuse(`the counter should read ${reading} before row ${reading + 1}`);
  if (stop.row === null) return;
  holds(place, stop);
  doing.act = 'row';
  knitRow(place);
}

function knitStretch(place: Workplace, stretch: Stretch, before: Stop | Stretch | undefined, doing: Doing): void {
  if (before?.kind !== 'stop') refuse('a stretch follows a stop');
  const next = place.counter + 1;
  if (stretch.first !== next) refuse(`rows ${stretch.first}–${stretch.last} do not go on with row ${next}`);
  if (stretch.last < stretch.first) refuse('a stretch has at least one row');
  if (stretch.carriageAt !== place.side) refuse(`the carriage stands at the ${place.side}`);
  holds(place, stretch);
  doing.act = 'row';
  while (place.counter < stretch.last) knitRow(place);
}

/** Behind the last row nothing can be done for a next one. */
function mayEnd(act: Act): void {
  const isForRow =
    ['increase', 'cast-on-more', 'push-forward', 'eyelets', 'wrap', 'lay', 'first-needles', 'check'].includes(
      act.act,
    ) ||
    ((act.act === 'selecting' || act.act === 'end-needles') && act.on) ||
    (act.act === 'carriage' && act.set === 'pattern');
  if (isForRow) refuse('no row follows');
}

/** What is said to hold while the row is knitted is compared with what does. */
function holds(place: Workplace, { needles, carriage, selecting, feeders }: Holding): void {
  if (needles && !place.bed.isEmpty) {
    const edges = place.bed.edges;
    if (needles.some((needle, at) => needle !== edges[at])) {
      refuse(`${edges.map(labelOf).join('–')} are in work, not ${needles.map(labelOf).join('–')}`);
    }
  }
  if (carriage && carriage !== place.carriage) refuse(`the carriage is set to ${place.carriage}, not to ${carriage}`);
  if (selecting !== undefined && selecting !== place.choosing.isSelecting) {
    refuse(`selecting is ${place.choosing.isSelecting ? 'on' : 'off'}`);
  }
  for (const feeder of [1, 2] as const) {
    const [is, said] = [place.yarns.in(feeder), feeders?.[feeder]];
    if (said !== undefined && said !== is) refuse(`feeder ${feeder} holds ${is ?? 'no yarn'}, not ${said ?? 'none'}`);
  }
}

/** Looks at the piece and at what is left of yarn; refuses where something was forgotten. */
function finished(place: Workplace): Knitted {
  const { bed, yarns, strands, notes, open, start } = place;
  if (start === null) refuse('nothing has been cast on');
  if (!place.isFinished || !bed.isEmpty) refuse('stitches are left on the needles');
  const joined = open?.isDone();
  yarns.allCut();
  return {
    ok: true,
    ...notes,
    start: joined ?? (start as Exclude<typeof start, 'open'>),
    ends: [...yarns.ends, ...strands.ends()],
    laid: yarns.laid(),
    wrapping: strands.wrapping(),
    idle: place.idle,
  };
}
