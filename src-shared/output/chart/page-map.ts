/** The parts of a chart as they lie together, each with its page. */
import { sheetWords } from '../../words/sheet.ts';
import { CAPITAL_EM, widthMm } from '../font/metrics.ts';
import { rectangleItem, textItem } from '../items.ts';
import type { SheetElement, SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import { HAIRLINE_MM, LABEL_PT } from '../style.ts';
import type { ChartParts } from './parts.ts';

export interface PageMap {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Each part has the number of its page in it; where there is no room for that, only where it lies is seen. */
  readonly isNumbered: boolean;
  /** The map with the part of that index filled, its top left corner at (`x`, `y`). */
  draw(name: string, current: number | null, x: number, y: number): SheetElement;
}

const AROUND_MM = 4;
const LINE_MM = 4.8;

/** A map no larger than that; the first part stands on page `firstPage`. */
export function pageMap(laid: ChartParts, firstPage: number, mostWidthMm: number, mostHeightMm: number): PageMap {
  const { across, up, parts } = laid;
  const wide = widthMm(String(firstPage + parts.length - 1), LABEL_PT, true) + AROUND_MM;
  const isNumbered = across * wide <= mostWidthMm && up * LINE_MM <= mostHeightMm;
  const cellWidth = Math.min(Math.max(wide, LINE_MM), mostWidthMm / across);
  const cellHeight = Math.min(LINE_MM, mostHeightMm / up);
  return {
    widthMm: across * cellWidth,
    heightMm: up * cellHeight,
    isNumbered,
    draw: (name, current, x, y) => {
      const items = parts.flatMap((part, index): SheetItem[] => {
        const [left, top] = [x + part.across * cellWidth, y + (up - 1 - part.up) * cellHeight];
        const isHere = index === current;
        const edge = { paint: 'rule', width: HAIRLINE_MM } as const;
        const box = rectangleItem(left, top, cellWidth, cellHeight, isHere ? 'accent' : 'paper', edge);
        if (!isNumbered) return [box];
        const baseline = top + (cellHeight + LABEL_PT * POINT_MM * CAPITAL_EM) / 2;
        const style = { sizePt: LABEL_PT, anchor: 'middle', isStrong: isHere, tone: isHere ? 'paper' : 'ink' } as const;
        return [box, textItem(String(firstPage + index), left + cellWidth / 2, baseline, style)];
      });
      const here = current === null ? null : firstPage + current;
      return { role: 'figure', description: sheetWords.chart.map(name, across, up, firstPage, here), items };
    },
  };
}
