/**
 * Opening a file: its text read, checked and made a project, and the project planned.
 *
 * Against the least that anybody who opens it must do: `JSON.parse` of the same
 * text, and one read of every cell.
 */
import { makePlan } from '@shared/plan/index.ts';
import {
  projectAt,
  pieceIn,
  projectAround,
  projectFromText,
  START_PIECE,
  START_YARNS,
  startBand,
  type ProjectAt,
} from '@shared/project/index.ts';
import type { Bar } from './bar.ts';
import { gridOf, numbers, ratioBar, readEveryCell } from './timing.ts';
import { fileTextOf } from '../written-projects.ts';

const WIDTH = 200;
const HEIGHT = 1000;

/** A piece of 200 stitches and 1000 rows, all of it one drawing. */
export function openingBars(): Bar[] {
  const random = numbers();
  const drawing = gridOf(WIDTH, HEIGHT, () => (random() < 0.4 ? 1 : 0));
  const text = fileTextOf(knittedAllOver(projectAt(projectAround('p', 'm', drawing, 0, 'worn', START_YARNS))));
  const against = (): number => {
    const { motifs } = JSON.parse(text) as { readonly motifs: readonly unknown[] };
    return motifs.length + readEveryCell(drawing.cells);
  };
  const bar = (name: string, limit: number, work: () => number): Bar =>
    ratioBar({
      name: `${name}, against parsing its text and one read of every cell`,
      limit,
      rounds: 40,
      work,
      against,
    });
  return [
    bar(`file of ${WIDTH} × ${HEIGHT} read`, 10, () => projectFromText(text).motifs.length),
    bar(`file of ${WIDTH} × ${HEIGHT} read and planned`, 60, () => {
      return makePlan(pieceIn(projectAt(projectFromText(text)))).rows.length;
    }),
  ];
}

function knittedAllOver(project: ProjectAt): ProjectAt {
  return {
    ...project,
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: WIDTH, rows: HEIGHT } },
    patterns: [{ ...startBand('motif-1', [1]), position: { kind: 'from-row', row: 1 } }],
  };
}
