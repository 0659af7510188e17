/** Projects to start from: an empty one and the sample. */
import { gridFromText, makeGrid, type Grid } from '../grid/index.ts';
import { START_BED, type Machine, type Shows } from '../bed/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { AllOver, Band, Group } from '../pattern/index.ts';
import { TO_THE_TOP, type LoopSource, type Piece, type Size, type Start, type Tension } from '../piece/index.ts';
import type { Colourway, Project } from './model.ts';
import type { Place } from './project-at.ts';
import { patternInSizes, pieceInSizes } from './put-back.ts';
import type { Yarn } from './yarn-model.ts';

/** Yarns of a new project: a dark main and a light contrast. How heavy they are nobody has said. */
export const START_YARNS: readonly Yarn[] = [
  { name: 'slate', colour: '#5d7591', count: null, onHand: null },
  { name: 'chalk', colour: '#fbf7ea', count: null, onHand: null },
];

/** One colourway, which nobody has to think of until there is a second one. */
export const START_COLOURWAYS: readonly Colourway[] = [{ id: 'colourway-1', name: '1', yarns: null }];

/** 5 stitches or 25 mm, whichever bites first (common practice, no source). */
const START_FLOAT_LIMIT = { stitches: 5, mm: 25 } as const;

/** In percent: a tenth more is wound and bought (common practice, no source). */
export const START_YARN_MARGIN = 10;

/** Until somebody measures: from the gauge, of fabric that has lain dry for a day. */
export const START_LOOP: LoopSource = { from: 'gauge', state: 'dry-relaxed' };

/** No tension is said. */
export const START_TENSION: Tension = {
  waste: '',
  facing: '',
  turningRow: '',
  outside: '',
  joiningRow: '',
  main: '',
  pattern: '',
  lastRow: '',
};

/** What most machines can do, until a person says what theirs can. */
export const START_MACHINE: Machine = {
  bed: START_BED,
  chooses: 'ahead-seen',
  places: 'any-needle',
  endNeedles: 'switch',
  increases: 'both-edges',
  weights: true,
};

/** A plain piece: 28 stitches and 40 rows in 10 cm, 120 stitches. */
export const START_PIECE: Piece = {
  name: 'piece',
  shape: { kind: 'rectangle', stitches: 120, rows: 100 },
  oddStitch: 'right',
  offset: 0,
  hemRows: 0,
  hem: { turning: 'none', gauge: null },
  sections: [],
  gauge: { stitches: 28, rows: 40 },
  seamAllowance: { left: 0, right: 0 },
  finishedFace: 'knit',
  isInfant: false,
  isLined: false,
  startSide: 'right',
  floatLimit: START_FLOAT_LIMIT,
  begins: 'usual',
  ends: 'cast-off',
  tension: START_TENSION,
  notes: '',
  loop: START_LOOP,
};

/** One size, which nobody has to think of until there is a second one. */
export const START_SIZE: Size = { id: 'size-1', name: '1' };

/** Where a project of one piece and one size is looked at. */
export const START_PLACE: Place = { piece: 'piece-1', size: START_SIZE.id };

/** What a new pattern does about long floats and carries: nothing, until it is asked for. */
export const START_MENDING = { longFloats: 'left', longCarries: 'carried' } as const;

/** Copies of a motif side by side, as drawn. */
export function startGroup(motif: string, across: number): Group {
  return { motif, across, up: 1, isMirrored: false, rise: 0, hasOwnBall: false };
}

/** A band of groups of copies of one motif, even to the eye with the seam closed. */
export function startBand(motif: string, copies: readonly number[]): Band {
  return {
    kind: 'band',
    groups: copies.map((across) => startGroup(motif, across)),
    unit: 'repeat',
    rule: { kind: 'seam' },
    judge: 'figure',
    choice: 0,
    position: { kind: 'centred', section: 'shown', oddRow: 'below' },
    cutCopies: 'kept',
    endNeedles: false,
    colourOrder: null,
    anchors: null,
    ...START_MENDING,
  };
}

/** An all-over up to the top, its middle column in the middle. `from`: where it starts, or the row on which it does. */
export function startAllOver(motif: MotifId, from: Start | number): AllOver {
  return {
    kind: 'all-over',
    motif,
    unit: 'repeat',
    isMirrored: false,
    position: {
      kind: 'from-to',
      from: typeof from === 'number' ? { kind: 'from-row', row: from } : from,
      to: TO_THE_TOP,
    },
    border: { left: 0, right: 0 },
    centre: 'column',
    shift: 0,
    step: 0,
    cutCopies: 'kept',
    endNeedles: true,
    colourOrder: null,
    anchors: null,
    ...START_MENDING,
  };
}

/** A new project with an empty motif. */
export function emptyProject(name: string, motifName: string): Project {
  return projectAround(name, motifName, makeGrid(24, 24), 0, 'worn', START_YARNS);
}

/** The first ids of a project; those that come later are made at random, so that these are never given again. */
function onePiece(piece: Piece, band: Band | null): Pick<Project, 'sizes' | 'pieces'> {
  const sizes = [START_SIZE.id];
  const patterns = band === null ? [] : [patternInSizes('band-1', band, { size: START_SIZE.id, sizes })];
  return { sizes: [START_SIZE], pieces: [pieceInSizes(START_PLACE.piece, piece, patterns, sizes)] };
}

/** The project with this piece alone, in one size; null for a piece without a pattern. */
export function withOnlyPiece(project: Project, piece: Piece, band: Band | null): Project {
  return { ...project, ...onePiece(piece, band) };
}

/** A project around a drawing that came from elsewhere: one motif, one group of one copy. */
export function projectAround(
  name: string,
  motifName: string,
  grid: Grid,
  mainYarn: number,
  shows: Shows,
  yarns: readonly Yarn[],
): Project {
  return {
    name,
    notes: '',
    machine: START_MACHINE,
    yarnMargin: START_YARN_MARGIN,
    yarns,
    mainYarn,
    colourways: START_COLOURWAYS,
    motifs: [{ id: 'motif-1', name: motifName, grid, shows, isLettering: false, underlay: null }],
    ...onePiece(START_PIECE, startBand('motif-1', [1])),
  };
}

/** Our own drawing: a lighthouse with a gull on each side. Topmost row first. */
const LIGHTHOUSE = [
  '......#.......',
  '.....###......',
  '....#####.....',
  '.##..###..##..',
  '#..#.#.#.#..#.',
  '....##.##.....',
  '.....###......',
  '.....###......',
  '....##.##.....',
  '....##.##.....',
  '....#####.....',
  '....#...#.....',
  '...#######....',
  '...##...##....',
  '...#######....',
  '..###...###...',
  '..#########...',
  '#############.',
];

/** The demo scenario: the tapered sleeve of "Skerry", a pullover with lighthouses and gulls above the cuff. */
export function sampleProject(): Project {
  return {
    name: 'Skerry sleeve',
    notes: '',
    machine: START_MACHINE,
    yarnMargin: START_YARN_MARGIN,
    yarns: START_YARNS,
    mainYarn: 0,
    colourways: START_COLOURWAYS,
    motifs: [
      {
        id: 'lighthouse',
        name: 'lighthouse and gulls',
        grid: gridFromText(LIGHTHOUSE, '.#'),
        shows: 'worn',
        isLettering: false,
        underlay: null,
      },
    ],
    ...onePiece(
      {
        ...START_PIECE,
        name: 'sleeve',
        shape: { kind: 'tapered', stitches: 96, stitchesAtTop: 124, rows: 140, straightRows: 14 },
        hemRows: 0,
        seamAllowance: { left: 1, right: 1 },
      },
      { ...startBand('lighthouse', [2, 2]), position: { kind: 'from-row', row: 25 } },
    ),
  };
}
