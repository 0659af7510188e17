/** A small project for each kind of remedy. Motifs and sizes are invented. */
import type { Slot } from '@shared/bed/index.ts';
import { startAllOver } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';
import { projectWith } from '../fabric/pieces.ts';
import { byHand, COLUMNS, FIVE } from './found.ts';

/** Two stitches of contrast at the left of each copy of eight; the copies three needles apart, so that nine lie between. */
export const LEANING = projectWith({
  motif: ['XX......'],
  copies: [1, 1],
  stitches: 30,
  rows: 3,
  piece: FIVE,
  band: { ...byHand(-10, 1), unit: 'whole' },
});

const SECTION = { isLined: false, gauge: null, tension: '', rows: 10 };
/** Two columns in the upper of two sections, three floats too long between them. */
export const IN_SECTION = projectWith({
  motif: ['X', 'X', 'X'],
  copies: [1, 1],
  stitches: 20,
  rows: 40,
  piece: {
    ...FIVE,
    sections: [
      { ...SECTION, name: 'cuff' },
      { ...SECTION, name: 'band' },
    ],
  },
  band: { ...byHand(-5, 4), position: { kind: 'centred', section: { named: 'band' }, oddRow: 'below' } },
});

/** Between groups of five and four there are seven needles; one of the other choices has fewer. */
export const UNEVEN = projectWith({
  motif: ['.X.X.X.X.X.X', '.XXXXXXXXXX.', '.XXXXXXXXXXX'],
  copies: [5, 4],
  stitches: 120,
  rows: 60,
  band: { unit: 'whole' },
});

const NARROW = projectWith({ motif: ['X...', '....'], copies: [1], stitches: 24, rows: 12, piece: FIVE });
const ALL_OVER = { ...startAllOver('motif', 3), endNeedles: false, unit: 'whole' as const };
/** Every second row is blank: the contrast is carried from one edge to the other, or floats across by the edge needles. */
export const BLANK_ROWS = settled(NARROW, {
  machine: { ...NARROW.machine, endNeedles: 'switch' },
  patterns: [ALL_OVER],
});
export const HOOKED = settled(BLANK_ROWS, { patterns: [{ ...ALL_OVER, longFloats: 'hooked-up' }] });

/** L2 and R2 in the pattern, and the edge needles with them: eight needles to each edge. */
export const NEAR = projectWith({
  motif: ['X', 'X', 'X'],
  copies: [1, 1],
  stitches: 20,
  rows: 5,
  piece: FIVE,
  band: { rule: { kind: 'by-hand', first: [-2, 1] as Slot[] }, endNeedles: true },
});

/** Rows 2 and 4 knit main and two contrasts, one stitch of X and one of O twice over. */
export const THREE_YARNS = projectWith({
  motif: ['XOX.', 'X...', 'OXO.', 'X...'],
  copies: [2],
  stitches: 12,
  rows: 5,
  band: { unit: 'whole' },
});

export { COLUMNS };
