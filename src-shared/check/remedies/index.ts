export type { Effect, NowAndThen } from './effect.ts';
export type { RemedyCode, RemedyIntent } from './kinds.ts';
export { remediesTaken, type TakenRemedy } from './taken.ts';
export { isMendable, mostEffectiveFirst, Remedies, remediesFor, remediesInSteps, type Remedy } from './work-out.ts';
