/** Projects that put the sheet to the test: plain, small, long, crowded, badly named. */
import { gridFromText, makeGrid, type Grid } from '@shared/grid/index.ts';
import {
  sampleProject,
  startBand,
  startAllOver,
  startGroup,
  START_MACHINE,
  START_PIECE,
  type ProjectAt,
  projectAt,
} from '@shared/project/index.ts';
import { onRows, writtenProject } from '../../written-projects.ts';

const sample = projectAt(sampleProject());

/** Cells in no order, the same on every run. */
export function scattered(width: number, height: number, colours: number): Grid {
  const grid = makeGrid(width, height);
  let state = 7;
  for (let i = 0; i < grid.cells.length; i++) {
    state = (Math.imul(state, 1103515245) + 12345) >>> 0;
    const drawn = (state >>> 16) % (3 * colours);
    grid.cells[i] = drawn < colours ? drawn : 0;
  }
  return grid;
}

function withGrid(
  name: string,
  grid: Grid,
): Pick<ProjectAt, 'name' | 'notes' | 'machine' | 'motifs' | 'yarns' | 'mainYarn'> {
  return {
    name,
    notes: '',
    machine: START_MACHINE,
    yarns: sample.yarns,
    mainYarn: 0,
    motifs: [{ id: 'm', name: 'motif', grid, shows: 'worn', isLettering: false, underlay: null }],
  };
}

/** Twelve stitches by 31 rows, the first column blank as it comes to lie on the needles (the last as drawn). */
function hemMotif(): Grid {
  const grid = makeGrid(12, 31);
  for (let row = 0; row < 31; row++) {
    for (let column = 0; column < 11; column++) {
      grid.cells[row * 12 + column] = (column * 3 + row * 5) % 7 < 3 || column === row % 11 ? 1 : 0;
    }
  }
  return grid;
}

/** Hem of 100 rows, 120 stitches, two groups of three 12-stitch copies (common practice, no source). */
export function hemProject(): ProjectAt {
  return writtenProject({
    ...withGrid('Harbour hem', hemMotif()),
    piece: { ...START_PIECE, name: 'hem', shape: { kind: 'rectangle', stitches: 120, rows: 100 }, hemRows: 100 },
    patterns: [startBand('m', [3, 3])],
  });
}

/** The largest motif that a bed of 200 needles takes. */
export function hugeProject(): ProjectAt {
  return writtenProject({
    ...withGrid('Huge', scattered(200, 1000, 2)),
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 200, rows: 1000 } },
    patterns: [{ ...startBand('m', [1]), unit: 'whole' }],
  });
}

/** 33 groups in two bands, four yarns, names that are long, marked up, or in a script the font lacks. */
export function crowdedProject(): ProjectAt {
  return writtenProject({
    ...withGrid(
      'Crowded <&"> with a name that goes on and on, 漢字 and 👩‍👩‍👧 too, until it needs two lines at the very least',
      gridFromText(['..1.', '.212', '.131'], '.123'),
    ),
    yarns: [
      ...sample.yarns,
      {
        name: 'a yarn whose name is eighty characters long, as somebody will surely write it so',
        colour: '#d55e00',
        count: null,
        onHand: null,
      },
      { name: 'W'.repeat(80), colour: '#0072b2', count: { system: 'tex', value: 50, plies: 1 }, onHand: null },
    ],
    piece: { ...START_PIECE, isInfant: true, shape: { kind: 'rectangle', stitches: 180, rows: 60 } },
    patterns: [
      {
        ...startBand('m', []),
        groups: Array.from({ length: 30 }, () => ({ ...startGroup('m', 1), hasOwnBall: true })),
      },
      { ...startBand('m', [5, 2, 1]), position: { kind: 'from-row', row: 2 }, rule: { kind: 'even' } },
    ],
  });
}

/** One stitch, one row. */
export function tinyProject(): ProjectAt {
  return writtenProject({
    ...withGrid('Tiny', gridFromText(['#'], '.#')),
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 1, rows: 1 } },
    patterns: [startBand('m', [1])],
  });
}

/** A scarf: narrow and long, a short hem, two bands far apart. */
export function scarfProject(): ProjectAt {
  return writtenProject({
    ...withGrid('Scarf', gridFromText(['.#.', '###'], '.#')),
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 24, rows: 900 }, hemRows: 12 },
    patterns: [startBand('m', [1, 1, 1]), { ...startBand('m', [2]), position: { kind: 'from-row', row: 400 } }],
  });
}

/** A sleeve without groups, covered by bricks of 8 stitches that end before its edges lower down. */
export function filledProject(): ProjectAt {
  return {
    ...sample,
    ...withGrid('Bricks', gridFromText(['........', 'XXX.....', 'X.X.....', 'XXX.....'], '.X')),
    patterns: [
      { ...startAllOver('m', 2), position: onRows(2, 59), border: { left: 3, right: 3 } },
      { ...startAllOver('m', 60), step: 4, cutCopies: 'left-out' },
    ],
  };
}

/** Nothing placed. */
export function plainProject(): ProjectAt {
  return { ...sample, patterns: [] };
}

/** Sixteen yarns, all in one motif, in colours of which several are alike in grey. */
export function sixteenProject(): ProjectAt {
  const colours =
    '1f2937 f5f1e6 c0392b 2e7d32 1565c0 f9a825 6a1b9a ef6c00 00838f ad1457 5d4037 9e9d24 78909c ffffff 000000 e8b4b8';
  const lines = Array.from({ length: 30 }, (_, line) => {
    const yarn = 'bcdefghijklmnop'.charAt(14 - (line >> 1));
    return line % 2 === 0 ? `aa${yarn.repeat(4)}` : `a${yarn.repeat(5)}`;
  });
  return writtenProject({
    ...withGrid('Sixteen', gridFromText(lines, 'abcdefghijklmnop')),
    yarns: colours
      .split(' ')
      .map((colour, index) => ({ name: `yarn ${index + 1}`, colour: `#${colour}`, count: null, onHand: null })),
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 120, rows: 90 } },
    patterns: [{ ...startBand('m', [2, 3]), unit: 'whole' }],
  });
}

/** A drawing whose chart goes over several pages both ways. */
export function largeProject(): ProjectAt {
  return writtenProject({
    ...withGrid('Large', scattered(80, 110, 3)),
    yarns: [...sample.yarns, { name: 'rust', colour: '#b5532a', count: null, onHand: null }],
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 120, rows: 130 } },
    patterns: [{ ...startBand('m', [1]), unit: 'whole' }],
  });
}

/** Three unlike motifs beside and above each other, one of them on rows that begin with either side of the carriage. */
export function threeMotifsProject(): ProjectAt {
  const band = startBand('lighthouse', [2]);
  const motif = (id: string, name: string, grid: Grid): ProjectAt['motifs'][number] => ({
    ...(sample.motifs[0] as ProjectAt['motifs'][number]),
    id,
    name,
    grid,
  });
  return {
    ...sample,
    name: 'Three motifs',
    yarns: [...sample.yarns, { name: 'rust', colour: '#b5532a', count: null, onHand: null }],
    motifs: [
      ...sample.motifs,
      motif('lozenge', 'lozenge', gridFromText(['..1..', '.111.', '11111', '.111.', '..1..'], '.1')),
      motif('wave', 'a long wave of the sea', gridFromText(['.22....2', '2..2..2.', '.22.22..'], '.12')),
    ],
    patterns: [
      { ...band, groups: [startGroup('lighthouse', 2), startGroup('lozenge', 3), startGroup('wave', 2)] },
      { ...startBand('lozenge', [2, 2]), position: { kind: 'from-row', row: 91 } },
      { ...startBand('wave', [1]), position: { kind: 'from-row', row: 120 } },
    ],
  };
}

export const PROJECTS: Readonly<Record<string, () => ProjectAt>> = {
  sample: () => sample,
  hem: hemProject,
  crowded: crowdedProject,
  tiny: tinyProject,
  scarf: scarfProject,
  filled: filledProject,
  plain: plainProject,
  sixteen: sixteenProject,
  large: largeProject,
  three: threeMotifsProject,
  huge: hugeProject,
};
