/** The row counter beside the piece, and its sections. */
import type { Plan } from '../../plan/index.ts';
import { plain, words } from '../../words/index.ts';
import { CAPITAL_EM } from '../font/metrics.ts';
import { wrap } from '../font/wrap.ts';
import { lineItem, pathItem, textItem } from '../items.ts';
import type { Point, SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import { HAIRLINE_MM, LABEL_PT, LINE_MM, lineHeightMm, SMALL_PT } from '../style.ts';
import type { PieceView } from './view.ts';

const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
/** Least space from one row number to the next. */
const APART_MM = 3.4;
const TICK_MM = 1.4;

/**
 * Row numbers at the right of the drawing: the first and last row of each band
 * and fill strong, round numbers between them where there is room.
 */
export function rowNumbers(plan: Plan, view: PieceView, x: number): SheetItem[] {
  const taken: { row: number; isKey: boolean }[] = [];
  const middle = (row: number): number => view.y(row) - view.cellHeight / 2;
  const take = (row: number, isKey: boolean): void => {
    if (taken.every((other) => Math.abs(middle(other.row) - middle(row)) >= APART_MM)) taken.push({ row, isKey });
  };
  for (const { firstRow, lastRow } of [...plan.bands, ...plan.fills])
    for (const row of [firstRow, lastRow]) take(row, true);
  take(view.rows, false);
  take(1, false);
  const step = STEPS.find((size) => size * view.cellHeight >= APART_MM * 1.8) ?? 1000;
  for (let row = step; row < view.rows; row += step) take(row, false);
  const lines: Point[][] = taken.map(({ row }) => [
    [x, middle(row)],
    [x + TICK_MM, middle(row)],
  ]);
  return [
    pathItem(lines, { paint: 'rule', width: HAIRLINE_MM }),
    ...taken
      .sort((a, b) => a.row - b.row)
      .map(({ row, isKey }) =>
        textItem(String(row), x + TICK_MM + 0.8, middle(row) + (LABEL_PT * POINT_MM * CAPITAL_EM) / 2, {
          sizePt: isKey ? LABEL_PT : SMALL_PT,
          tone: isKey ? 'ink' : 'soft',
          isStrong: isKey,
        }),
      ),
  ];
}

/** Names of the sections at the left, each beside its rows; the fold of a hem as a broken line across the piece. */
export function sectionNames(plan: Plan, view: PieceView, left: number, right: number): SheetItem[] {
  if (plan.sections.length < 2) return [];
  const items: SheetItem[] = [];
  for (const section of plan.sections) {
    const top = view.y(section.last + 1);
    const bottom = view.y(section.first);
    const lines = wrap(plain(words.sheet.section(section.name)), right - left - 2.5, SMALL_PT);
    const height = lines.length * lineHeightMm(SMALL_PT);
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
    const first = (top + bottom - height) / 2 + SMALL_PT * POINT_MM;
    lines.forEach((line, index) => {
      const y = first + index * lineHeightMm(SMALL_PT);
      items.push(textItem(line, right - 2, y, { sizePt: SMALL_PT, tone: 'soft', anchor: 'end' }));
    });
  }
  const back = plan.sections.find(({ name }) => name === 'hem-back');
  if (back) {
    const y = view.y(back.last + 1);
    const from = view.x(plan.outline.first[back.last - 1] as number);
    const to = view.x((plan.outline.last[back.last - 1] as number) + 1);
    items.push(lineItem([from, y], [to, y], { paint: 'paper', width: LINE_MM }));
    items.push(lineItem([from, y], [to, y], { paint: 'ink', width: LINE_MM, dash: [1.6, 1.2] }));
  }
  return items;
}
