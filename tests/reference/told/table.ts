/** Tables on printed pages: columns by where their titles stand, rows by the white between them. */
import { textOf, type Line, type Run, type Section } from './page.ts';

/** The lines of a cell, from the top. */
export type Cell = readonly string[];

/** A row, with its parts on other pages where it is broken: a cell a column. */
export type Row = readonly Cell[];

export type Told =
  | { readonly kind: 'row'; readonly row: Row }
  /** A line between and below tables. */
  | { readonly kind: 'line'; readonly text: string };

interface Column {
  readonly title: string;
  /** Its left edge. */
  readonly from: number;
}

/** More than this between a line and the next of its row, in lines of its size, and a new row begins. */
const LEADING = 1.36;
const POINT_MM = 25.4 / 72;
const APART_MM = 0.7;
/** How a row goes on that began on the page before: its first words again. */
const GOES_ON = / …$/;

/** What stands in the tables that have one of these sets of titles, and what stands between them, in order. */
export function tablesIn({ lines }: Section, titles: readonly (readonly string[])[]): Told[] {
  const told: Told[] = [];
  let columns: Column[] | null = null;
  let open: string[][] | null = null;
  let before: Line | null = null;
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] as Line;
    const header = headerAt(lines, at, titles);
    if (header) {
      ({ columns } = header);
      at = header.last;
      open = null;
      before = null;
      continue;
    }
    const cells = columns && cellsOf(line, columns);
    if (!columns || !cells) {
      columns = null;
      told.push({ kind: 'line', text: textOf(line) });
      continue;
    }
    const isNext = open && before && before.page === line.page && line.y - before.y < leadingOf(line) + APART_MM;
    if (!isNext) {
      const named = cells.findIndex((text) => text !== '');
      const goesOn = GOES_ON.test(cells[named] ?? '');
      const last = told.at(-1);
      if (goesOn && last?.kind === 'row') {
        open = last.row as string[][];
        cells[named] = '';
      } else {
        open = columns.map(() => []);
        told.push({ kind: 'row', row: open });
      }
    }
    cells.forEach((text, index) => text !== '' && open?.[index]?.push(text));
    before = line;
  }
  return told;
}

/** The rows alone. */
export function rowsIn(section: Section, titles: readonly string[]): Row[] {
  return tablesIn(section, [titles]).flatMap((told) => (told.kind === 'row' ? [told.row] : []));
}

function leadingOf({ runs }: Line): number {
  return Math.max(...runs.map(({ sizePt }) => sizePt)) * POINT_MM * LEADING;
}

/** The titles of a table, which may take several lines, one of them the line at `at`. */
function headerAt(
  lines: readonly Line[],
  at: number,
  titles: readonly (readonly string[])[],
): { readonly columns: Column[]; readonly last: number } | null {
  const first = lines[at] as Line;
  for (const wanted of titles) {
    if (first.runs.length !== wanted.length) continue;
    const read = first.runs.map(({ text }) => text);
    if (!read.every((text, index) => wanted[index]?.startsWith(text))) continue;
    const edges = first.runs.map((run): Column & { right: number } => {
      return { title: run.text, from: run.x, right: run.x + run.widthMm };
    });
    let last = at;
    while (edges.some(({ title }, index) => title !== wanted[index])) {
      const next = lines[++last];
      if (!next) return null;
      for (const run of next.runs) {
        const edge = edges.find(
          ({ from, right }) => Math.abs(from - run.x) < 0.5 || Math.abs(right - run.x - run.widthMm) < 0.5,
        );
        if (!edge) return null;
        Object.assign(edge, { title: `${edge.title} ${run.text}`, from: Math.min(edge.from, run.x) });
      }
      if (edges.some(({ title }, index) => !wanted[index]?.startsWith(title))) return null;
    }
    return { columns: edges, last };
  }
  return null;
}

/** What stands in each column; null for a line that runs over columns, or stands where the first one has no text. */
function cellsOf({ runs }: Line, columns: readonly Column[]): string[] | null {
  const cells = columns.map((): Run[] => []);
  for (const run of runs) {
    const column = columns.findLastIndex(({ from }) => from <= run.x + 0.6);
    const next = columns[column + 1]?.from ?? Infinity;
    if (column < 0 || run.x + run.widthMm > next + 0.6) return null;
    cells[column]?.push(run);
  }
  // A box to tick is no text.
  if (/^Done$/.test(columns[0]?.title ?? '') && (cells[0] as Run[]).length > 0) return null;
  return cells.map((found) => textOf({ runs: found }));
}

/** The sentences of a cell: each stands behind a mark. */
export function sentencesIn(cell: Cell = []): string[] {
  const sentences: string[] = [];
  for (const line of cell) {
    const [, begins] = /^•\s*(.*)$/.exec(line) ?? [];
    if (begins !== undefined) sentences.push(begins);
    else sentences.push(`${sentences.pop() ?? ''} ${line}`.trim());
  }
  return sentences;
}

/** The lines of a cell as one. */
export function joined(cell: Cell = []): string {
  return cell.join(' ');
}
