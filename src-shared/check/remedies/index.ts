export type { Effect, NowAndThen } from './effect.ts';
export type { RemedyCode, RemedyIntent } from './kinds.ts';
export { remediesTaken, type TakenRemedy } from './taken.ts';
export type { StrandStrip } from './strip.ts';
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
