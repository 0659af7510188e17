/** Letters for the chart: what is to be written and how, set in cells, and where it is held over the chart. Pure. */
import type { Cell, Grid } from '@shared/grid/index.ts';
import {
  missingIn,
  PIXEL_FONTS,
  setText,
  type PixelFont,
  type Setting,
  type SetText,
} from '@shared/motif/lettering/index.ts';
import { OPEN, type LiftedSelection } from '../editing/cutting.ts';

export interface Lettering extends Omit<Setting, 'font'> {
  readonly text: string;
  /** Id of the typeface. */
  readonly font: string;
  /** Where it goes: near the cursor, where it fits, or into the middle of the chart. */
  readonly place: 'near' | 'middle';
}

export const FIRST_LETTERING: Lettering = {
  text: '',
  font: 'silkscreen',
  letterSpacing: 0,
  lineSpacing: 0,
  align: 'left',
  place: 'near',
};

/** The typeface with that id; the first one where none has it. */
export function fontOf(id: string): PixelFont {
  return PIXEL_FONTS.find((font) => font.id === id) ?? (PIXEL_FONTS[0] as PixelFont);
}

/** The letters set in cells, and what the typeface lacks. Throws what `setText` throws. */
export function lettersOf({ text, font, ...setting }: Lettering): SetText {
  return setText(text, { ...setting, font: fontOf(font) });
}

/** A typeface that has all signs that this one lacks; null where there is none. */
export function fontWith(missing: readonly string[], but: string): PixelFont | null {
  const signs = missing.join('');
  return PIXEL_FONTS.find((font) => font.id !== but && missingIn(signs, font).length === 0) ?? null;
}

/** A motif's size with room for what is to be laid, and whether it has to grow for it. */
export function sizeWithRoom(motif: Grid, ink: Grid): { width: number; height: number; grows: boolean } {
  const width = Math.max(motif.width, ink.width);
  const height = Math.max(motif.height, ink.height);
  return { width, height, grows: width > motif.width || height > motif.height };
}

/** The letters in one yarn, lifted with their lower left corner at a cell of the chart. They read on it unless they are laid mirrored. */
export function liftedLetters(ink: Grid, colour: number, at: Cell, reads: boolean): LiftedSelection {
  return {
    name: 'lettering',
    reads,
    cells: { ...ink, cells: ink.cells.map((cell) => (cell === 1 ? colour : OPEN)) },
    at,
  };
}
