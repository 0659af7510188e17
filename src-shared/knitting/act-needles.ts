/** On which needles an act is done. */
import type { Run, Slot } from '../bed/index.ts';
import type { Act } from '../plan/index.ts';

/** From left to right, neighbours as one run; empty for what is done to the carriage, the yarns or the whole fabric. */
export function needlesOfAct(act: Act): readonly Run[] {
  switch (act.kind) {
    case 'cast-on':
    case 'cast-off':
    case 'cast-on-more':
    case 'hang-hem':
    case 'finish':
      return [act.needles];
    case 'increase':
    case 'decrease':
    case 'eyelets':
    case 'push-forward':
    case 'push-back':
      return runsOf(act.needles);
    case 'wrap':
    case 'hook-up':
    case 'latch-up':
      return [{ first: act.needle, last: act.needle }];
    case 'lay':
      return act.needles;
    case 'first-needles':
      return act.groups.map(({ needle, last }) => ({ first: needle, last }));
    case 'check':
      return [{ first: act.first, last: act.last }];
    case 'unthread':
      return act.waitsAt === 'cut' ? [] : [{ first: act.waitsAt, last: act.waitsAt }];
    case 'counter':
    case 'tension':
    case 'thread':
    case 'carriage':
    case 'selecting':
    case 'end-needles':
    case 'strand':
    case 'cut':
    case 'remove-waste':
    case 'weights':
      return [];
  }
}

/** Needles from left to right as runs of neighbours. */
export function runsOf(needles: readonly Slot[]): Run[] {
  const runs: Run[] = [];
  for (const needle of needles) {
    const before = runs.at(-1);
    if (before && needle === before.last + 1) runs[runs.length - 1] = { first: before.first, last: needle };
    else runs.push({ first: needle, last: needle });
  }
  return runs;
}
