/**
 * The placement sheet: everything that must lie beside the machine.
 *
 * The first page has the piece to scale with the needles of its groups; then
 * what to have at hand and the running order, the charts, yarn and strands, what
 * to watch, the row list, cautions and room for notes. Of a piece that cannot be
 * knitted the first page says why, and there are no orders. A wide piece has its
 * first page alone, in landscape, and a wide chart pages in landscape.
 */
import { isMirroredOnNeedles, type Shows } from '../bed/index.ts';
import { findingsOf } from '../check/index.ts';
import type { Day } from '../day/index.ts';
import type { LengthUnit } from '../length/index.ts';
import { trueRepeat } from '../motif/repeat/index.ts';
import { gaugeAt } from '../piece/index.ts';
import { allOversOf, copiesIn } from '../pattern/index.ts';
import { runningOrderOf, type Plan } from '../plan/index.ts';
import { plain } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import type { Block } from './blocks/block.ts';
import { pour, type Frame, type Pool } from './blocks/pour.ts';
import { chartPages, type ChartOnSheet } from './chart/chart-blocks.ts';
import { coloursSaid } from './chart/colours-said.ts';
import { marksFor, type YarnMarks } from './chart/marks.ts';
import { standsOf } from './chart/stands.ts';
import { anchorCells, withAnchorCells } from './chart/anchored.ts';
import { chartOfCopy, mirrored } from './chart/subject.ts';
import { allOverBlocks, groupBlocks } from './facts-blocks.ts';
import { feedingBlocks } from './feeding-blocks.ts';
import { finishedPages, type LaidPage } from './finished-pages.ts';
import type { SheetDocument, SheetElement } from './model.ts';
import { cautionBlocks, findingBlocks } from './notice-blocks.ts';
import { notesBlocks } from './notes-blocks.ts';
import { openingBlocks } from './opening-blocks.ts';
import { chartOnPaper, pageFrame, pageWidthMm, paperForPiece } from './orientation.ts';
import { PAPER, type PaperMm, type PaperSize } from './paper.ts';
import { rowListBlocks } from './row-list-blocks.ts';
import type { SheetFacts } from './sheet-facts.ts';
import { sizeBlocks } from './size-blocks.ts';
import { atHandBlocks, knittingBlocks } from './steps/step-blocks.ts';
import { READING_MM } from './style.ts';
import { strandBlocks, yarnBlocks } from './winding-blocks.ts';

export interface SheetOptions {
  readonly paper: PaperSize;
  /** Stands in the running heads, and in the file. */
  readonly date: Day;
  /** What the fabric is measured in; cm if left out. */
  readonly unit?: LengthUnit;
  /** Both if left out. */
  readonly charts?: ChartSides;
}

/** A chart whose cells come out at least this wide in so much of a page does not begin a page of its own. */
const LEAST_FLOWING_CELL_MM = 3;
const MOST_FLOWING_CHART_MM = 170;

/** Steps and row list begin a page, unless no more than this share of the one before is taken: nearly empty it would be wasted. */
const MOST_TAKEN_SHARE = 0.5;

/** Lays the sheet out. `plan` is that of the piece. */
export function placementSheet(
  facts: SheetFacts,
  plan: Plan,
  { paper, date, unit = 'cm', charts = 'both' }: SheetOptions,
): SheetDocument {
  const { piece } = facts;
  const upright = PAPER[paper];
  const width = pageWidthMm(upright);
  const readingWidth = Math.min(width, READING_MM);
  const pages: LaidPage[] = [];
  const placed = (page: number, elements: readonly SheetElement[]): void =>
    void pages[page]?.elements.push(...elements);
  const addPage = (size: PaperMm): Frame => {
    pages.push({ size, elements: [] });
    return pageFrame(size, pages.length - 1);
  };
  const addUpright = (): Frame => addPage(upright);
  /** Where the last of what is poured down the pages ended; null where a page of another kind came after it. */
  let pool: Pool | null = null;
  const flow = (blocks: readonly Block[]): void => {
    if (blocks.length > 0) pool = pour(blocks, pool ?? { frame: addUpright(), usedMm: 0 }, addUpright, placed);
  };
  const flowFollowed = (blocks: readonly Block[]): void => {
    if (pool && pool.usedMm > pool.frame.heightMm * MOST_TAKEN_SHARE) pool = null;
    flow(blocks);
  };

  const marks = sheetMarks(facts, plan);
  const opening = paperForPiece(plan, upright);
  const addOpening = (): Frame => addPage(opening);
  const first = pour(
    openingBlocks(facts, plan, marks, opening, unit),
    { frame: addOpening(), usedMm: 0 },
    addOpening,
    placed,
  );
  pool = opening === upright ? first : null;

  const running = runningOrderOf(piece, plan);
  const findings = findingsOf(piece, plan);
  flow([
    ...(plan.groups.length > 0 ? groupBlocks(piece, plan, width) : []),
    ...allOverBlocks(piece, plan, readingWidth),
    ...sizeBlocks(facts.sizes, width, unit),
  ]);
  if (running.isKnittable) {
    flowFollowed([
      ...atHandBlocks(piece, plan, running.order, readingWidth, unit),
      ...knittingBlocks(piece, running.order, width, unit),
    ]);
  }
  for (const chart of chartsOf(facts, plan, marks, unit, charts)) {
    const flowing = chartPages(chart, { widthMm: width, heightMm: MOST_FLOWING_CHART_MM }, 1);
    if (flowing.pages.length === 1 && flowing.cellWidth >= LEAST_FLOWING_CELL_MM) {
      flow(flowing.pages[0] ?? []);
      continue;
    }
    const { paper: onPaper, laid } = chartOnPaper(chart, upright, pages.length + 1);
    const addSame = (): Frame => addPage(onPaper);
    for (const blocks of laid.pages) pour(blocks, { frame: addSame(), usedMm: 0 }, addSame, placed);
    pool = null;
  }
  flow([
    ...(running.isKnittable ? feedingBlocks(piece, running.order, readingWidth) : []),
    ...yarnBlocks(facts, plan, readingWidth, unit),
    ...strandBlocks(piece, plan, readingWidth, unit),
    ...findingBlocks(piece, plan, findings, readingWidth, unit),
  ]);
  if (running.isKnittable) flowFollowed(rowListBlocks(piece, plan, width, unit));
  flow([...cautionBlocks(facts, plan, findings, readingWidth), ...notesBlocks(facts, width)]);

  return {
    title: sheetWords.title(facts.title),
    subject: sheetWords.subject,
    language: 'en',
    paper,
    date,
    pages: finishedPages({ project: facts.title, piece: piece.name, size: facts.size }, pages, date),
  };
}

/** A mark for each yarn of the piece and its charts but the main one. */
function sheetMarks({ piece, motifs }: SheetFacts, plan: Plan): YarnMarks {
  const placed = new Set(copiesIn(plan).map(({ motif }) => motif));
  const drawn = placed.size === 0 ? motifs.slice(0, 1) : motifs.filter(({ id }) => placed.has(id));
  const inOrders = copiesIn(plan).flatMap(({ colours }) =>
    (colours?.order.stripes ?? []).flatMap(({ yarns }) => yarns),
  );
  const used = new Set([
    ...drawn.flatMap(({ grid }) => [...new Set(grid.cells)]),
    ...inOrders.map(({ knitted }) => knitted),
  ]);
  return marksFor(used, piece.mainYarn);
}

/** Which way round the charts of a sheet are drawn. */
export type ChartSides = 'both' | Shows;

/**
 * The charts of each motif, each width of it and each way round that is placed:
 * as the knitter sees the needles, and as worn; one where the two are alike. The
 * first motif where nothing is placed.
 */
function chartsOf(
  { piece, motifs }: SheetFacts,
  plan: Plan,
  marks: YarnMarks,
  unit: LengthUnit,
  sides: ChartSides,
): ChartOnSheet[] {
  const charts = new Map<string, ChartOnSheet[]>();
  const placed = copiesIn(plan);
  const add = (id: string, width: number, isMirrored: boolean): void => {
    const key = `${width} ${isMirrored} ${id}`;
    const motif = motifs.find((motif) => motif.id === id);
    if (!motif || charts.has(key)) return;
    const { chart } = sheetWords;
    const found = placed.filter((one) => one.motif === id && one.copy.width === width && one.isMirrored === isMirrored);
    // A motif on rows of unlike gauges is drawn as it stands lowest.
    const gauge = gaugeAt(plan.gauges, Math.min(...found.map(({ firstRow }) => firstRow), plan.outline.rows));
    const isRepeat = width === trueRepeat(motif.grid).width;
    const stands = standsOf(found, motif.grid.height, plan);
    const where = chart.standsIn(
      plan.groups.flatMap((group, index) => (found.includes(group) ? [{ ...group, index }] : [])),
      allOversOf(plan).flatMap((one) => (found.includes(one) ? [one.number] : [])),
    );
    const beside = chart.beside(stands.map(({ starts }) => starts));
    const ofCopy = chartOfCopy(motif, piece, width);
    const drawn = withAnchorCells(ofCopy, anchorCells(plan, found, ofCopy.grid));
    const onNeedles = isMirrored ? mirrored(drawn) : drawn;
    const wornIsOther = piece.finishedFace === 'knit';
    const ways = wornIsOther
      ? (['needles', 'worn'] as const).filter((way) => sides === 'both' || sides === way)
      : (['needles'] as const);
    charts.set(
      key,
      ways.map((way) => {
        const subject = way === 'worn' ? mirrored(onNeedles) : onNeedles;
        const blank = chart.blank(subject.blankLeft, subject.blankRight);
        return {
          subject,
          name: motif.name,
          gauge,
          marks,
          stands,
          about: [
            chart.size(width, subject.grid.height, gauge, isRepeat, unit),
            ...(where === null ? [] : [plain(where)]),
            ...coloursSaid(found, piece).map(plain),
            plain(wornIsOther ? chart.shown[way] : chart.shownAlike),
            ...(blank === null ? [] : [plain(blank)]),
            ...(subject.anchors.size === 0 ? [] : [plain(chart.anchors(subject.anchors.size))]),
            ...(beside === null ? [] : [plain(beside)]),
          ],
        };
      }),
    );
  };
  for (const { motif, copy, isMirrored } of placed) add(motif, copy.width, isMirrored);
  const [unplaced] = motifs;
  if (charts.size === 0 && unplaced) {
    add(unplaced.id, unplaced.grid.width, isMirroredOnNeedles(unplaced.shows, piece.finishedFace));
  }
  return [...charts.values()].flat();
}
