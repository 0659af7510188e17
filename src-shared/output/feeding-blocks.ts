/** Which yarn is in which feeder, as a table on the sheet; empty where all rows are fed alike. */
import { feedingLines, feedingRuns } from '../plan/feeding.ts';
import type { RunningOrder } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { plain, strong } from '../words/index.ts';
import { feedingWords } from '../words/feeding.ts';
import type { Block } from './blocks/block.ts';
import { cell, columnsOf, tableBlock, type Cell } from './blocks/table.ts';
import { headingBlock, paragraphBlock } from './blocks/text.ts';

export function feedingBlocks({ yarns }: KnitPiece, order: RunningOrder, widthMm: number): Block[] {
  const runs = feedingRuns(order);
  if (runs.length < 2) return [];
  const text = feedingWords;
  const hasByHand = runs.some(({ byHand }) => byHand.length > 0);
  const columns = columnsOf(widthMm, [
    [text.columns.rows, 0],
    [text.columns.first, 34],
    [text.columns.second, 34],
    ...(hasByHand ? [[text.columns.byHand, 34] as [string, number]] : []),
  ]);
  const rows = feedingLines(runs).map((line): Cell[] => [
    cell([strong(text.rows(line))]),
    cell(text.yarn(yarns, line.feeders[1])),
    cell(text.yarn(yarns, line.feeders[2])),
    ...(hasByHand ? [cell(text.byHand(yarns, line.byHand))] : []),
  ]);
  return [
    headingBlock(plain(text.title), widthMm),
    paragraphBlock(plain(text.about), widthMm, { tone: 'soft', keepsWithNext: true }),
    tableBlock(columns, rows, { title: text.title }),
  ];
}
