/**
 * What is set at the machine and which yarns hang where when the counter comes
 * to a reading: all acts below it done, none of those at it.
 */
import type { Run, Side, Slot } from '../bed/index.ts';
import type { Act, ActOf, Feeder, RunningOrder, YarnIndex } from '../plan/index.ts';

/** A yarn that the carriage feeds, or a ball of it that has a number. */
export interface Supply {
  readonly yarn: YarnIndex;
  readonly ball: number | null;
}

/** Yarn that is out of the feeders and not cut: it hangs from the needle that it knitted last. */
export interface Waiting extends Supply {
  readonly needle: Slot;
}

/** A wrapping strand that is taken up and not worked in; `needle`: its last wrap, null before the first. */
export interface StrandInUse {
  readonly strand: number;
  readonly needle: Slot | null;
}

export interface Settings {
  readonly carriage: 'plain' | 'pattern';
  readonly isSelecting: boolean;
  /** Null before anybody has set it. */
  readonly endNeedles: boolean | null;
  /** What the machine was set for last; null before it was. */
  readonly pattern: ActOf<'first-needles'> | null;
  /** Null before any is told. */
  readonly tension: ActOf<'tension'> | null;
  readonly feeders: { readonly [Place in Feeder]: Supply | null };
  readonly waiting: readonly Waiting[];
  readonly strands: readonly StrandInUse[];
  readonly hasWeights: boolean;
  /** The hem hangs on the needles, or is knitted in. */
  readonly isHemHung: boolean;
  /** The piece hangs on waste yarn. */
  readonly isOnWaste: boolean;
}

/** Before anything is done. */
export const AT_FIRST: Settings = {
  carriage: 'plain',
  isSelecting: false,
  endNeedles: null,
  pattern: null,
  tension: null,
  feeders: { 1: null, 2: null },
  waiting: [],
  strands: [],
  hasWeights: false,
  isHemHung: false,
  isOnWaste: false,
};

/** The settings when the counter comes to `reading`. */
export function settingsAt(order: RunningOrder, reading: number): Settings {
  let settings = AT_FIRST;
  for (const item of order) {
    if (item.kind !== 'stop') continue;
    if (item.counter >= reading) break;
    settings = settingsAfter(settings, item.acts, item.carriageAt);
  }
  return settings;
}

/** The settings once `acts` are done, and the row after them is knitted from `carriageAt`. */
export function settingsAfter(settings: Settings, acts: readonly Act[], carriageAt: Side): Settings {
  return acts.reduce((before, act) => ({ ...before, ...changed(before, act, carriageAt) }), settings);
}

function changed(before: Settings, act: Act, carriageAt: Side): Partial<Settings> {
  const { feeders, waiting, strands } = before;
  switch (act.kind) {
    case 'carriage':
      return { carriage: act.set };
    case 'selecting':
      return { isSelecting: act.isOn };
    case 'end-needles':
      return { endNeedles: act.isOn };
    case 'first-needles':
      return { pattern: act };
    case 'tension':
      return { tension: act };
    case 'thread':
      return {
        feeders: { ...feeders, [act.feeder]: { yarn: act.yarn, ball: act.ball } },
        waiting: without(waiting, act),
      };
    case 'unthread': {
      const { yarn, ball, waitsAt: needle } = act;
      const others = without(waiting, act);
      return {
        feeders: { ...feeders, [act.feeder]: null },
        waiting: needle === 'cut' ? others : [...others, { yarn, ball, needle }],
      };
    }
    case 'lay':
      return {
        waiting: [...without(waiting, act), { yarn: act.yarn, ball: act.ball, needle: endOf(act, carriageAt) }],
      };
    case 'cut':
      return { waiting: without(waiting, act) };
    case 'strand': {
      const others = strands.filter(({ strand }) => strand !== act.strand);
      return { strands: act.at === 'end' ? others : [...others, { strand: act.strand, needle: null }] };
    }
    case 'wrap':
      return { strands: strands.map((one) => (one.strand === act.strand ? { ...one, needle: act.needle } : one)) };
    case 'weights':
      return { hasWeights: act.do !== 'off' };
    case 'cast-on':
      return { isOnWaste: act.how === 'open' };
    case 'hang-hem':
      return { isHemHung: true };
    case 'remove-waste':
      return { isOnWaste: false };
    case 'finish':
      return { hasWeights: false };
    case 'counter':
    case 'increase':
    case 'decrease':
    case 'cast-off':
    case 'cast-on-more':
    case 'eyelets':
    case 'push-forward':
    case 'push-back':
    case 'hook-up':
    case 'latch-up':
    case 'check':
      return {};
  }
}

export function isSameSupply(one: Supply, other: Supply): boolean {
  return one.yarn === other.yarn && one.ball === other.ball;
}

function without(waiting: readonly Waiting[], supply: Supply): Waiting[] {
  return waiting.filter((one) => !isSameSupply(one, supply));
}

/** The needle that the yarn comes to last: it is laid from the carriage's side away. */
function endOf({ needles }: ActOf<'lay'>, carriageAt: Side): Slot {
  const [nearest, farthest] = [needles[0], needles.at(-1)] as [Run, Run];
  return carriageAt === 'left' ? farthest.last : nearest.first;
}
