/** Small projects to plan. Names and sizes are invented. */
import type { Bed, Shows } from '@shared/bed/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import type { Band, Group } from '@shared/pattern/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import {
  START_MACHINE,
  START_PIECE,
  START_YARNS,
  startBand,
  type ProjectAt,
  type Yarn,
} from '@shared/project/index.ts';
import { writtenProject } from '../../written-projects.ts';

interface Given {
  /** Topmost row first: `.` ground, `X` yarn 1, `O` yarn 2. */
  readonly motif: readonly string[];
  readonly copies: readonly number[];
  readonly group?: Partial<Group>;
  readonly stitches: number;
  readonly rows: number;
  readonly shows?: Shows;
  readonly bed?: Bed;
  readonly piece?: Partial<Piece>;
  readonly band?: Partial<Band>;
  readonly yarns?: readonly Yarn[];
}

const THIRD: Yarn = { name: 'kelp', colour: '#20302a', count: null, onHand: null };

/** One motif placed in one band on a rectangle. */
export function projectWith({
  motif,
  copies,
  group,
  stitches,
  rows,
  shows = 'needles',
  bed = START_MACHINE.bed,
  piece,
  band,
  yarns,
}: Given): ProjectAt {
  const start = startBand('motif', copies);
  return writtenProject({
    name: 'trial',
    notes: '',
    machine: { ...START_MACHINE, bed },
    yarnMargin: 10,
    yarns: yarns ?? [...START_YARNS, THIRD],
    mainYarn: 0,
    motifs: [
      {
        id: 'motif',
        name: 'trial motif',
        grid: gridFromText(motif, '.XO'),
        shows,
        isLettering: false,
        underlay: null,
      },
    ],
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches, rows }, ...piece },
    patterns: [{ ...start, groups: start.groups.map((own) => ({ ...own, ...group })), ...band }],
  });
}

/** 12 stitches and 31 rows without a smaller repeat; the first column is blank. */
export const BLANK_FIRST_12_BY_31: readonly string[] = Array.from({ length: 31 }, (_, row) =>
  row % 2 === 0 ? '.XX.XX.XX.XX' : '.X.........X',
);
