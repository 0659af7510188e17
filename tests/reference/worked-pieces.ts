/** Pieces that are worked by hand in other tests: one of each kind of trouble. Common practice, no source. */
import type { Position } from '@shared/piece/index.ts';
import {
  projectAt,
  sampleProject,
  startBand,
  startAllOver,
  startGroup,
  type ProjectAt,
} from '@shared/project/index.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from '../unit/fabric/pieces.ts';

const fromRow = (row: number): Position => ({ kind: 'from-row', row });

const groups = { motif: BLANK_FIRST_12_BY_31, copies: [3, 3], stitches: 120, rows: 160 } as const;

/** 14 increases at each edge, beginning above a folded hem of 20 rows. */
function sleeve(): ProjectAt {
  const plain = projectWith({ motif: ['X.X'], copies: [2], stitches: 62, rows: 150, band: { position: fromRow(100) } });
  const shape = { kind: 'tapered', stitches: 62, stitchesAtTop: 90, rows: 150, straightRows: 10 } as const;
  return { ...plain, piece: { ...plain.piece, hemRows: 20, shape } };
}

/** An all-over with end needles on, narrower and wider again. */
function body(): ProjectAt {
  const plain = projectWith({ motif: ['X...', '.X..'], copies: [1], stitches: 16, rows: 20 });
  const steps = [
    { row: 7, left: 1, right: 1 },
    { row: 12, left: -1, right: -1 },
  ];
  const shape = { kind: 'steps', stitches: 16, rows: 20, steps } as const;
  return { ...plain, patterns: [startAllOver('motif', 3)], piece: { ...plain.piece, shape } };
}

/** Two patterns with so many plain rows between them. */
function apart(plainRows: number): ProjectAt {
  const project = projectWith({ motif: ['.X.', 'XXX'], copies: [1], stitches: 11, rows: 20 });
  const band = startBand('motif', [1]);
  const bands = [
    { ...band, position: fromRow(5) },
    { ...band, position: fromRow(7 + plainRows) },
  ];
  return { ...project, patterns: bands };
}

/** Five stitches cast off at both edges. */
function armhole(): ProjectAt {
  const project = projectWith({ motif: ['X'], copies: [1], stitches: 40, rows: 60 });
  const shape = { kind: 'steps', stitches: 40, rows: 60, steps: [{ row: 41, left: -5, right: -5 }] } as const;
  const bands = [{ ...startBand('motif', [1]), groups: [startGroup('motif', 1)], position: fromRow(10) }];
  return { ...project, patterns: bands, piece: { ...project.piece, shape } };
}

export const WORKED: Readonly<Record<string, () => ProjectAt>> = {
  'the sample': () => projectAt(sampleProject()),
  'two groups of three copies': () => projectWith(groups),
  'a hem with a motif on its outside': () => projectWith({ ...groups, piece: { hemRows: 100 } }),
  'a hem over eyelets, from the left': () =>
    projectWith({ ...groups, piece: { hemRows: 100, startSide: 'left', hem: { turning: 'eyelets', gauge: null } } }),
  'a sleeve with 14 increases above its hem': sleeve,
  'an all-over body with end needles on, shaped': body,
  'two patterns that touch': () => apart(0),
  'two patterns a plain row apart': () => apart(1),
  'two patterns two plain rows apart': () => apart(2),
  'two patterns three plain rows apart': () => apart(3),
  'rows of one yarn': () =>
    projectWith({
      motif: ['X.X.X.X.X.X', '...........', 'XXXXXXXXXXX', '.X.X.X.X.X.'],
      copies: [1],
      stitches: 11,
      rows: 12,
      band: { position: fromRow(4), unit: 'whole' },
    }),
  'an own ball for each of two groups': () =>
    projectWith({ ...groups, motif: ['X.X', 'XXX'], group: { hasOwnBall: true }, rows: 20 }),
  'three yarns in a row': () =>
    projectWith({ motif: ['X.O.', '.XO.'], copies: [2], stitches: 20, rows: 12, band: { position: fromRow(5) } }),
  'an armhole cast off on both sides': armhole,
};
