/**
 * What is drawn into the cells of squared paper, where nothing but that says
 * where a chart ends: so also a thin sign and faint pencil count, and a speck,
 * a shadow and the lines of the paper do not.
 *
 * Blank paper is what goes on evenly, cell by cell, from the rim of the sheet
 * inwards, in light and in shade; against it each cell's middle is held. And
 * what is drawn into a cell lies about its middle, which writing beside a
 * chart does only by chance.
 */
import { LOOKS, straightened, type CellSides } from './cell-sides.ts';
import type { LatticeModel } from './lattice-model.ts';
import type { Picture } from './picture.ts';

/** Looks from each side of a cell inwards, where its lines are not. */
const INWARDS = 2;
const INNER = LOOKS - 2 * INWARDS;

/** From one blank cell to the next its light changes by at most this share. */
const PAPER_CHANGES = 0.06;

/** The lighter and the darker quarter of a blank cell differ by at most this share. */
const PAPER_VARIES = 0.08;

/** A look darker than paper by this share shows something drawn; noise and the fibres of paper stay below. */
const INKED = 0.12;

/** What is drawn reaches this far in a cell, in looks, and darkens this share of its middle; or it is small, and darkens more. A speck does neither. */
const LEAST_REACH = 4;
const LEAST_INK = 0.06;
const INK_ALONE = 0.15;

/** The middle of what is drawn into a cell lies at most this far from the cell's own, in cells. */
const MOST_ASIDE = 0.1;

/** Paper this many cells away still tells about a cell. */
const PAPER_AROUND = 6;

/** The sides with what is drawn into each cell; it is called even where it fills the cell or lies about its middle. */
export function withDrawnCells(picture: Picture, model: LatticeModel, sides: CellSides, table: Uint8Array): CellSides {
  const { columns, rows, within, isSeen } = sides;
  const { colours } = straightened(picture, model, within);
  const width = columns * LOOKS;
  const brightAt = (cell: number, x: number, y: number): number => {
    const at = ((Math.floor(cell / columns) * LOOKS + y) * width + (cell % columns) * LOOKS + x) * 3;
    return (colours[at] as number) + (colours[at + 1] as number) + (colours[at + 2] as number);
  };
  const isSheet = (cell: number): boolean => isSeen[cell] === 1 && table[cell] === 0;
  const isInside = insideOf(columns, rows, isSheet);
  const usual = new Float32Array(columns * rows);
  const isOne = new Uint8Array(columns * rows);
  for (let cell = 0; cell < usual.length; cell++) {
    const looks = innerOf(brightAt, cell).sort((a, b) => a - b);
    const [darker, lighter] = [looks[looks.length >> 2] as number, looks[(3 * looks.length) >> 2] as number];
    usual[cell] = lighter;
    // Of strokes all over a cell the darker and the lighter quarter differ; a sign leaves most of it blank.
    isOne[cell] = isInside(cell) && lighter - darker <= PAPER_VARIES * lighter ? 1 : 0;
  }
  const paper = paperAround(columns, rows, blankOf(columns, rows, usual, isOne, isInside), usual);
  const filled = new Uint8Array(columns * rows);
  const isEven = new Uint8Array(columns * rows);
  for (let cell = 0; cell < filled.length; cell++) {
    const light = paper[cell] as number;
    if (!isInside(cell) || light === 0) continue;
    const dark = (x: number, y: number): number => Math.max(0, 1 - brightAt(cell, x, y) / light);
    if (!isDrawn(dark)) continue;
    filled[cell] = 1;
    isEven[cell] = isAboutTheMiddle(dark) ? 1 : 0;
  }
  return { ...sides, filled, isEven };
}

type BrightAt = (cell: number, x: number, y: number) => number;

function innerOf(brightAt: BrightAt, cell: number): number[] {
  const looks: number[] = [];
  for (let y = INWARDS; y < LOOKS - INWARDS; y++) {
    for (let x = INWARDS; x < LOOKS - INWARDS; x++) looks.push(brightAt(cell, x, y));
  }
  return looks;
}

/** Whether a cell lies on the sheet with all eight around it: those at its rim are cut by it. */
function insideOf(columns: number, rows: number, isSheet: (cell: number) => boolean): (cell: number) => boolean {
  const isInside = Uint8Array.from({ length: columns * rows }, (_, cell) => {
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    if (column === 0 || row === 0 || column === columns - 1 || row === rows - 1) return 0;
    const isRim = [-columns, 0, columns].some((up) => [-1, 0, 1].some((right) => !isSheet(cell + up + right)));
    return isRim ? 0 : 1;
  });
  return (cell) => isInside[cell] === 1;
}

/** 1 for each cell of blank paper that hangs together with the rim of the sheet: of those that have one brightness, `isOne`. */
function blankOf(
  columns: number,
  rows: number,
  usual: Float32Array,
  isOne: Uint8Array,
  isInside: (cell: number) => boolean,
): Uint8Array {
  const blank = new Uint8Array(columns * rows);
  const isAlike = (one: number, other: number): boolean => {
    const [a, b] = [usual[one] as number, usual[other] as number];
    return Math.abs(a - b) <= PAPER_CHANGES * Math.max(a, b);
  };
  // No cell of the last rows and columns lies inside, so that there are always four beside one that does.
  const beside = (cell: number): number[] => [cell - 1, cell + 1, cell - columns, cell + columns];
  const open = [...blank.keys()].filter((cell) => isOne[cell] === 1 && beside(cell).some((other) => !isInside(other)));
  for (const cell of open) blank[cell] = 1;
  for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
    for (const other of beside(cell)) {
      if (blank[other] === 1 || isOne[other] === 0 || !isAlike(cell, other)) continue;
      blank[other] = 1;
      open.push(other);
    }
  }
  return blank;
}

/** How bright paper is in each cell: as the cell itself where it is blank, else the darkest of the blank cells nearest to it; 0 where none is near. */
function paperAround(columns: number, rows: number, blank: Uint8Array, usual: Float32Array): Float32Array {
  return usual.map((own, cell) => {
    if (blank[cell] === 1) return own;
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    for (let ring = 1; ring <= PAPER_AROUND; ring++) {
      let darkest = Infinity;
      for (let y = Math.max(0, row - ring); y <= Math.min(rows - 1, row + ring); y++) {
        const isEnd = Math.abs(y - row) === ring;
        for (let x = column - ring; x <= column + ring; x += isEnd ? 1 : 2 * ring) {
          if (x < 0 || x >= columns || blank[y * columns + x] === 0) continue;
          darkest = Math.min(darkest, usual[y * columns + x] as number);
        }
      }
      if (darkest < Infinity) return darkest;
    }
    return 0;
  });
}

/** Whether something is drawn into the middle of a cell, by how much darker than paper each look is. */
function isDrawn(dark: (x: number, y: number) => number): boolean {
  const looks = new Float32Array(INNER * INNER);
  let [ink, most] = [0, 0];
  for (let i = 0; i < looks.length; i++) {
    const share = dark(INWARDS + (i % INNER), INWARDS + Math.floor(i / INNER));
    looks[i] = share;
    if (share < INKED) continue;
    ink += share / looks.length;
    most = Math.max(most, share);
  }
  return ink >= INK_ALONE || (ink >= LEAST_INK && reachOf(looks, Math.max(INKED, most / 2)) >= LEAST_REACH);
}

/** How far the looks reach, across or up, that are at least so dark and hang together. */
function reachOf(looks: Float32Array, least: number): number {
  const left = Uint8Array.from(looks, (share) => (share >= least ? 1 : 0));
  let reach = 0;
  for (let first = left.indexOf(1); first >= 0; first = left.indexOf(1)) {
    const [xs, ys]: [number[], number[]] = [[], []];
    const open = [first];
    left[first] = 0;
    for (let i = open.pop(); i !== undefined; i = open.pop()) {
      const [x, y] = [i % INNER, Math.floor(i / INNER)];
      xs.push(x);
      ys.push(y);
      for (let v = Math.max(0, y - 1); v <= Math.min(INNER - 1, y + 1); v++) {
        for (let u = Math.max(0, x - 1); u <= Math.min(INNER - 1, x + 1); u++) {
          if (left[v * INNER + u] === 0) continue;
          left[v * INNER + u] = 0;
          open.push(v * INNER + u);
        }
      }
    }
    reach = Math.max(reach, ...[xs, ys].map((places) => Math.max(...places) - Math.min(...places) + 1));
  }
  return reach;
}

function isAboutTheMiddle(dark: (x: number, y: number) => number): boolean {
  let [sum, across, down] = [0, 0, 0];
  // The outermost looks show the lines of the paper.
  for (let y = 1; y < LOOKS - 1; y++) {
    for (let x = 1; x < LOOKS - 1; x++) {
      const share = dark(x, y);
      if (share < INKED) continue;
      sum += share;
      across += share * ((x + 0.5) / LOOKS - 0.5);
      down += share * ((y + 0.5) / LOOKS - 0.5);
    }
  }
  return Math.max(Math.abs(across), Math.abs(down)) <= MOST_ASIDE * sum;
}
