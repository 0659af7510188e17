/**
 * The order of acts at one reading, as hands do them: finish what ended, hook
 * up, weights off, hang the hem, weights on, cast off and take off, tension,
 * shaping and then the edge needles, what the next pass chooses, carriage and
 * yarns, a look at the forward needles, wraps, balls laid, the row.
 */
import type { Act, ActJson, ActName } from './order.ts';
import { refuse } from './refusal.ts';

const CAST_ON = 0;
const ENDED = 1;
const HOOK_UP = 2;
const HEM = 3;
const OFF = 4;
const TENSION = 5;
const SHAPING = 6;
const CHOICE = 7;
const CARRIAGE = 8;
const LOOK = 9;
const WRAPS = 10;
const LAY = 11;

/**
 * When an act may be done. Where the order leaves it open, each time is here
 * that hands have: what ends may end at once or when the carriage is set for
 * what follows; weights go on after the cast-on, with the hem or after it;
 * more stitches are cast on with those cast off or with the other shaping; the
 * last row is taken off before its yarns are seen to or with them; by
 * hand the needles of a row come forward when its yarns are in.
 */
const WHEN: Readonly<Record<ActName, readonly number[]>> = {
  'cast-on': [CAST_ON],
  counter: [CAST_ON],
  carriage: [ENDED, CARRIAGE],
  unthread: [ENDED, CARRIAGE],
  cut: [ENDED, CARRIAGE],
  'push-back': [ENDED, SHAPING, CHOICE, CARRIAGE],
  strand: [ENDED, CARRIAGE, LOOK, WRAPS],
  'hook-up': [HOOK_UP],
  'latch-up': [HOOK_UP],
  weights: [ENDED, HOOK_UP, HEM, OFF, TENSION, SHAPING],
  'hang-hem': [HEM],
  'remove-waste': [HEM, OFF, TENSION, SHAPING],
  'cast-off': [OFF],
  finish: [OFF, CARRIAGE],
  tension: [TENSION],
  eyelets: [OFF, TENSION, SHAPING],
  increase: [SHAPING],
  decrease: [SHAPING],
  'cast-on-more': [OFF, TENSION, SHAPING],
  'push-forward': [SHAPING, CHOICE, CARRIAGE],
  selecting: [ENDED, CHOICE],
  'end-needles': [ENDED, CHOICE],
  'first-needles': [CHOICE],
  thread: [CARRIAGE],
  check: [LOOK],
  wrap: [WRAPS],
  lay: [LAY],
};

/** When an act may be done. What begins something is not told at the time of what ended. */
function times(act: Act | ActJson): readonly number[] {
  return begins(act) ? WHEN[act.act].filter((time) => time !== ENDED) : WHEN[act.act];
}

function begins(act: Act | ActJson): boolean {
  switch (act.act) {
    case 'carriage':
      return act.set === 'pattern';
    case 'selecting':
    case 'end-needles':
      return act.on;
    case 'strand':
      return act.at === 'start';
    case 'weights':
      return act.do === 'hang';
    default:
      return false;
  }
}

/** The earliest time of an act that is not before `from`; refuses one whose time has passed. */
export function timeOf(act: Act | ActJson, from: number): number {
  return times(act).find((time) => time >= from) ?? refuse('comes too late among the acts of this reading');
}

/**
 * The acts of a reading with one more, where hands would do it: what ended as
 * early as may be, all else as late, the end of a strand among them (it may
 * still wrap).
 */
export function withAct(acts: readonly ActJson[], act: ActJson): ActJson[] {
  const orders = Array.from({ length: acts.length + 1 }, (_, at) => acts.toSpliced(at, 0, act)).filter(isInOrder);
  return (times(act).includes(ENDED) && act.act !== 'strand' ? orders[0] : orders.at(-1)) ?? [...acts, act];
}

function isInOrder(acts: readonly ActJson[]): boolean {
  let from = 0;
  return acts.every((act) => {
    const time = times(act).find((one) => one >= from);
    from = time ?? from;
    return time !== undefined;
  });
}
