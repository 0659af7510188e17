/** The row list of a printed sheet, read from the text of its pages: every row, what comes again spread out. */
import { labelOf, positionOf } from '../knitter/needles.ts';
import { sectionUnder, type Section } from './page.ts';
import { actRead, type ReadAct } from './sentences.ts';
import { joined, sentencesIn, tablesIn, type Cell, type Row } from './table.ts';

type Span = readonly [first: string, last: string];

export interface PrintedRow {
  readonly row: number;
  readonly from: 'left' | 'right';
  readonly before: readonly ReadAct[];
  /** By yarn, from left to right. */
  readonly contrast: readonly { readonly yarn: string; readonly needles: readonly Span[] }[];
  readonly wraps: readonly string[];
}

/** All rows in order, and what is done after the last. Null where the sheet has no row list. */
export function rowsPrinted(
  sections: readonly Section[],
  contrasts: readonly string[],
): { readonly rows: readonly PrintedRow[]; readonly after: readonly ReadAct[] } | null {
  const section = sectionUnder(sections, /^Row list$/);
  if (!section) return null;
  const [one, ...others] = contrasts;
  const only = one !== undefined && others.length === 0 ? one : null;
  const needles = only === null ? 'Needles in contrast' : `Needles in ${only}`;
  const titles = ['Done', 'Row', 'Carriage at', 'Before the row', needles, 'Wrap'];
  const rows: PrintedRow[] = [];
  let after: ReadAct[] = [];
  for (const told of tablesIn(section, [titles])) {
    if (told.kind !== 'row') continue;
    if (joined(told.row[1]) === 'end') after = sentencesIn(told.row[3]).map(actRead);
    else rows.push(...rowsRead(told.row, only, rows));
  }
  return { rows, after };
}

function rowsRead(row: Row, only: string | null, above: readonly PrintedRow[]): PrintedRow[] {
  const [numbers, carriage, needles, wraps] = [row[1], row[2], row[4], row[5]].map(joined) as [
    ...[string, string, string, string],
  ];
  const [first = 0, last = first] = numbers.split('–').map(Number);
  const [, from, to = from] = /^as rows? (\d+)(?:–(\d+))?$/.exec(needles) ?? [];
  if (from !== undefined) return again([first, last], [Number(from), Number(to)], joined(row[3]), above);
  if (carriage !== 'left' && carriage !== 'right') throw new Error(`Row ${numbers}: the carriage is ${carriage}`);
  return Array.from({ length: last - first + 1 }, (_, at): PrintedRow => {
    const opposite = carriage === 'left' ? 'right' : 'left';
    return {
      row: first + at,
      from: at % 2 === 0 ? carriage : opposite,
      before: at === 0 ? sentencesIn(row[3]).map(actRead) : [],
      contrast: contrastIn(row[4], only),
      wraps: wraps === '' ? [] : wraps.split(' '),
    };
  });
}

/** `as rows 41–44`, `The same again, beginning when the counter reads 44 and 48.` */
function again(
  [first, last]: readonly [number, number],
  [from, to]: readonly [number, number],
  said: string,
  above: readonly PrintedRow[],
): PrintedRow[] {
  const [, readings] = /^The same again, beginning when the counter reads (.+)\.$/.exec(said) ?? [];
  if (readings === undefined) throw new Error(`Rows ${first}–${last}: ${said}`);
  const rows = readings.split(/, | and /).flatMap((reading) => {
    return above
      .filter(({ row }) => row >= from && row <= to)
      .map((one) => ({ ...one, row: one.row + Number(reading) + 1 - from }));
  });
  if (rows[0]?.row !== first || rows.at(-1)?.row !== last) throw new Error(`Rows ${first}–${last} are not ${said}`);
  return rows;
}

/** Needles in the one contrast yarn; or in each, behind a mark and its name. */
function contrastIn(cell: Cell | undefined, only: string | null): PrintedRow['contrast'] {
  const text = joined(cell);
  if (text === 'plain' || text === '') return [];
  if (only !== null) return [{ yarn: only, needles: spansIn(text) }];
  return sentencesIn(cell).map((sentence) => {
    const [, yarn = '', needles] = /^(.+): (.+)$/.exec(sentence) ?? [];
    if (needles === undefined) throw new Error(`No needles: ${sentence}`);
    return { yarn, needles: spansIn(needles) };
  });
}

/** `L48–L40, L38`; `L48, L46–L45, and so on every 6 needles up to R47`. */
function spansIn(text: string): Span[] {
  return text.split('; ').flatMap((part): Span[] => {
    const [, runs = part, every, last] = /^(.+), and so on every (\d+) needles? up to (\S+)$/.exec(part) ?? [];
    const once = runs.split(', ').map((run) => {
      const [from = '', to = from] = run.split('–');
      return [positionOf(from), positionOf(to)] as const;
    });
    if (every === undefined || last === undefined) return once.map(([from, to]) => [labelOf(from), labelOf(to)]);
    const spans: Span[] = [];
    for (let by = 0; ; by += Number(every)) {
      for (const [from, to] of once) {
        if (to + by > positionOf(last)) return spans;
        spans.push([labelOf(from + by), labelOf(to + by)]);
      }
    }
  });
}
