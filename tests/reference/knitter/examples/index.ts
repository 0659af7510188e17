/** Running orders of common practice, each with every act written by hand. */
import { allOver } from './all-over.ts';
import { band } from './band.ts';
import { byHand } from './by-hand.ts';
import type { Example } from './example.ts';
import { bandAboveHem } from './band-above-hem.ts';
import { hem } from './hem.ts';
import { oneYarn } from './one-yarn.ts';
import { ownBalls } from './own-balls.ts';
import { shaped } from './shaped.ts';
import { swatch } from './swatch.ts';
import { touching } from './touching.ts';
import { twoPatterns } from './two-patterns.ts';

export const EXAMPLES: Readonly<Record<string, Example>> = {
  'a plain swatch': swatch,
  'a band of two colours with its set-up row': band,
  'a folded hem': hem,
  'a band right above a hem': bandAboveHem,
  'a shaped piece': shaped,
  'balls laid by hand': ownBalls,
  'balls right beside each other': touching,
  'a row all in contrast': oneYarn,
  'an all-over that is shaped': allOver,
  'a machine that chooses nothing': byHand,
  'two patterns with one plain row between': twoPatterns,
};

export { written, type Example } from './example.ts';
