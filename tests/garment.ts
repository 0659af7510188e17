/** A garment of a front and two sleeves, in sizes S and M: plain but for a line of contrast on the sleeve. */
import { gridFromText } from '../src-shared/grid/index.ts';
import {
  projectAt,
  START_MACHINE,
  START_PIECE,
  startBand,
  type PieceInSizes,
  type Project,
  type ProjectAt,
} from '../src-shared/project/index.ts';
import { writtenProject } from './written-projects.ts';

const SIZES = ['S', 'M'].map((name) => ({ id: `size-${name}`, name }));

/** A rectangle of so many stitches in each size, as the only piece of a project. */
function only(id: string, stitches: readonly number[], rows: number, patterns: ProjectAt['patterns']): Project {
  const { whole } = writtenProject({
    name: 'Skerry',
    notes: '',
    machine: START_MACHINE,
    yarnMargin: 10,
    yarns: [
      { name: 'slate', colour: '#2f4858', count: { system: 'tex', value: 1000, plies: 1 }, onHand: null },
      { name: 'chalk', colour: '#f5f1e6', count: null, onHand: null },
    ],
    mainYarn: 0,
    motifs: [
      {
        id: 'line',
        name: 'line',
        grid: gridFromText(['####'], '.#'),
        shows: 'worn',
        isLettering: false,
        underlay: null,
      },
    ],
    piece: { ...START_PIECE, name: id, shape: { kind: 'rectangle', stitches: 1, rows } },
    patterns,
  });
  const pieces = whole.pieces.map((piece) => {
    const [numbers] = piece.perSize as [PieceInSizes['perSize'][number]];
    const perSize = SIZES.map((size, at) => ({
      ...numbers,
      size: size.id,
      shape: { kind: 'rectangle' as const, stitches: stitches[at] ?? 1, rows },
    }));
    return {
      ...piece,
      id,
      perSize,
      patterns: piece.patterns.map((pattern) => ({ ...pattern, id: `pattern-of-${id}` })),
    };
  });
  return { ...whole, sizes: SIZES, pieces };
}

/**
 * The front of 100 (M: 110) stitches × 50 rows, knitted once; the sleeve of 60
 * (M: 64) × 40, knitted twice, with four stitches of chalk in the middle of row
 * 20. 28 stitches and 40 rows in 10 cm; slate weighs 1 g a metre, chalk nobody knows.
 */
export function garment(name = 'Skerry'): Project {
  const front = only('front', [100, 110], 50, []);
  const line = { ...startBand('line', [1]), unit: 'whole' as const, position: { kind: 'from-row' as const, row: 20 } };
  const sleeve = only('sleeve', [60, 64], 40, [line]);
  return { ...front, name, pieces: [...front.pieces, ...sleeve.pieces.map((piece) => ({ ...piece, knit: 2 }))] };
}

/** The garment looked at from a piece in a size, by their names. */
export function garmentAt(piece: string, size: string, project = garment()): ProjectAt {
  return projectAt(project, {
    piece: project.pieces.find(({ name }) => name === piece)?.id ?? '',
    size: project.sizes.find(({ name }) => name === size)?.id ?? '',
  });
}
