/** How each kind of file is made from a project. */
import type { Day } from '@shared/day/index.ts';
import { gaugeOfMotif } from '@shared/fabric/index.ts';
import type { ExportKind, exportSources } from '@shared/host/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import {
  rowListCsv,
  anchorCells,
  chartImageSize,
  chartSvg,
  garmentSheet,
  placementSheet,
  sheetFacts,
  type PlannedPlace,
  type AnchorCells,
  type ChartImageOptions,
  type SheetOptions,
} from '@shared/output/index.ts';
import { copiesIn } from '@shared/pattern/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { sheetToPdf } from './pdf.ts';
import { chartPng, isImageSize } from './png.ts';

/** What is drawn of each placed motif. */
export interface ChartMaker {
  readonly ending: string;
  draw(motif: Motif, project: ProjectAt, options: { readonly date: Day }): Uint8Array;
}

type PlanOptions = Pick<Required<SheetOptions>, 'paper' | 'date' | 'charts'> & { readonly lengthUnit: LengthUnit };

/** What is made of the plan of the piece. */
export interface PlanMaker {
  readonly ending: string;
  make(plan: Plan, project: ProjectAt, options: PlanOptions): Uint8Array | Promise<Uint8Array>;
}

/** Density of chart images: fit for print. */
const CHART_DPI = 300;
/** Height of a chart's cell in pixels, unless the whole would be too large. */
const CELL_PIXELS = 24;
const XML_DECLARATION = '<?xml version="1.0" encoding="UTF-8"?>\n';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export const MAKERS: {
  readonly [Kind in ExportKind]: (typeof exportSources)[Kind] extends 'motifs' ? ChartMaker : PlanMaker;
} = {
  'chart-png': {
    ending: 'png',
    draw: (motif, project, { date }) =>
      chartPng(motif, project, { ...chartOptions(project, motif), dpi: CHART_DPI, date }),
  },
  'chart-svg': {
    ending: 'svg',
    draw: (motif, project, { date }) =>
      bytesOf(`${XML_DECLARATION}${chartSvg(motif, project, { ...chartOptions(project, motif), date })}\n`),
  },
  'sheet-pdf': {
    ending: 'pdf',
    make: (plan, project, { paper, date, lengthUnit: unit, charts }) =>
      sheetToPdf(placementSheet(sheetFacts(project), plan, { paper, date, unit, charts })),
  },
  // Other programs read it as a plain table, in which a date would be one more row.
  'rows-csv': { ending: 'csv', make: (plan, project) => bytesOf(rowListCsv(plan, pieceIn(project))) },
};

/** The placement sheets of several pieces in one file, with a first page of what they take together. */
export function garmentPdf(
  pieces: readonly PlannedPlace[],
  { paper, date, lengthUnit: unit, charts }: PlanOptions,
): Promise<Uint8Array> {
  const planned = pieces.map(({ place, plan }) => ({ facts: sheetFacts(place), plan }));
  return sheetToPdf(garmentSheet(planned, { paper, date, unit, charts }));
}

/** The anchors of the motif where it stands on the piece; none where that cannot be planned. */
function anchorsOn(project: ProjectAt, { id, grid }: Motif): AnchorCells {
  const piece = pieceIn(project);
  if (!piece.patterns.some(({ anchors }) => anchors !== null)) return new Map();
  const plan = outcome(() => makePlan(piece));
  if (!plan.ok) return new Map();
  return anchorCells(
    plan.value,
    copiesIn(plan.value).filter(({ motif }) => motif === id),
    grid,
  );
}

/** Numbers, lines and repeat box, in cells as large as the image may be. */
function chartOptions(project: ProjectAt, motif: Motif): ChartImageOptions {
  const decorated = {
    gauge: gaugeOfMotif(pieceIn(project), motif.id),
    numbers: true,
    gridLines: true,
    repeatBox: true,
    anchors: anchorsOn(project, motif),
  };
  let cellHeight = CELL_PIXELS;
  while (cellHeight > 1 && !isImageSize(chartImageSize(motif, { ...decorated, cellHeight }))) cellHeight--;
  return { ...decorated, cellHeight };
}
