/** The row list as a file for spreadsheets, read back (RFC 4180). */
import { labelOf, positionOf } from '../knitter/needles.ts';
import { actRead, type ReadAct } from './sentences.ts';

export interface CsvRow {
  readonly row: number;
  readonly from: string;
  readonly section: string;
  readonly edges: readonly [first: string, last: string];
  readonly before: readonly ReadAct[];
  readonly after: readonly ReadAct[];
  /** `L48 chalk`, from left to right. */
  readonly needles: readonly string[];
  readonly wraps: readonly string[];
}

/** All rows. Throws where a line has not as many cells as the first. */
export function csvRows(text: string): CsvRow[] {
  const [header = [], ...lines] = cellsOf(text);
  const yarns = header.map((title) => /^Needles in (.*)$/s.exec(title)?.[1] ?? null);
  return lines.map((cells, index) => {
    if (cells.length !== header.length) throw new Error(`Line ${index + 2} has ${cells.length} cells`);
    const cell = (title: string): string => cells[header.indexOf(title)] ?? '';
    const needles = cells.flatMap((runs, column) => {
      const yarn = yarns[column] ?? null;
      return yarn === null ? [] : needlesIn(runs).map((at) => ({ at, yarn }));
    });
    needles.sort((a, b) => a.at - b.at);
    const [first = '', last = first] = cell('Stitches on').split('-');
    return {
      row: Number(cell('Row')),
      from: cell('Carriage at'),
      section: cell('Section'),
      edges: [first, last],
      before: actsIn(cell('Before the row')),
      after: actsIn(cell('After the row')),
      needles: needles.map(({ at, yarn }) => `${labelOf(at)} ${yarn}`),
      wraps: cell('Wrap')
        .split(' ')
        .filter((label) => label !== ''),
    };
  });
}

/** Lines of cells: quoted ones may hold commas, line ends and doubled quotes. */
export function cellsOf(text: string): string[][] {
  const lines: string[][] = [];
  let line: string[] = [];
  // A cell, and what ends it.
  for (const [, quoted, bare, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g)) {
    line.push(quoted?.replaceAll('""', '"') ?? bare ?? '');
    if (end === ',') continue;
    lines.push(line);
    line = [];
  }
  const read = lines.reduce((sum, cells) => sum + cells.length, 0);
  if (line.length > 0 || read === 0) throw new Error('The last line has no end');
  return lines;
}

/** `L48-L40 L38`. */
function needlesIn(runs: string): number[] {
  return runs.split(' ').flatMap((run) => {
    if (run === '') return [];
    const [first = '', last = first] = run.split('-');
    const from = positionOf(first);
    return Array.from({ length: positionOf(last) - from + 1 }, (_, at) => from + at);
  });
}

/** Sentences one after the other: as few words as make an act. */
function actsIn(text: string): ReadAct[] {
  const acts: ReadAct[] = [];
  let open = '';
  for (const part of text === '' ? [] : text.split(/(?<=\.) /)) {
    open = `${open} ${part}`.trim();
    const act = actOf(open);
    if (!act) continue;
    acts.push(act);
    open = '';
  }
  if (open !== '') throw new Error(`No act: ${open}`);
  return acts;
}

function actOf(sentence: string): ReadAct | null {
  try {
    return actRead(sentence);
  } catch {
    return null;
  }
}
