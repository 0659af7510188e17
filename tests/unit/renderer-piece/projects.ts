/** Small projects whose figures can be counted by eye. */
import { gridFromText } from '@shared/grid/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import type { Band } from '@shared/pattern/index.ts';
import type { Bed } from '@shared/bed/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import { START_MACHINE, pieceIn, START_PIECE, START_YARNS, startBand, type ProjectAt } from '@shared/project/index.ts';
import { writtenProject } from '../../written-projects.ts';

/** A project around a drawing in `.` main and `#` contrast, drawn as on the needles, the topmost row first. */
export function projectOf(
  drawing: readonly string[],
  copies: readonly number[],
  to: { readonly bed?: Bed; readonly piece?: Partial<Piece>; readonly band?: Partial<Band> } = {},
): ProjectAt {
  return writtenProject({
    name: 'small',
    notes: '',
    machine: { ...START_MACHINE, ...(to.bed && { bed: to.bed }) },
    yarnMargin: 10,
    yarns: START_YARNS,
    mainYarn: 0,
    motifs: [
      {
        id: 'm',
        name: 'm',
        grid: gridFromText(drawing, '.#'),
        shows: 'needles',
        isLettering: false,
        underlay: null,
      },
    ],
    piece: { ...START_PIECE, ...to.piece },
    patterns: [{ ...startBand('m', copies), unit: 'whole', ...to.band }],
  });
}

/**
 * Two copies of `#.#` over `.#.`, one a group, on 20 needles L10 … R10, with
 * first needles L8 and R4, on rows 3 and 4 of 6. The carriage starts at the right.
 */
export function twoGroups(
  to: Parameters<typeof projectOf>[2] & { readonly drawing?: readonly string[] } = {},
): ProjectAt {
  return projectOf(to.drawing ?? ['.#.', '#.#'], [1, 1], {
    ...to,
    piece: { shape: { kind: 'rectangle', stitches: 20, rows: 6 }, ...to.piece },
    band: {
      rule: { kind: 'by-hand', first: [-8, 3] as never },
      position: { kind: 'from-row', row: 3 },
      ...to.band,
    },
  });
}

export function planOf(project: ProjectAt): Plan {
  return makePlan(pieceIn(project));
}
