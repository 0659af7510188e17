/** The rows beside the piece, and its sections. */
import type { Plan } from '../../plan/index.ts';
import { plain, words } from '../../words/index.ts';
import { sheetWords } from '../../words/sheet.ts';
import { strideFor } from '../chart/numbers.ts';
import { CAPITAL_EM } from '../font/metrics.ts';
import { wrap } from '../font/wrap.ts';
import { lineItem, pathItem, textItem } from '../items.ts';
import type { Point, SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import { HAIRLINE_MM, LABEL_PT, LINE_MM, lineHeightMm } from '../style.ts';
import { rowMarks, stacked, type RowMark } from './row-marks.ts';
import type { PieceView } from './view.ts';

/** Least space from one row number to the next. */
const APART_MM = 3.5;
const TICK_MM = 1.4;
/** From the ticks to the numbers, where those have to move aside. */
const LEAD_MM = 3;
const GAP_MM = 0.8;

interface RowLabel {
  readonly mark: RowMark;
  readonly lines: readonly string[];
  readonly height: number;
  /** Middle of its rows. */
  readonly at: number;
}

/**
 * Row numbers at the right of the drawing: of each row where something changes,
 * those of patterns strong; round numbers between them where there is room.
 */
export function rowNumbers(plan: Plan, view: PieceView, x: number): SheetItem[] {
  const middle = (row: number): number => view.middleOf(row);
  const [top, bottom] = [view.y(view.rows + 1) - APART_MM / 2, view.y(1) + APART_MM / 2];
  const labels = labelsFitting(plan, middle, bottom - top);
  const placed = stacked(labels, top, bottom);
  const numberX = x + TICK_MM + LEAD_MM;
  const ticks: Point[][] = [];
  const items = labels.flatMap(({ mark, lines, height }, index): SheetItem[] => {
    const at = placed[index] as number;
    for (const row of mark.rows) {
      ticks.push([
        [x, middle(row)],
        [x + TICK_MM, middle(row)],
      ]);
    }
    ticks.push(...leads(mark, middle, x + TICK_MM, numberX - GAP_MM / 2, at));
    return lines.map((text, line) => {
      const y = at - height / 2 + (line + 0.5) * APART_MM + (LABEL_PT * POINT_MM * CAPITAL_EM) / 2;
      return textItem(text, numberX + GAP_MM / 2, y, { sizePt: LABEL_PT, isStrong: mark.isPattern });
    });
  });
  return [
    pathItem(ticks, { paint: 'rule', width: HAIRLINE_MM }),
    ...items,
    ...roundNumbers(view, x, middle, labels, placed),
  ];
}

/** The labels of as many marks as there is room for. */
function labelsFitting(plan: Plan, middle: (row: number) => number, roomMm: number): RowLabel[] {
  // Some of the marks may take two lines.
  for (let most = Math.floor(roomMm / APART_MM); ; most--) {
    const labels = rowMarks(plan, most).map((mark) => rowLabel(mark, middle));
    const height = labels.reduce((sum, label) => sum + label.height, 0);
    if (height <= roomMm || most <= 1) return labels.sort((a, b) => a.at - b.at);
  }
}

function rowLabel(mark: RowMark, middle: (row: number) => number): RowLabel {
  const [first, second, ...more] = mark.rows as [number, ...number[]];
  const last = more.at(-1) ?? second ?? first;
  const lines = [
    words.numbers.span(first, last),
    ...(second !== undefined && more.length > 0 ? [sheetWords.everyRows(second - first)] : []),
  ];
  return { mark, lines, height: lines.length * APART_MM, at: (middle(first) + middle(last)) / 2 };
}

/** From a tick to its number; of more rows than one a bracket over their ticks, and from its middle to the number. */
function leads(mark: RowMark, middle: (row: number) => number, from: number, to: number, at: number): Point[][] {
  const [first, last] = [mark.rows[0] as number, mark.rows.at(-1) as number];
  const along: Point[] = [
    [from, (middle(first) + middle(last)) / 2],
    [to, at],
  ];
  if (first === last) return [along];
  const bracket: Point[] = [
    [from, middle(first)],
    [from, middle(last)],
  ];
  return [bracket, along];
}

/** Round numbers where neither a number nor its line is in the way. */
function roundNumbers(
  view: PieceView,
  x: number,
  middle: (row: number) => number,
  labels: readonly RowLabel[],
  placed: readonly number[],
): SheetItem[] {
  const taken = labels.flatMap(({ at, height }, index): [number, number][] => {
    const label = placed[index] as number;
    return [[Math.min(at, label - height / 2), Math.max(at, label + height / 2)]];
  });
  const step = strideFor(Math.min(...view.parts.map(({ cellHeight }) => cellHeight)), APART_MM * 1.8);
  const rows: number[] = [];
  for (let row = step; row < view.rows; row += step) {
    const at = middle(row);
    if (taken.every(([from, to]) => at + APART_MM / 2 <= from || at - APART_MM / 2 >= to)) rows.push(row);
  }
  if (rows.length === 0) return [];
  const lines = rows.map((row): Point[] => [
    [x, middle(row)],
    [x + TICK_MM / 2, middle(row)],
  ]);
  return [
    pathItem(lines, { paint: 'rule', width: HAIRLINE_MM }),
    ...rows.map((row) => {
      const y = middle(row) + (LABEL_PT * POINT_MM * CAPITAL_EM) / 2;
      return textItem(String(row), x + TICK_MM + LEAD_MM + GAP_MM / 2, y, { sizePt: LABEL_PT, tone: 'soft' });
    }),
  ];
}

/** Names of the sections at the left, each beside its rows; the fold of a hem as a broken line across the piece. */
export function sectionNames(plan: Plan, view: PieceView, left: number, right: number): SheetItem[] {
  if (plan.sections.length < 2) return [];
  const items: SheetItem[] = [];
  for (const section of plan.sections) {
    const top = view.y(section.last + 1);
    const bottom = view.y(section.first);
    const lines = wrap(plain(words.sections.name(section.name)), right - left - 2.5, LABEL_PT);
    const height = lines.length * lineHeightMm(LABEL_PT);
    items.push(
      pathItem(
        [
          [
            [right - 1, top + 0.3],
            [right, top + 0.3],
            [right, bottom - 0.3],
            [right - 1, bottom - 0.3],
          ],
        ],
        { paint: 'rule', width: HAIRLINE_MM },
      ),
    );
    if (height > bottom - top) continue;
    const first = (top + bottom - height) / 2 + LABEL_PT * POINT_MM;
    lines.forEach((line, index) => {
      const y = first + index * lineHeightMm(LABEL_PT);
      items.push(textItem(line, right - 2, y, { sizePt: LABEL_PT, tone: 'soft', anchor: 'end' }));
    });
  }
  const back = plan.sections.find(({ name }) => name === 'hem-back');
  if (back) {
    const y = view.y(back.last + 1);
    const from = view.x(plan.outline.first[back.last - 1] as number, back.last);
    const to = view.x((plan.outline.last[back.last - 1] as number) + 1, back.last);
    items.push(lineItem([from, y], [to, y], { paint: 'paper', width: LINE_MM }));
    items.push(lineItem([from, y], [to, y], { paint: 'ink', width: LINE_MM, dash: [1.6, 1.2] }));
  }
  return items;
}
