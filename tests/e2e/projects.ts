/** Projects written as files, for the program to open. */
import { gridFromText } from '@shared/grid/index.ts';
import type { Band } from '@shared/pattern/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import { START_MACHINE, START_PIECE, START_YARNS, startBand, type ProjectAt } from '@shared/project/index.ts';
import { writtenProject, fileTextOf } from '../written-projects.ts';

/**
 * Common practice, no source: 120 stitches, copies of 12 stitches whose first
 * column is blank on the needles. Two groups of three stand at L48 and R12, the
 * eye sees 13 / 24 / 13.
 */
export function twelveStitchMotif(
  copies: readonly number[],
  to: { readonly piece?: Partial<Piece>; readonly band?: Partial<Band> } = {},
): ProjectAt {
  const drawing = ['.#.#.#.#.#.#', '.##########.', '.###########'];
  return writtenProject({
    name: 'Twelve',
    notes: '',
    machine: START_MACHINE,
    yarnMargin: 10,
    yarns: START_YARNS,
    mainYarn: 0,
    motifs: [
      {
        id: 'm',
        name: 'twelve',
        grid: gridFromText(drawing, '.#'),
        shows: 'needles',
        isLettering: false,
        underlay: null,
      },
    ],
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 120, rows: 60 }, ...to.piece },
    patterns: [{ ...startBand('m', copies), unit: 'whole', ...to.band }],
  });
}

export const textOf = fileTextOf;
