/**
 * The placement sheet: everything that must lie beside the machine.
 *
 * The first page has the piece to scale; below it and on, in two columns, the
 * row counter, the steps, the groups, the yarn, what to watch; then the charts,
 * and the row list.
 */
import { findingsOf } from '../check/index.ts';
import type { Day } from '../day/index.ts';
import type { LengthUnit } from '../length/index.ts';
import { trueRepeat } from '../motif/repeat/index.ts';
import { gaugeAt, isSameGauge, sizeOf } from '../piece/index.ts';
import type { Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { plain, strong, words } from '../words/index.ts';
import { wholeBlock, type Block } from './blocks/block.ts';
import { pour, type Frame, type Pool } from './blocks/pour.ts';
import { paragraphBlock, textLines } from './blocks/text.ts';
import { chartPages, type ChartOnSheet } from './chart/chart-blocks.ts';
import { chartOfCopy } from './chart/subject.ts';
import { fillBlocks, groupBlocks, stageBlocks, stepBlocks, wrapBlocks, yarnBlocks } from './facts-blocks.ts';
import { widthMm } from './font/metrics.ts';
import { printable } from './font/printable.ts';
import { shorten, wrap } from './font/wrap.ts';
import { textItem } from './items.ts';
import type { SheetDocument, SheetElement, SheetPage } from './model.ts';
import { cautionBlocks, findingBlocks } from './notice-blocks.ts';
import { PAPER, type PaperMm, type PaperSize } from './paper.ts';
import { pieceFigure } from './piece/piece-figure.ts';
import { rowListBlocks } from './row-list-blocks.ts';
import type { SheetFacts } from './sheet-facts.ts';
import { sizeBlocks } from './size-blocks.ts';
import { BODY_PT, COLUMN_GAP_MM, HEAD_BASELINE_MM, LABEL_PT, lineHeightMm, PAGE_MARGIN_MM, TITLE_PT } from './style.ts';

export interface SheetOptions {
  readonly paper: PaperSize;
  /** Stands in the running heads, and in the file. */
  readonly date: Day;
  /** What the fabric is measured in; cm if left out. */
  readonly unit?: LengthUnit;
}

/** Above this share of a page's height the piece is not drawn taller, so that the steps begin below it. */
const FIGURE_SHARE = 0.32;
const COLUMN_SPACE_MM = 4;
/** Between the two ends of a running head, at least. */
const HEAD_GAP_MM = 10;
/** A rest of a page shorter than this is left white. */
const LEAST_FRAME_MM = 35;
/** A chart whose cells come out at least this wide in a column stands there. */
const LEAST_COLUMN_CELL_MM = 3;
const MOST_COLUMN_CHART_MM = 170;

/** Lays the sheet out. `plan` is that of the piece. */
export function placementSheet(
  facts: SheetFacts,
  plan: Plan,
  { paper, date, unit = 'cm' }: SheetOptions,
): SheetDocument {
  const size = PAPER[paper];
  const width = size.widthMm - 2 * PAGE_MARGIN_MM;
  const column = (width - COLUMN_GAP_MM) / 2;
  const pages: SheetElement[][] = [[]];
  const placed = (page: number, elements: readonly SheetElement[]): void => void pages[page]?.push(...elements);
  const addPage = (): Frame => {
    pages.push([]);
    return pageFrame(size, pages.length - 1);
  };

  const first = pour(
    openingBlocks(facts, plan, size, width, unit),
    { frame: pageFrame(size, 0), usedMm: 0 },
    addPage,
    placed,
  );
  const charts = chartsOf(facts, plan, unit);
  const inColumn: Block[] = [];
  const onPages: ChartOnSheet[] = [];
  for (const chart of charts) {
    const laid = chartPages(chart, { widthMm: column, heightMm: MOST_COLUMN_CHART_MM });
    if (laid.pages.length === 1 && laid.cellWidth >= LEAST_COLUMN_CELL_MM) inColumn.push(...(laid.pages[0] ?? []));
    else onPages.push(chart);
  }
  const columns = columnFrames(size, column, addPage);
  pour([...factBlocks(facts, plan, column, unit), ...inColumn], columns.start(first), columns.next, placed);
  for (const chart of onPages) {
    for (const blocks of chartPages(chart, { widthMm: width, heightMm: pageFrame(size, 0).heightMm }).pages) {
      pour(blocks, { frame: addPage(), usedMm: 0 }, addPage, placed);
    }
  }
  pour(rowListBlocks(facts.piece, plan, width), { frame: addPage(), usedMm: 0 }, addPage, placed);

  return {
    title: words.sheet.title(facts.title),
    subject: words.sheet.subject,
    language: 'en',
    paper,
    date,
    pages: pages.map((elements, index) => finishedPage(facts, size, date, elements, index, pages.length)),
  };
}

function openingBlocks(facts: SheetFacts, plan: Plan, size: PaperMm, width: number, unit: LengthUnit): Block[] {
  const { piece } = facts;
  const { sheet } = words;
  const measured = sizeOf(piece.shape, plan.gauges);
  const { left, right } = piece.seamAllowance;
  const titleLines = wrap([strong(facts.title)], width, TITLE_PT);
  return [
    wholeBlock(titleLines.length * lineHeightMm(TITLE_PT) * 0.9, 0, (x, y) => [
      { role: 'heading', level: 1, items: textLines(titleLines, x, y - 1.5, TITLE_PT, 'ink') },
    ]),
    paragraphBlock(sheet.size(words.knitting.piece(piece, facts.size), measured, unit), width, { sizePt: BODY_PT + 1 }),
    paragraphBlock(
      plain(`${sheet.gauge(piece.gauge, ownGauges(piece))}; ${sheet.seamAllowance(left, right)}.`),
      width,
      {
        tone: 'soft',
        spaceAboveMm: 0.4,
      },
    ),
    pieceFigure(piece, plan, width, size.heightMm * FIGURE_SHARE),
  ];
}

/** The gauges of hem and parts that are not that of the piece. */
function ownGauges({ hemRows, hem, parts, gauge }: KnitPiece) {
  return [
    ...(hemRows > 0 ? [{ part: null, gauge: hem.gauge ?? gauge }] : []),
    ...parts.map((part) => ({ part: part.name, gauge: part.gauge ?? gauge })),
  ].filter((own) => !isSameGauge(own.gauge, gauge));
}

function factBlocks(facts: SheetFacts, plan: Plan, width: number, unit: LengthUnit): Block[] {
  const { piece } = facts;
  const findings = findingsOf(piece, plan);
  return [
    ...stepBlocks(piece, plan, width),
    ...stageBlocks(plan, width),
    ...groupBlocks(plan, width),
    ...fillBlocks(piece, plan, width),
    ...sizeBlocks(facts.sizes, width, unit),
    ...yarnBlocks(piece, plan, width),
    ...wrapBlocks(plan, width, unit),
    ...findingBlocks(piece, plan, findings, width),
    ...cautionBlocks(facts, plan, findings, width),
  ];
}

/** One chart for each motif and each width of it that is placed; the first motif where nothing is. */
function chartsOf({ piece, motifs }: SheetFacts, plan: Plan, unit: LengthUnit): ChartOnSheet[] {
  const charts = new Map<string, ChartOnSheet>();
  const placed = [...plan.groups, ...plan.fills.map((fill) => ({ ...fill, up: Infinity }))];
  const uses = (motif: string, width: number) =>
    placed.filter((one) => one.motif === motif && one.copy.width === width);
  const add = (id: string, width: number): void => {
    const key = `${width} ${id}`;
    const motif = motifs.find((motif) => motif.id === id);
    if (!motif || charts.has(key)) return;
    const { chart } = words.sheet;
    const subject = chartOfCopy(motif, piece.yarns, width);
    const found = uses(id, width);
    const starts = new Set(found.map(({ firstRow, up }) => (up === 1 ? firstRow : -1)));
    const [start = -1] = starts;
    const isMirrored = found[0]?.isMirrored ?? false;
    // A motif on rows of unlike gauges is drawn as it stands lowest.
    const gauge = gaugeAt(plan.gauges, Math.min(...found.map(({ firstRow }) => firstRow), plan.outline.rows));
    const isRepeat = width === trueRepeat(motif.grid).width;
    const blank = chart.blank(subject.blankLeft, subject.blankRight);
    const counterFrom = starts.size === 1 && start > 0 ? start - 1 : null;
    charts.set(key, {
      subject,
      name: motif.name,
      gauge,
      counterFrom,
      about: [
        chart.size(width, subject.grid.height, gauge, isRepeat, unit),
        plain(chart.lies(motif.shows, isMirrored)),
        ...(blank === null ? [] : [plain(blank)]),
        ...(counterFrom === null ? [] : [plain(chart.counter)]),
      ],
    });
  };
  for (const { motif, copy } of placed) add(motif, copy.width);
  const [unplaced] = motifs;
  if (charts.size === 0 && unplaced) add(unplaced.id, unplaced.grid.width);
  return [...charts.values()];
}

function pageFrame(size: PaperMm, page: number): Frame {
  return { page, x: PAGE_MARGIN_MM, y: PAGE_MARGIN_MM, heightMm: size.heightMm - PAGE_MARGIN_MM - 14 };
}

/** Two columns a page: what the first page has left, then whole pages. */
function columnFrames(size: PaperMm, column: number, addPage: () => Frame) {
  let current = pageFrame(size, 0);
  let isSecond = false;
  const next = (): Frame => {
    if (!isSecond) {
      isSecond = true;
      return { ...current, x: current.x + column + COLUMN_GAP_MM };
    }
    isSecond = false;
    current = addPage();
    return current;
  };
  const start = ({ frame, usedMm }: Pool): Pool => {
    const top = usedMm + COLUMN_SPACE_MM;
    const heightMm = frame.heightMm - top;
    current = heightMm < LEAST_FRAME_MM ? addPage() : { ...frame, y: frame.y + top, heightMm };
    return { frame: current, usedMm: 0 };
  };
  return { start, next };
}

function finishedPage(
  { title, size: sizeName }: SheetFacts,
  size: PaperMm,
  date: Day,
  elements: readonly SheetElement[],
  index: number,
  count: number,
): SheetPage {
  const { sheet } = words;
  const called = sizeName === null ? title : words.sizes.named(title, sizeName);
  const right = size.widthMm - PAGE_MARGIN_MM;
  const style = { sizePt: LABEL_PT, tone: 'soft' } as const;
  const placed = sheet.pageOnDay(index + 1, count, date);
  const beside = ` · ${sheet.runningHead}`;
  const room = right - PAGE_MARGIN_MM - widthMm(`${beside}${placed}`, LABEL_PT) - HEAD_GAP_MM;
  const name = index === 0 ? '' : `${shorten(printable(called), room, LABEL_PT)} · `;
  return {
    title: sheet.pageTitle(index + 1, count),
    widthMm: size.widthMm,
    heightMm: size.heightMm,
    elements: [
      {
        role: 'decoration',
        items: [
          textItem(`${name}${sheet.runningHead}`, PAGE_MARGIN_MM, HEAD_BASELINE_MM, style),
          textItem(placed, right, HEAD_BASELINE_MM, { ...style, anchor: 'end' }),
        ],
      },
      ...elements,
    ],
  };
}
