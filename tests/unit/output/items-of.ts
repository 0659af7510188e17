/** What stands on a page, taken apart. */
import { CAPITAL_EM, richWidthMm } from '@shared/output/font/metrics.ts';
import {
  POINT_MM,
  type SheetDocument,
  type SheetElement,
  type SheetItem,
  type SheetPage,
  type TextItem,
} from '@shared/output/index.ts';
import { textOf } from '@shared/words/index.ts';

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function itemsIn(element: SheetElement): readonly SheetItem[] {
  switch (element.role) {
    case 'list':
      return element.entries.flatMap(({ label, body }) => [...label, ...body]);
    case 'table':
      return element.rows.flatMap(({ cells }) => cells.flat());
    default:
      return element.items;
  }
}

export function itemsOf({ elements }: SheetPage): SheetItem[] {
  return elements.flatMap(itemsIn);
}

export function textsOf(page: SheetPage): TextItem[] {
  return itemsOf(page).filter((item) => item.kind === 'text');
}

/** All that is written on a page, line by line in the order of reading. */
export function wordsOn(page: SheetPage): string {
  return textsOf(page)
    .map(({ spans }) => textOf(spans))
    .join('\n');
}

/** Where a line of text stands: from the baseline up to the height of its capitals. */
export function textBox({ x, y, sizePt, anchor, spans }: TextItem): Box {
  const width = richWidthMm(spans, sizePt);
  const left = x - { start: 0, middle: width / 2, end: width }[anchor];
  return { left, right: left + width, top: y - CAPITAL_EM * sizePt * POINT_MM, bottom: y };
}

export function itemBox(item: SheetItem): Box {
  switch (item.kind) {
    case 'text':
      return textBox(item);
    case 'rectangle':
      return { left: item.x, right: item.x + item.width, top: item.y, bottom: item.y + item.height };
    case 'cells': {
      const { x, y, cellWidth, cellHeight, runs } = item;
      const most = (value: (run: (typeof runs)[number]) => number): number =>
        runs.reduce((sum, run) => Math.max(sum, value(run)), 0);
      return {
        left: x,
        right: x + most(({ column, length }) => column + length) * cellWidth,
        top: y,
        bottom: y + most(({ line }) => line + 1) * cellHeight,
      };
    }
    case 'path': {
      const points = item.lines.flat();
      const xs = points.map(([x]) => x);
      const ys = points.map(([, y]) => y);
      const least = (values: number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);
      const most = (values: number[]): number => values.reduce((a, b) => Math.max(a, b), -Infinity);
      return { left: least(xs), right: most(xs), top: least(ys), bottom: most(ys) };
    }
  }
}

/** All words of a sheet, page by page. */
export function allWords(sheet: SheetDocument): string {
  return sheet.pages.map(wordsOn).join('\n');
}

/** The cells of a table as they are read, its titles first. */
export function tableOf(sheet: SheetDocument, title: string): string[][] {
  const tables = sheet.pages.flatMap(({ elements }) => elements.filter((element) => element.role === 'table'));
  const rows = tables.filter((table) => table.title === title).flatMap((table) => table.rows);
  return rows.map(({ cells }) =>
    cells.map((items) => items.flatMap((item) => (item.kind === 'text' ? [textOf(item.spans)] : [])).join(' ')),
  );
}
