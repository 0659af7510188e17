/**
 * The placement sheet: everything that must lie beside the machine.
 *
 * The first page has the piece to scale; below it and on, in two columns, the
 * row counter, the steps, the groups, the yarn, what to watch; then the charts,
 * and the row list. A wide piece has its first page alone, in landscape, and a
 * wide chart pages in landscape.
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
import { chartOnPaper, mostFigureMm, pageFrame, pageWidthMm, paperForPiece } from './orientation.ts';
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

const COLUMN_SPACE_MM = 4;
/** Between the two ends of a running head, at least. */
const HEAD_GAP_MM = 10;
/** A rest of a page shorter than this is left white. */
const LEAST_FRAME_MM = 35;
/** A chart whose cells come out at least this wide in a column stands there. */
const LEAST_COLUMN_CELL_MM = 3;
const MOST_COLUMN_CHART_MM = 170;

/** A page with what stands on it, its running head apart. */
interface LaidPage {
  readonly size: PaperMm;
  readonly elements: SheetElement[];
}

/** Lays the sheet out. `plan` is that of the piece. */
export function placementSheet(
  facts: SheetFacts,
  plan: Plan,
  { paper, date, unit = 'cm' }: SheetOptions,
): SheetDocument {
  const upright = PAPER[paper];
  const width = pageWidthMm(upright);
  const column = (width - COLUMN_GAP_MM) / 2;
  const pages: LaidPage[] = [];
  const placed = (page: number, elements: readonly SheetElement[]): void =>
    void pages[page]?.elements.push(...elements);
  const addPage = (size: PaperMm): Frame => {
    pages.push({ size, elements: [] });
    return pageFrame(size, pages.length - 1);
  };
  const addUpright = (): Frame => addPage(upright);

  const opening = paperForPiece(facts.piece, plan, upright);
  const addOpening = (): Frame => addPage(opening);
  const first = pour(openingBlocks(facts, plan, opening, unit), { frame: addOpening(), usedMm: 0 }, addOpening, placed);
  const charts = chartsOf(facts, plan, unit);
  const inColumn: Block[] = [];
  const onPages: ChartOnSheet[] = [];
  for (const chart of charts) {
    const laid = chartPages(chart, { widthMm: column, heightMm: MOST_COLUMN_CHART_MM });
    if (laid.pages.length === 1 && laid.cellWidth >= LEAST_COLUMN_CELL_MM) inColumn.push(...(laid.pages[0] ?? []));
    else onPages.push(chart);
  }
  const columns = columnFrames(upright, column, addUpright);
  pour(
    [...factBlocks(facts, plan, column, unit), ...inColumn],
    columns.start(opening === upright ? first : null),
    columns.next,
    placed,
  );
  for (const chart of onPages) {
    const { paper: onPaper, laid } = chartOnPaper(chart, upright);
    const addSame = (): Frame => addPage(onPaper);
    for (const blocks of laid.pages) pour(blocks, { frame: addSame(), usedMm: 0 }, addSame, placed);
  }
  pour(rowListBlocks(facts.piece, plan, width), { frame: addUpright(), usedMm: 0 }, addUpright, placed);

  return {
    title: words.sheet.title(facts.title),
    subject: words.sheet.subject,
    language: 'en',
    paper,
    date,
    pages: pages.map((page, index) => finishedPage(facts, page, date, index, pages.length)),
  };
}

function openingBlocks(facts: SheetFacts, plan: Plan, size: PaperMm, unit: LengthUnit): Block[] {
  const width = pageWidthMm(size);
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
    pieceFigure(piece, plan, width, mostFigureMm(size)),
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

/** Two columns a page: what is left of the page where pouring stopped, if they may go on there, then whole pages. */
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
  const start = (left: Pool | null): Pool => {
    if (left === null) return { frame: (current = addPage()), usedMm: 0 };
    const { frame, usedMm } = left;
    const top = usedMm + COLUMN_SPACE_MM;
    const heightMm = frame.heightMm - top;
    current = heightMm < LEAST_FRAME_MM ? addPage() : { ...frame, y: frame.y + top, heightMm };
    return { frame: current, usedMm: 0 };
  };
  return { start, next };
}

function finishedPage(
  { title, size: sizeName }: SheetFacts,
  { size, elements }: LaidPage,
  date: Day,
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
