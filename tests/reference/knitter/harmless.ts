/**
 * Mistakes that hands can make without harm, with the reason. What is named
 * here need not be seen by the knitter; all else has to be.
 */
import type { Knitted } from './knitter.ts';
import type { ActJson, ActName, OrderJson, StopJson } from './order.ts';
import type { Mistake } from './mutations.ts';
import { tensionOf, type Replay, type Standing } from './replay.ts';

export interface Mistaken<Name extends ActName = ActName> {
  readonly act: Extract<ActJson, { act: Name }>;
  readonly mistake: Mistake;
  readonly stop: StopJson;
  readonly order: OrderJson;
  readonly standing: Replay;
  readonly knitted: Knitted;
}

type Reasons = { readonly [Name in ActName]?: (mistaken: Mistaken<Name>) => string | null };

/** Why a mistake does no harm, or null. */
export function harmless(mistaken: Mistaken): string | null {
  const reason = REASONS[mistaken.act.act] as ((mistaken: Mistaken) => string | null) | undefined;
  return reason?.(mistaken) ?? null;
}

/** These do no harm unless the bed stands otherwise at the other reading, and then they are seen. */
export const UNCERTAIN = {
  maybeSo: 'it may be so there as well',
  maybeBack: 'the needles may stand back there',
  looking: 'looking changes nothing',
} as const;

const SO_ALREADY = 'it is so already';
const KNITTED_PLAIN = 'what stands forward is knitted plain all the same';
const PUT_BY_HAND = 'all needles of the row that it would choose for are pushed by hand';
const NO_ROW = 'no row follows';
const NONE_FORWARD = 'no needle stands forward';

const REASONS: Reasons = {
  check: () => UNCERTAIN.looking,

  weights: ({ act, mistake, stop }) => {
    if (act.do === 'move') return 'the weights hang, only lower';
    const isLast = act.do === 'off' && stop.row === null && mistake === 'dropped';
    return isLast ? 'the piece comes off the needles with its weights' : null;
  },

  counter: ({ act, mistake, standing }) => {
    if (mistake === 'doubled') return SO_ALREADY;
    const isAtZero = act.reading === 0 && standing.before.get(act)?.start !== 'open';
    return mistake === 'dropped' && isAtZero ? 'the counter is at 0 before a piece' : null;
  },

  tension: (mistaken) => set(mistaken, ({ tension }) => tension === tensionOf(mistaken.act), { countsIn: () => true }),

  carriage: (mistaken) =>
    set(mistaken, ({ carriage }) => carriage === mistaken.act.set, {
      countsIn: (row) => !mistaken.knitted.idle.carriage.includes(row),
      otherwise: NONE_FORWARD,
    }),

  selecting: (mistaken) => {
    const { act, mistake, stop, standing } = mistaken;
    const row = stop.counter + 1;
    const already = set(mistaken, ({ isSelecting }) => isSelecting === act.on, {
      // Whether needles are chosen matters where the row that they are chosen for is knitted in pattern.
      countsIn: (pass) => isInPattern(standing, pass + 1),
    });
    if (already === null) return isPutByHandAnyway(mistaken) ? PUT_BY_HAND : null;
    if (!act.on || mistake !== 'a row early') return already;
    // A row early the pass would read something: nothing may be set yet, or only what is to come.
    const { patternFrom } = standing.inRow(row - 1);
    return patternFrom === null || patternFrom > row ? null : already;
  },

  'end-needles': (mistaken) =>
    set(mistaken, ({ hasEndNeedles }) => hasEndNeedles === mistaken.act.on, {
      countsIn: (pass) =>
        choosesPattern(mistaken.standing, pass) && !mistaken.knitted.idle.endNeedles.includes(pass + 1),
    }),

  'first-needles': ({ act, mistake, stop, order, standing }) => {
    const row = stop.counter + 1;
    if (mistake === 'doubled') return SO_ALREADY;
    if (isSetAgain(order, act)) return 'the machine goes on with the pattern that is set';
    const pass = mistake === 'a row early' ? row - 1 : mistake === 'a row late' ? row : null;
    const isFirst = row === 1 && act.row === 1;
    const isRead = pass === null || isFirst || standing.inRow(pass).isSelecting;
    return isRead ? null : 'nothing is read before selecting is on';
  },

  'push-forward': ({ act, mistake, stop, standing, knitted }) => {
    if (mistake === 'doubled') return SO_ALREADY;
    if (isNeedless(knitted, stop, act)) return mistake === 'dropped' ? SO_ALREADY : UNCERTAIN.maybeSo;
    return isInPattern(standing, stop.counter + 1) ? null : KNITTED_PLAIN;
  },

  'push-back': ({ act, mistake, stop, standing, knitted }) => {
    const row = stop.counter + 1;
    if (mistake === 'doubled') return SO_ALREADY;
    if (isNeedless(knitted, stop, act)) return mistake === 'dropped' ? SO_ALREADY : UNCERTAIN.maybeSo;
    if (stop.row !== null && isInPattern(standing, row)) return null;
    if (mistake === 'a row early' && isInPattern(standing, row - 1)) return null;
    if (mistake === 'a row late' && isInPattern(standing, row + 1)) return UNCERTAIN.maybeBack;
    return KNITTED_PLAIN;
  },

  strand: ({ act, mistake, stop }) => {
    const wrapsNow = stop.acts.some((other) => other.act === 'wrap' && String(other.strand) === String(act.id));
    if (act.at === 'start') {
      if (mistake === 'a row early') return 'a strand may lie ready';
      return mistake === 'a row late' && !wrapsNow ? 'it wraps nothing before' : null;
    }
    if (mistake === 'a row late') return 'a strand may be worked in later';
    return mistake === 'a row early' && !wrapsNow ? 'it wraps nothing any more' : null;
  },

  'remove-waste': ({ mistake, stop, standing }) => {
    if (mistake === 'a row late') return 'it may come off at any time after the join';
    const isHung = standing.inRow(stop.counter).isHung;
    return mistake === 'a row early' && isHung ? 'the hem hangs by then' : null;
  },

  unthread: ({ act, mistake, stop }) => {
    const isCutByFinish = act.feeder === 1 && stop.acts.some((other) => other.act === 'finish');
    return mistake === 'dropped' && isCutByFinish ? 'the finish cuts the yarn that it is done with' : null;
  },
};

/** Of an act that sets something: what it changes counts in the rows that pass until it would have been set. */
function set<Name extends ActName>(
  mistaken: Mistaken<Name>,
  isSo: (standing: Standing) => boolean,
  { countsIn, otherwise = KNITTED_PLAIN }: { countsIn: (row: number) => boolean; otherwise?: string },
): string | null {
  const { act, stop, order, standing } = mistaken;
  // What ended comes first at a reading, and what begins there sets it again.
  const mistake = mistaken.mistake === 'a row early' && isSetThere(mistaken) ? 'dropped' : mistaken.mistake;
  const row = stop.counter + 1;
  const before = standing.before.get(act) as Standing;
  if (mistake === 'doubled' || (mistake !== 'a row early' && isSo(before))) return SO_ALREADY;
  if (mistake === 'a row early') {
    if (isSo(standing.inRow(row - 1))) return SO_ALREADY;
    return countsIn(row - 1) ? null : otherwise;
  }
  if (stop.row === null) return NO_ROW;
  // The waste rows' last pass, at the first reading, chooses too.
  const from = row === 1 ? 0 : row;
  const to = mistake === 'a row late' ? row : lastRowBefore(order, standing, act);
  for (let one = from; one <= to; one++) if (countsIn(one)) return null;
  return otherwise;
}

/** Whether what an act ends begins again a reading earlier, where it would stand before that. */
function isSetThere({ act, stop, order }: Pick<Mistaken, 'act' | 'stop' | 'order'>): boolean {
  const isEnd = (act.act === 'carriage' && act.set === 'plain') || ('on' in act && !act.on);
  const there = order.find((item) => item.kind === 'stop' && item.counter === stop.counter - 1);
  return isEnd && there?.kind === 'stop' && there.acts.some((other) => other.act === act.act);
}

/** The last row before an act of the same name, or of the piece. */
function lastRowBefore(order: OrderJson, { before }: Replay, act: ActJson): number {
  const acts = [...before.keys()];
  const next = acts.slice(acts.indexOf(act) + 1).find((other) => other.act === act.act);
  const stop = order.findLast((item) => item.kind === 'stop' && (!next || item.acts.includes(next))) as StopJson;
  return stop.counter;
}

function isInPattern(standing: Replay, row: number): boolean {
  return standing.inRow(row).carriage === 'pattern';
}

/** Whether all that switching selecting on a row late costs is a choice that hands make in full before the row. */
function isPutByHandAnyway({ act, mistake, stop, order }: Mistaken<'selecting'>): boolean {
  if (!act.on || mistake !== 'a row late') return false;
  const next = order.find((item) => item.kind === 'stop' && item.counter === stop.counter + 1);
  if (next?.kind !== 'stop' || next.acts.some((other) => other.act === 'push-back')) return false;
  const pushed = new Set(next.acts.flatMap((other) => (other.act === 'push-forward' ? other.needles : [])));
  return next.acts.some((other) => other.act === 'check' && other.forward === pushed.size);
}

/** Whether the pass of a row chooses needles that are knitted in pattern. */
function choosesPattern(standing: Replay, row: number): boolean {
  return standing.inRow(Math.max(row, 1)).isSelecting && isInPattern(standing, row + 1);
}

/** Whether all needles that are pushed at a reading stand so already; with several such acts, one may hide another. */
function isNeedless({ needless }: Knitted, { counter }: StopJson, { act }: ActJson): boolean {
  return needless.some((push) => push.reading === counter && push.act === act);
}

/** Whether an act sets the pattern that the machine reads already. */
function isSetAgain(order: OrderJson, act: Extract<ActJson, { act: 'first-needles' }>): boolean {
  const sets = order
    .flatMap((item) => (item.kind === 'stop' ? item.acts : []))
    .filter((other) => other.act === 'first-needles');
  return sets[sets.indexOf(act) - 1]?.pattern === act.pattern;
}
