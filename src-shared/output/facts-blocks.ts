/** The tables and lists of the placement sheet, one function a subject; empty where there is nothing to say. */
import { label } from '../bed/index.ts';
import { firstNeedlesOf, seamMatchingOf } from '../fabric/index.ts';
import { edgesAt } from '../piece/index.ts';
import { judgeRound, seenRound } from '../placement/index.ts';
import type { Plan } from '../plan/index.ts';
import { allOversOf, bandsOf } from '../pattern/index.ts';
import type { KnitAllOver, KnitPiece } from '../project/index.ts';
import { capitalised, plain, strong, words } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import type { Block } from './blocks/block.ts';
import { cell, columnsOf, tableBlock, type Cell } from './blocks/table.ts';
import { headingBlock, paragraphBlock } from './blocks/text.ts';
import { actNames } from './steps/names.ts';

/** Every group's needles, and the spaces between them. */
export function groupBlocks(piece: KnitPiece, plan: Plan, widthMm: number): Block[] {
  const { groups } = sheetWords;
  const names = actNames(piece);
  if (plan.groups.length === 0) return plan.patterns.length > 0 ? [] : [paragraphBlock(plain(groups.none), widthMm)];
  const columns = columnsOf(widthMm, [
    [groups.columns.group, 15],
    [groups.columns.motif, 0],
    [groups.columns.first, 23],
    [groups.columns.last, 25],
    [groups.columns.seen, 24],
    [groups.columns.rows, 22],
    [groups.columns.copies, 18, 'end'],
  ]);
  const rows = plan.groups.map(({ block, figure, firstRow, lastRow, across, up, motif }, index): Cell[] => [
    cell(String(index + 1)),
    cell(names.motif(motif)),
    cell([strong(label(block.first))]),
    cell(label(block.last)),
    cell(words.numbers.run(figure)),
    cell(words.numbers.span(firstRow, lastRow)),
    cell(groups.copies(across, up)),
  ]);
  return [
    headingBlock(plain(groups.title), widthMm),
    tableBlock(columns, rows, { title: groups.title }),
    ...spaceBlocks(plan, widthMm),
  ];
}

function spaceBlocks(plan: Plan, widthMm: number): Block[] {
  const { groups } = sheetWords;
  const columns = columnsOf(widthMm, [
    [groups.spacesColumns.what, 42],
    [groups.spacesColumns.spaces, 0],
  ]);
  const rows = bandsOf(plan).flatMap((band): Cell[][] => {
    const choice = band.choices[band.taken];
    if (!choice || choice.groups.length === 0) return [];
    const row = band.firstRow;
    const { figure, blocks } = choice;
    const { left, right } = band.question.seamAllowance;
    const { margins, gaps } = band.question.judge === 'figure' ? figure : blocks;
    const seen = seenRound(choice);
    const round = choice.acrossSeam < 0 ? '' : words.placement.round(judgeRound(seen.acrossSeam, seen.gaps));
    const line = (what: string, counts: readonly number[]): Cell[] => [
      cell(capitalised(what), 'soft'),
      cell([strong(groups.spaces(counts))]),
    ];
    return [
      [cell(capitalised(groups.needles(row)), 'soft'), cell(words.numbers.run(edgesAt(plan.outline, row)))],
      line(groups.seen(row), [figure.margins[0], ...figure.gaps, figure.margins[1]]),
      line(groups.blocks(row), [blocks.margins[0], ...blocks.gaps, blocks.margins[1]]),
      ...(left + right > 0 ? [line(groups.clear(row), [margins[0] - left, ...gaps, margins[1] - right])] : []),
      [
        cell(capitalised(groups.acrossSeam(row)), 'soft'),
        cell([strong(String(choice.acrossSeam)), ...(round === '' ? [] : plain(`; ${round}`))]),
      ],
    ];
  });
  return [tableBlock(columns, rows, { title: groups.spacesTitle, spaceAboveMm: 2.5 })];
}

/** Where the copies of each all-over stand, how many are whole, and how they meet in the seam. */
export function allOverBlocks(piece: KnitPiece, plan: Plan, widthMm: number): Block[] {
  const given = allOversOf(piece);
  if (given.length === 0) return [];
  const { allOvers } = sheetWords;
  return [
    headingBlock(plain(allOvers.title), widthMm),
    ...allOversOf(plan).map((placed) => {
      const first = firstNeedlesOf(placed, plan.outline);
      const { motif, centre, shift } = given[placed.number] as KnitAllOver;
      const seam = seamMatchingOf(placed, plan.outline);
      const facts = { ...placed, motif: motif.name, first, centre, shift, seam };
      return paragraphBlock(allOvers.lies(facts), widthMm);
    }),
  ];
}
