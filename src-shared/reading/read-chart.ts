/**
 * A chart in a photo or scan, read into cells.
 *
 * Straighten, count columns and rows, look into each cell, take uneven light
 * off, sort by yarn, and say how sure each cell is. Each part can be had
 * alone, so that a person may correct what was proposed and everything after
 * it is done again while a corner moves.
 */
import { MOST_COLUMNS, MOST_ROWS, type Grid } from '../grid/index.ts';
import { problemError } from '../problem/index.ts';
import { MOST_YARNS } from './clusters.ts';
import { confidenceOf, type Confidence, type SortedCells } from './confidence.ts';
import { assertCorners, sideLengths, type Corners } from './corners.ts';
import { driftOf, mostOf, NO_DRIFT, type Drift } from './drift.ts';
import { bulges, flatten } from './flatten.ts';
import { findGrid, type GridProposal } from './find-grid.ts';
import { groundFirst } from './ground-first.ts';
import type { Photo } from './photo.ts';
import type { Picture } from './picture.ts';
import { assertReadable, LEAST_PIXELS, qualityOf } from './quality.ts';
import { sampleCells } from './sample.ts';
import { asSure, sortSeen, type Levels } from './sort-seen.ts';
import { sortSymbols } from './sort-symbols.ts';
import type { Steps } from './steps.ts';
import { unlikeness } from './symbol-looks.ts';
import { lookAtSymbols } from './symbols.ts';
import { naturalSize, sizeForCells, straighten } from './straighten.ts';

export interface ChartOptions {
  /** Null: as many as are found. */
  readonly columns: number | null;
  readonly rows: number | null;
  readonly levels: Levels;
}

export interface ChartReading extends Confidence {
  readonly grid: Grid;
  /** `#rrggbb` by palette index: the ground first, then in the order in which knitting meets them. */
  readonly colours: readonly string[];
  readonly ground: number;
}

/** Counting needs no more pixels than this; lines of 300 columns are still four pixels apart. */
const COUNTING_PIXELS = 4e6;

/** Cells that lie off by less than this are seen well all the same, in cells. */
const MUCH_DRIFT = 0.15;

/** With a larger share of doubtful cells than this, the reading is a guess. */
const MOST_DOUBTFUL = 0.3;

/**
 * Columns and rows that the picture between `corners` seems to have. Throws
 * `corners-unusable` or `corner-outside-picture`; a count that is not found is null.
 */
export function* proposeGrid(photo: Photo, corners: Corners): Steps<GridProposal> {
  const straight = yield* straighten(photo, corners, naturalSize(corners, COUNTING_PIXELS));
  return yield* findGrid(straight);
}

/**
 * The cells between `corners`, `columns` × `rows` of them. Throws
 * `corners-unusable`, `corner-outside-picture`, `motif-too-large`,
 * `cells-too-fine`, `yarns-out-of-range`, `one-yarn-only` where all cells look
 * alike (nobody charts a motif of one yarn, so something else tells them apart),
 * `yarns-open` where no number was given and the cells do not tell it clearly,
 * what `assertReadable` throws, `cells-beside-corners` where cells are clearly
 * seen elsewhere than corners and counts say, or `photo-unclear` where so many cells are
 * doubtful that the rest are guessed too.
 */
export function* readCells(
  photo: Photo,
  corners: Corners,
  columns: number,
  rows: number,
  levels: Levels,
): Steps<ChartReading> {
  return readingOf(columns, rows, levels, yield* sortCells(photo, corners, columns, rows, levels));
}

/** What {@link readCells} is told by: each cell's yarn, with what shows how sure that is. Throws as it does. */
export function* sortCells(
  photo: Photo,
  corners: Corners,
  columns: number,
  rows: number,
  levels: Levels,
): Steps<SortedCells> {
  assertLevels(levels);
  const full = photo.levels[0] as Photo['levels'][number];
  assertCorners(corners, full.width, full.height);
  assertCounts(corners, columns, rows, levels);
  const size = sizeForCells(corners, columns, rows);
  const straight = yield* straighten(photo, corners, size);
  assertReadable(qualityOf(straight, columns, rows), levels.kind);
  const drift = driftOf(straight, columns, rows);
  if (drift.astray !== null) throw problemError('cells-beside-corners', { off: drift.astray });
  const seen: Seen[] = [{ picture: straight, drift }];
  if (bulges(drift)) {
    const picture = yield* flatten(photo, corners, size, columns, rows, drift);
    const left = driftOf(picture, columns, rows);
    // A bend that was laid flat leaves less; what leaves more was none, as in a page of writing.
    if (mostOf(left) < mostOf(drift)) seen.unshift({ picture, drift: mostOf(left) > MOST_LEFT ? NO_DRIFT : left });
  }
  const { across, up } = sideLengths(corners);
  const cellPixels = Math.min(across / columns, up / rows);
  if (levels.kind === 'symbols') {
    const symbols = yield* symbolsIn(seen, columns, rows);
    yield { stage: 'sort-colours', done: 0 };
    return {
      ...asSure(sortSymbols(symbols, levels.count), 'symbols'),
      columns,
      cellPixels,
      parted: null,
      onEdge: null,
      otherwise: null,
    };
  }
  const [{ picture, drift: off }] = seen as [Seen];
  const cells = yield* sampleCells(picture, columns, rows, off);
  return yield* sortSeen(cells, levels, cellPixels);
}

/**
 * The symbols of a straightened chart. Bars and strokes have edges as lines
 * have, and may lead astray who looks how cells drift: where they seem to, it is
 * asked as well how symbols look if they do not, and what makes them more alike
 * is right.
 */
function* symbolsIn(seen: readonly Seen[], columns: number, rows: number): Steps<Float64Array> {
  const [{ picture, drift }] = seen as [Seen];
  const drifted = yield* lookAtSymbols(picture, columns, rows, drift);
  const straight = seen.at(-1) as Seen;
  if (mostOf(straight.drift) < MUCH_DRIFT) return drifted;
  const still = yield* lookAtSymbols(straight.picture, columns, rows, NO_DRIFT);
  return unlikeness(still) < unlikeness(drifted) ? still : drifted;
}

/** A straightened chart, and how far its cells lie off in it. */
interface Seen {
  readonly picture: Picture;
  readonly drift: Drift;
}

/** Once it is laid flat cells lie off by no more than this, in cells; where they seem to, something else is seen. */
const MOST_LEFT = 0.3;

/**
 * {@link readCells} with the counts that are not given proposed first. Throws
 * `grid-not-found` where there is nothing to propose.
 */
export function* readChart(photo: Photo, corners: Corners, options: ChartOptions): Steps<ChartReading> {
  assertLevels(options.levels);
  let { columns, rows } = options;
  if (columns === null || rows === null) {
    const proposal = yield* proposeGrid(photo, corners);
    columns ??= proposal.columns?.count ?? null;
    rows ??= proposal.rows?.count ?? null;
    if (columns === null || rows === null) {
      throw problemError('grid-not-found', { across: columns === null, up: rows === null });
    }
  }
  return yield* readCells(photo, corners, columns, rows, options.levels);
}

function assertLevels(levels: Levels): void {
  if (levels.kind === 'ink' || levels.count === null) return;
  if (!Number.isInteger(levels.count) || levels.count < 2 || levels.count > MOST_YARNS) {
    throw problemError('yarns-out-of-range', { given: levels.count, least: 2, most: MOST_YARNS });
  }
}

function assertCounts(corners: Corners, columns: number, rows: number, levels: Levels): void {
  const isCount = (count: number, most: number): boolean => Number.isInteger(count) && count >= 1 && count <= most;
  if (!isCount(columns, MOST_COLUMNS) || !isCount(rows, MOST_ROWS)) {
    throw problemError('motif-too-large', {
      width: columns,
      height: rows,
      mostWidth: MOST_COLUMNS,
      mostHeight: MOST_ROWS,
    });
  }
  const { across, up } = sideLengths(corners);
  const leastPixels = LEAST_PIXELS[levels.kind];
  const mostColumns = Math.floor(across / leastPixels);
  const mostRows = Math.floor(up / leastPixels);
  if (columns > mostColumns || rows > mostRows) {
    const pixels = Math.min(across / columns, up / rows);
    throw problemError('cells-too-fine', { columns, rows, mostColumns, mostRows, pixels, leastPixels });
  }
}

function readingOf(columns: number, rows: number, levels: Levels, sorted: SortedCells): ChartReading {
  const { grid, colours } = groundFirst({ width: columns, height: rows, cells: sorted.yarns }, sorted.colours);
  const sure = confidenceOf(sorted, levels.kind);
  const doubtful = sure.doubtful.reduce((sum, one) => sum + one, 0);
  if (doubtful > MOST_DOUBTFUL * sure.doubtful.length) {
    throw problemError('photo-unclear', { doubtful, cells: sure.doubtful.length });
  }
  return { grid, colours, ground: 0, ...sure };
}
