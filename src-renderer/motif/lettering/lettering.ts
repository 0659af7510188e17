/** Letters for the chart: what is to be written and how, set in cells, and where it is held over the chart. Pure. */
import type { Cell, Grid } from '@shared/grid/index.ts';
import { PIXEL_FONTS, setText, type PixelFont, type Setting } from '@shared/motif/lettering/index.ts';
import { OPEN, type LiftedSelection } from '../editing/cutting.ts';

export interface Lettering extends Omit<Setting, 'font'> {
  readonly text: string;
  /** Id of the typeface. */
  readonly font: string;
}

export const FIRST_LETTERING: Lettering = {
  text: '',
  font: 'silkscreen',
  letterSpacing: 0,
  lineSpacing: 0,
  align: 'left',
};

/** The typeface with that id; the first one where none has it. */
export function fontOf(id: string): PixelFont {
  return PIXEL_FONTS.find((font) => font.id === id) ?? (PIXEL_FONTS[0] as PixelFont);
}

/** The ink of the letters: 1 where there is any. Throws what `setText` throws. */
export function inkOf({ text, font, ...setting }: Lettering): Grid {
  return setText(text, { ...setting, font: fontOf(font) });
}

/** A motif's size with room for what is to be laid, and whether it has to grow for it. */
export function sizeWithRoom(motif: Grid, ink: Grid): { width: number; height: number; grows: boolean } {
  const width = Math.max(motif.width, ink.width);
  const height = Math.max(motif.height, ink.height);
  return { width, height, grows: width > motif.width || height > motif.height };
}

/**
 * The letters in one yarn, lifted with their lower left corner at the cursor,
 * or as far left and down of it as it takes to lie on the motif whole. They
 * read on the chart unless they are laid mirrored.
 */
export function liftedLetters(ink: Grid, colour: number, motif: Grid, cursor: Cell, reads: boolean): LiftedSelection {
  return {
    name: 'lettering',
    reads,
    cells: { ...ink, cells: ink.cells.map((cell) => (cell === 1 ? colour : OPEN)) },
    at: {
      column: Math.max(0, Math.min(cursor.column, motif.width - ink.width)),
      row: Math.max(0, Math.min(cursor.row, motif.height - ink.height)),
    },
  };
}
