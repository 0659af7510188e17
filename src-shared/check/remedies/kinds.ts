/** The remedies there are: a file each, and a line here twice. */
import type { KnitPiece } from '../../project/piece-in.ts';
import type { Setting } from '../setting.ts';
import { anchors, type Anchors } from './anchors.ts';
import { cutCarries, type CutCarries } from './cut-carries.ts';
import { endNeedlesOff, type EndNeedlesOff } from './end-needles-off.ts';
import { endNeedlesOn, type EndNeedlesOn } from './end-needles-on.ts';
import { hookUp, type HookUp } from './hook-up.ts';
import type { RemedyKind } from './kind.ts';
import { latchUp, type LatchUp } from './latch-up.ts';
import { lineSection, type LineSection } from './line-section.ts';
import { lining, type Lining } from './lining.ts';
import { mirroredOrder, type MirroredOrder } from './mirrored-order.ts';
import { moveGroups, type MoveGroups } from './move-groups.ts';
import { otherPlacing, type OtherPlacing } from './other-placing.ts';
import { otherYarn, type OtherYarn } from './other-yarn.ts';
import { ownBalls, type OwnBalls } from './own-balls.ts';

export type RemedyIntent =
  | OwnBalls
  | Anchors
  | LatchUp
  | HookUp
  | EndNeedlesOn
  | EndNeedlesOff
  | CutCarries
  | OtherPlacing
  | MoveGroups
  | MirroredOrder
  | LineSection
  | Lining
  | OtherYarn;
export type RemedyCode = RemedyIntent['code'];

/** In the order in which those that leave as few are told. */
const KINDS: { readonly [Code in RemedyCode]: RemedyKind<Extract<RemedyIntent, { readonly code: Code }>> } = {
  'end-needles-off': endNeedlesOff,
  'own-balls': ownBalls,
  anchors,
  'latch-up': latchUp,
  'hook-up': hookUp,
  'end-needles-on': endNeedlesOn,
  'cut-carries': cutCarries,
  'other-placing': otherPlacing,
  'move-groups': moveGroups,
  'mirrored-order': mirroredOrder,
  'line-section': lineSection,
  lining,
  'other-yarn': otherYarn,
};

export const REMEDY_CODES = Object.keys(KINDS) as readonly RemedyCode[];

/** The kind of an intent, which takes intents of any kind for its own. */
export function kindOf(code: RemedyCode): RemedyKind<RemedyIntent> {
  return KINDS[code] as unknown as RemedyKind<RemedyIntent>;
}

export function isRemedyIntent(intent: { readonly code: string }): intent is RemedyIntent {
  return Object.hasOwn(KINDS, intent.code);
}

/** What is to be set for it; null where there is nothing left to do, or what it names is gone. */
export function remedySetting(piece: KnitPiece, intent: RemedyIntent): Setting | null {
  return kindOf(intent.code).setting(piece, intent);
}
