/** `read PHOTO`: a chart out of a photo or scan, or out of two that share some rows or columns. */
import { basename, dirname, resolve } from 'node:path';
import { MOST_COLUMNS, MOST_ROWS, cellAt, type Grid } from '@shared/grid/index.ts';
import { problemError, problemOf, at } from '@shared/problem/index.ts';
import {
  assertCorners,
  findCharts,
  finish,
  MOST_YARNS,
  photoOf,
  proposeGrid,
  readCells,
  settledCorners,
  turnedBy,
  type ChartReading,
  type Corners,
  type FoundChart,
  type GridProposal,
  type Levels,
  type Photo,
  type Picture,
  type DecodedPhoto,
} from '@shared/reading/index.ts';
import { words } from '@shared/words/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import type { Command } from '../command.ts';
import type { Args } from '../args.ts';
import { doubtfulCells, readJson } from '../json/read.ts';
import { joinPhotos, type Joined, type ReadPhoto } from '../joined-photos.ts';
import { writeOwnFiles } from '../own-files.ts';
import { placed } from '../placed.ts';
import { cornersOfEach, figure, from, needed, ofEach, overlap, pngFile, turn, value } from '../values.ts';
import { indexedPng } from '../../services/export/png-file.ts';
import { nodeFiles, readWhole } from '../../services/files/index.ts';
import { readPhotoSafely } from '../../services/pictures/index.ts';

/** Doubtful cells named to people; more are counted. */
const MOST_NAMED = 12;

export const readCommand: Command = {
  name: 'read',
  argument: 'PHOTO',
  most: 2,
  options: ['corners', 'turn', 'to', 'replace', 'columns', 'rows', 'overlap', 'ink', 'symbols', 'figure', 'colours'],
  required: ['to'],
  async run(args) {
    const photos = args.names.length;
    const asked = value(args, 'corners', cornersOfEach(photos));
    const file = needed(args, 'to', pngFile);
    const columns = value(args, 'columns', ofEach(photos, from(1, MOST_COLUMNS)));
    const rows = value(args, 'rows', ofEach(photos, from(1, MOST_ROWS)));
    const given = value(args, 'overlap', overlap);
    if (given && photos === 1) throw problemError('option-unknown', { option: '--overlap' }, '--overlap of one photo');
    const quarters = Number(value(args, 'turn', turn) ?? 0) / 90;
    const levels = levelsOf(args);
    const each: ReadPhoto[] = [];
    for (const [index, path] of args.names.entries()) {
      const given = { columns: columns?.[index] ?? null, rows: rows?.[index] ?? null, quarters };
      each.push(await readOne(path, asked?.[index] ?? null, given, levels));
    }
    const [first, second] = each as [ReadPhoto, ReadPhoto?];
    const { reading, joined } = second
      ? joinPhotos(first, second, levels, given)
      : { reading: first.reading, joined: null };
    const target = resolve(file);
    const paths = args.names.map((path) => resolve(path));
    const [written] = await writeOwnFiles(
      dirname(target),
      photos === 1 ? { kind: 'file', path: paths[0] as string } : { kind: 'files', paths },
      [{ name: basename(target), content: motifPng(reading.grid, reading.colours) }],
      args.switches.has('replace'),
    );
    const replaced = written?.replaced ?? false;
    return {
      json: readJson(reading, first, joined, file, replaced),
      text: () => textOf(reading, first, joined, file, replaced),
    };
  },
};

/** Counts of the chart as it is read, turned clockwise by so many quarters. */
interface Given extends Counts {
  readonly quarters: number;
}

/** One photo, with what is given for it, or found in it. */
async function readOne(
  path: string,
  asked: Corners | null,
  { columns, rows, quarters }: Given,
  levels: Levels,
): Promise<ReadPhoto> {
  const { picture, scale, width, height } = await readPhoto(path);
  if (asked) placed('--corners', () => assertCorners(asked, width, height));
  const photo = photoOf(picture);
  const found = asked ? null : placed(path, () => theChart(photo, scale));
  const set = turnedBy(found ? found.corners : scaledCorners(asked as Corners, 1 / scale), quarters);
  const isCounted = !found && (columns === null || rows === null);
  const counted = isCounted ? finish(proposeGrid(photo, set)) : null;
  const seen = found ? turnedCounts(found, quarters) : counts(counted);
  const across = columns ?? seen?.columns ?? null;
  const up = rows ?? seen?.rows ?? null;
  if (across === null || up === null) {
    throw at(path, problemError('grid-not-found', { across: across === null, up: up === null }));
  }
  return placed(path, () => {
    const settled = found ? set : finish(settledCorners(photo, set, across, up));
    return {
      reading: found
        ? readFound(found, picture, () => finish(readCells(photo, set, across, up, levels)))
        : finish(readCells(photo, settled, across, up, levels)),
      found: found && { ...found, ...turnedCounts(found, quarters), corners: scaledCorners(set, scale) },
      counted,
      settled: settled === set ? null : scaledCorners(settled, scale),
    };
  });
}

/** What tells that a chart found in something unclear, as in a page of text, is none. */
const NONE = new Set(['one-yarn-only', 'photo-flat', 'photo-unclear', 'cells-beside-corners']);

/** Throws `chart-not-found` instead where what was found is hardly a chart, and nothing can be read in it. */
function readFound(found: FoundChart, { width, height }: Picture, read: () => ChartReading): ChartReading {
  try {
    return read();
  } catch (thrown) {
    const isHardly = found.why.some((why) => why === 'unclear' || why === 'no-lines');
    const isNone = isHardly && NONE.has(problemOf(thrown).code);
    throw isNone ? problemError('chart-not-found', { why: 'no-cells', width, height }) : thrown;
  }
}

/** Corners are told in pixels of the file; of a very large photo fewer are kept. */
function scaledCorners(asked: Corners, scale: number): Corners {
  const [one, two, three, four] = asked.map(({ x, y }) => ({ x: x * scale, y: y * scale }));
  return [one, two, three, four] as Corners;
}

function levelsOf(args: Args): Levels {
  const count = value(args, 'colours', from(2, MOST_YARNS)) ?? null;
  const level = value(args, 'figure', figure);
  const isInk = args.switches.has('ink');
  const isSymbols = args.switches.has('symbols');
  if (isInk && isSymbols) throw problemError('option-unknown', { option: '--symbols' }, '--symbols with --ink');
  if (isInk && count !== null) throw problemError('option-unknown', { option: '--colours' }, '--colours with --ink');
  if (!isInk && level !== undefined) throw problemError('option-missing', { option: '--ink' }, '--figure');
  return isInk ? { kind: 'ink', figure: level ?? 'dark' } : { kind: isSymbols ? 'symbols' : 'colours', count };
}

interface Counts {
  readonly columns: number | null;
  readonly rows: number | null;
}

function counts(counted: GridProposal | null): Counts | null {
  return counted && { columns: counted.columns?.count ?? null, rows: counted.rows?.count ?? null };
}

/** Counts of a chart that is read turned. */
function turnedCounts({ columns, rows }: FoundChart, quarters: number): { columns: number; rows: number } {
  return quarters % 2 === 0 ? { columns, rows } : { columns: rows, rows: columns };
}

function textOf(
  reading: ChartReading,
  { found, counted, settled }: ReadPhoto,
  joined: Joined | null,
  file: string,
  replaced: boolean,
): string {
  const { width, height } = reading.grid;
  const doubtful = doubtfulCells(reading);
  const named = doubtful.slice(0, MOST_NAMED);
  return [
    ...(found && !joined
      ? [words.reading.found(found), terminalWords.cli.read.corners(writtenCorners(found.corners))]
      : []),
    ...(settled && !joined ? [terminalWords.cli.read.settled(writtenCorners(settled))] : []),
    ...(joined ? [terminalWords.cli.read.joined(joined.side, joined.shared, joined.differing)] : []),
    counted === null || joined ? words.numbers.size(width, height) : words.reading.proposal(counted),
    terminalWords.cli.read.colours(reading.colours),
    words.reading.doubtful(doubtful.length, width * height, joined !== null || (found?.sure ?? true)),
    ...named.map(({ column, row }) => `  ${words.reading.doubtfulCell(column, row)}`),
    ...(doubtful.length > named.length ? [`  ${terminalWords.cli.read.more(doubtful.length - named.length)}`] : []),
    terminalWords.cli.read.written(file, replaced),
  ].join('\n');
}

/** The one chart of the photo. Throws what `findCharts` throws, and `charts-several`. */
function theChart(photo: Photo, scale: number): FoundChart {
  const charts = finish(findCharts(photo));
  if (charts.length > 1) {
    throw problemError('charts-several', {
      charts: charts.map(({ columns, rows, corners: at }) => ({ columns, rows, corners: scaledCorners(at, scale) })),
    });
  }
  return charts[0] as FoundChart;
}

/** As `--corners` takes them. */
function writtenCorners(found: Corners): string {
  return found.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(',');
}

function motifPng(grid: Grid, colours: readonly string[]): Uint8Array {
  const { width, height } = grid;
  const indices = new Uint8Array(width * height);
  for (let fromTop = 0; fromTop < height; fromTop++) {
    for (let column = 0; column < width; column++) {
      indices[fromTop * width + column] = cellAt(grid, column, height - 1 - fromTop);
    }
  }
  return indexedPng({ width, height, indices, colours });
}

/** The photo as it is seen upright. Problems name the file. */
async function readPhoto(path: string): Promise<DecodedPhoto> {
  const bytes = await readWhole(nodeFiles, path);
  return readPhotoSafely(bytes).catch((thrown: unknown) => {
    throw at(path, thrown);
  });
}
