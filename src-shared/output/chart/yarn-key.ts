/** The key of yarns below a chart or the piece: a patch of each, with its mark and its name. */
import type { Yarn } from '../../project/index.ts';
import { sheetWords } from '../../words/sheet.ts';
import { wholeBlock, type Block } from '../blocks/block.ts';
import { widthMm as textWidthMm } from '../font/metrics.ts';
import { printable } from '../font/printable.ts';
import { shorten } from '../font/wrap.ts';
import { pathItem, rectangleItem, textItem } from '../items.ts';
import type { SheetItem } from '../model.ts';
import { baselineMm, HAIRLINE_MM, LABEL_PT, lineHeightMm, MARK_MM } from '../style.ts';
import { yarnPaint } from '../tones.ts';
import { markStrokes, toneOn, type YarnMarks } from './marks.ts';

const SWATCH_MM = 3.6;
const TEXT_MM = 5;
const BETWEEN_MM = 5;

export interface KeyOfYarns {
  readonly yarns: readonly Yarn[];
  /** Palette indices, the main yarn first. */
  readonly used: readonly number[];
  readonly marks: YarnMarks;
}

/** Patches of the yarns in use with their names, as many to a line as fit. */
export function yarnKeyBlock({ yarns, used, marks }: KeyOfYarns, widthMm: number): Block {
  // Many yarns stand in columns with shortened names, so that the key leaves room for the chart.
  const inColumns = used.length > 36 ? 4 : used.length > 12 ? 3 : 1;
  const most = widthMm / inColumns - TEXT_MM - BETWEEN_MM;
  const entries = used.map((yarn, index) => {
    const name = printable(sheetWords.chart.key(yarns[yarn]?.name ?? '', index === 0));
    const text = shorten(name, most, LABEL_PT);
    return { yarn, text, width: TEXT_MM + textWidthMm(text, LABEL_PT) + BETWEEN_MM };
  });
  const lines: (typeof entries)[] = [[]];
  let usedMm = 0;
  for (const entry of entries) {
    if (usedMm > 0 && usedMm + entry.width - BETWEEN_MM > widthMm) {
      lines.push([]);
      usedMm = 0;
    }
    lines.at(-1)?.push(entry);
    usedMm += entry.width;
  }
  const lineHeight = lineHeightMm(LABEL_PT) + 0.4;
  return wholeBlock(lines.length * lineHeight, 1.2, (x, y) => {
    const items: SheetItem[] = [];
    lines.forEach((line, index) => {
      let left = x;
      const top = y + index * lineHeight;
      for (const { yarn, text, width } of line) {
        const colour = yarns[yarn]?.colour ?? '#ffffff';
        items.push(...patch(colour, marks.get(yarn) ?? [], left, top + lineHeightMm(LABEL_PT) / 2));
        items.push(textItem(text, left + TEXT_MM, top + baselineMm(LABEL_PT), { sizePt: LABEL_PT }));
        left += width;
      }
    });
    return [{ role: 'paragraph', items }];
  });
}

function patch(colour: string, mark: Parameters<typeof markStrokes>[0], left: number, middle: number): SheetItem[] {
  const top = middle - SWATCH_MM / 2;
  const edge = { paint: 'rule', width: HAIRLINE_MM } as const;
  const strokes = markStrokes(mark, left + SWATCH_MM / 2, middle, SWATCH_MM);
  return [
    rectangleItem(left, top, SWATCH_MM, SWATCH_MM, yarnPaint(colour), edge),
    ...(strokes.length === 0 ? [] : [pathItem(strokes, { paint: toneOn([colour]), width: MARK_MM })]),
  ];
}
