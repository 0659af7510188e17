export type { Effect, NowAndThen } from './effect.ts';
export { remedySetting as settingOf, type RemedyCode, type RemedyIntent } from './kinds.ts';
export { remediesTaken, type TakenRemedy } from './taken.ts';
export { mostYarnsIn, type StrandStrip } from './strip.ts';
export {
  isMendable,
  mostEffectiveFirst,
  Remedies,
  remediesAt,
  remediesFor,
  remediesInSteps,
  type PicturedRemedy,
  type Remedy,
} from './work-out.ts';
