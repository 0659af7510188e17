/**
 * Finds the charts in a PDF by what is drawn there alone: a grid of thin lines
 * within a rectangle is a chart, and what is filled between the lines its cells.
 */
import { fillAt, graphicsOf, type DrawnPath } from '../pdf-graphics.ts';
import { readPdf, type PageRead, type TextRead } from '../pdf.ts';

export interface ChartRead {
  /** As its heading has it. */
  readonly name: string;
  readonly way: 'needles' | 'worn';
  /** From 1. */
  readonly page: number;
  /** The lines between its cells and round them, from the left and from the top, in mm. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** The colour of each cell, in lines from the top. */
  readonly colours: readonly (readonly string[])[];
  /** The chart's column of its leftmost cell and its row of its lowest, from 0. */
  readonly column: number;
  readonly row: number;
  readonly paths: readonly DrawnPath[];
  /** What is written on the page. */
  readonly texts: readonly TextRead[];
}

export interface SheetRead {
  readonly pages: readonly (readonly DrawnPath[])[];
  readonly written: readonly PageRead[];
  readonly charts: readonly ChartRead[];
}

export async function readSheet(bytes: Uint8Array): Promise<SheetRead> {
  const written = await readPdf(bytes);
  const hasChart = (page: number): boolean =>
    written[page - 1]?.texts.some(({ text }) => text.startsWith('Chart: ')) ?? false;
  // The piece is on the first.
  const pages = await graphicsOf(bytes, (page) => page === 1 || hasChart(page));
  const charts: ChartRead[] = [];
  pages.forEach((paths, index) => {
    const page = written[index] as PageRead;
    for (const part of new Set(paths.filter(({ tag }) => tag === 'Figure').map((path) => path.part))) {
      const own = paths.filter((path) => path.part === part);
      const found = gridIn(own);
      if (!found || !page.texts.some(({ text, y }) => text.startsWith('Chart: ') && y < (found.ys[0] as number)))
        continue;
      charts.push(chartOf(found, own, page, index + 1));
    }
  });
  return { pages, written, charts };
}

interface GridFound {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

const isNear = (a: number, b: number): boolean => Math.abs(a - b) < 0.02;

/** The rectangle round a chart and the lines from edge to edge of it; null where there is none. */
function gridIn(paths: readonly DrawnPath[]): GridFound | null {
  for (const path of paths) {
    const [outline] = path.lines;
    if (path.fill !== null || path.stroke?.isDashed !== false || path.lines.length !== 1 || outline?.length !== 5) {
      continue;
    }
    const [left, right] = [Math.min(...outline.map(([x]) => x)), Math.max(...outline.map(([x]) => x))];
    const [top, bottom] = [Math.min(...outline.map(([, y]) => y)), Math.max(...outline.map(([, y]) => y))];
    const lines = paths.filter(({ stroke }) => stroke?.isDashed === false).flatMap((each) => each.lines);
    const across = lines.flatMap(([from, to, ...more]) =>
      from && to && more.length === 0 && isNear(from[1], to[1]) && isNear(from[0], left) && isNear(to[0], right)
        ? [from[1]]
        : [],
    );
    const down = lines.flatMap(([from, to, ...more]) =>
      from && to && more.length === 0 && isNear(from[0], to[0]) && isNear(from[1], top) && isNear(to[1], bottom)
        ? [from[0]]
        : [],
    );
    // One cell has no lines in it.
    if (across.length + down.length === 0 && !isNear(right - left, bottom - top) && right - left > 15) continue;
    return { xs: ordered([left, ...down, right]), ys: ordered([top, ...across, bottom]) };
  }
  return null;
}

function ordered(values: readonly number[]): number[] {
  return [...values]
    .sort((a, b) => a - b)
    .filter((value, index, all) => index === 0 || !isNear(value, all[index - 1] as number));
}

function chartOf({ xs, ys }: GridFound, paths: readonly DrawnPath[], page: PageRead, number: number): ChartRead {
  const [top, left] = [ys[0] as number, xs[0] as number];
  // The heading next above, and what is said between it and the cells.
  const above = page.texts.filter(({ y }) => y < top);
  const said = above.slice(above.findLastIndex(({ text }) => text.startsWith('Chart: ')));
  const heading = /^Chart: (.*?)(?:, columns (\d+)–\d+, rows? (\d+).*)?$/.exec(said[0]?.text ?? '');
  const about = said.map(({ text }) => text).join(' ');
  const colours = ys.slice(1).map((bottom, line) =>
    xs.slice(1).map((right, column) => {
      const [x, y] = [((xs[column] as number) + right) / 2, ((ys[line] as number) + bottom) / 2];
      return fillAt(paths, x, y) ?? '';
    }),
  );
  return {
    name: heading?.[1] ?? '',
    way: /when worn: the other way/.test(about) ? 'worn' : 'needles',
    page: number,
    xs,
    ys,
    colours,
    column: columnAt(page, xs, ys, left),
    row: rowAt(page, xs, ys),
    paths,
    texts: page.texts,
  };
}

/** The column of the leftmost cell, from 0, by a number below the cells. */
function columnAt(page: PageRead, xs: readonly number[], ys: readonly number[], left: number): number {
  const bottom = ys.at(-1) as number;
  const width = (xs[1] as number) - left;
  const below = page.texts.filter(
    ({ text, x, y, widthMm }) =>
      /^\d+$/.test(text) &&
      y > bottom &&
      y < bottom + 7 &&
      x + widthMm / 2 > left &&
      x + widthMm / 2 < (xs.at(-1) as number),
  );
  const [first] = below;
  if (!first) throw new RangeError('No number below a chart');
  return Number(first.text) - 1 - Math.floor((first.x + first.widthMm / 2 - left) / width);
}

/** The row of the lowest cells, from 0, by a number at their right. */
function rowAt(page: PageRead, xs: readonly number[], ys: readonly number[]): number {
  const [right, bottom] = [xs.at(-1) as number, ys.at(-1) as number];
  const height = bottom - (ys.at(-2) as number);
  const beside = page.texts.filter(
    ({ text, x, y }) => /^\d+$/.test(text) && x > right && x < right + 7 && y < bottom + 1 && y > (ys[0] as number),
  );
  const lowest = beside.sort((a, b) => b.y - a.y)[0];
  if (!lowest) throw new RangeError('No number beside a chart');
  // Its baseline is a little below the middle of its row.
  const up = Math.floor((bottom - lowest.y + 1.2) / height);
  return Number(lowest.text) - 1 - up;
}

/** A chart put together from its parts, each row from the bottom. Throws where two parts show one cell in two colours. */
export function readChart(parts: readonly ChartRead[]): string[][] {
  const rows: string[][] = [];
  for (const { colours, column, row } of parts) {
    [...colours].reverse().forEach((line, up) => {
      const cells = (rows[row + up] ??= []);
      line.forEach((colour, across) => {
        const known = cells[column + across];
        if (known !== undefined && known !== colour) {
          throw new RangeError(`Row ${row + up + 1}, column ${column + across + 1} is ${known} and ${colour}`);
        }
        cells[column + across] = colour;
      });
    });
  }
  return rows;
}
