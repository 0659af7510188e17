/** Files made from a project: chart images, the placement sheet, the row list. */
import { gaugeOfMotif } from '@shared/fabric/index.ts';
import type { exportKinds } from '@shared/host/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import {
  rowListCsv,
  chartImageSize,
  chartSvg,
  placementSheet,
  type ChartImageOptions,
  type PaperSize,
} from '@shared/output/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { hasSeveralSizes, motifOf, type Motif, type Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { safeFileName } from './file-name.ts';
import { sheetToPdf } from './pdf.ts';
import { chartPng, isImageSize } from './png.ts';

export { safeFileName } from './file-name.ts';
export { sheetToPdf } from './pdf.ts';
export { chartPng, MOST_PIXELS, MOST_SIDE, type ChartPngOptions } from './png.ts';

export type ExportKind = (typeof exportKinds)[number];

export interface ExportRequest {
  readonly project: Project;
  readonly kinds: readonly ExportKind[];
  readonly paper: PaperSize;
  /** What the fabric is measured in on the sheet; cm if left out. */
  readonly lengthUnit?: LengthUnit;
}

export interface MadeFile {
  readonly name: string;
  readonly content: Uint8Array;
}

/** Density of chart images: fit for print. */
const CHART_DPI = 300;
/** Height of a chart's cell in pixels, unless the whole would be too large. */
const CELL_PIXELS = 24;
/** Of a project's name, so that there is room for that of a size. */
const MOST_BYTES_BESIDE_SIZE = 100;

/**
 * Makes the files asked for, one after the other: all of them are there before
 * the first is written. Throws what planning throws, and `image-too-large`.
 */
export async function makeExports(request: ExportRequest): Promise<MadeFile[]> {
  const { project, kinds } = request;
  const plan = kinds.some((kind) => kind === 'sheet-pdf' || kind === 'rows-csv') ? makePlan(project) : null;
  const made: MadeFile[] = [];
  for (const kind of new Set(kinds)) made.push(...(await filesOf(kind, request, plan)));
  return made;
}

/**
 * `Skerry sleeve - chart.png`; the charts of further motifs are numbered from
 * 2. Where there are several sizes, what belongs to one says which:
 * `Skerry sleeve, size M - rows.csv`.
 */
export function exportFileName(project: Pick<Project, 'name' | 'sizes'>, kind: ExportKind, number = 1): string {
  const { files } = words.sheet;
  const name = safeFileName(project.name, files.unnamed);
  const inSize = hasSeveralSizes(project)
    ? words.sizes.named(
        safeFileName(project.name, files.unnamed, MOST_BYTES_BESIDE_SIZE),
        safeFileName(project.sizes.name, files.unnamed),
      )
    : name;
  const chart = number === 1 ? files.chart : `${files.chart} ${number}`;
  switch (kind) {
    case 'chart-png':
      return `${name} - ${chart}.png`;
    case 'chart-svg':
      return `${name} - ${chart}.svg`;
    case 'sheet-pdf':
      return `${inSize} - ${files.placement}.pdf`;
    case 'rows-csv':
      return `${inSize} - ${files.rows}.csv`;
  }
}

/** The names of all files that these kinds come to. */
export function exportFileNames(project: Project, kinds: readonly ExportKind[]): string[] {
  return [...new Set(kinds)].flatMap((kind) => {
    const count = kind === 'chart-png' || kind === 'chart-svg' ? chartedMotifs(project).length : 1;
    return Array.from({ length: count }, (_, index) => exportFileName(project, kind, index + 1));
  });
}

async function filesOf(kind: ExportKind, request: ExportRequest, plan: Plan | null): Promise<MadeFile[]> {
  const { project, paper, lengthUnit: unit = 'cm' } = request;
  const text = new TextEncoder();
  const charts = (draw: (motif: Motif, options: ChartImageOptions) => Uint8Array): MadeFile[] =>
    chartedMotifs(project).map((motif, index) => ({
      name: exportFileName(project, kind, index + 1),
      content: draw(motif, chartOptions(project, motif)),
    }));
  const one = (content: Uint8Array): MadeFile[] => [{ name: exportFileName(project, kind), content }];
  switch (kind) {
    case 'chart-png':
      return charts((motif, options) => chartPng(motif, project.yarns, { ...options, dpi: CHART_DPI }));
    case 'chart-svg':
      return charts((motif, options) => text.encode(`${XML_DECLARATION}${chartSvg(motif, project.yarns, options)}\n`));
    case 'sheet-pdf':
      return one(await sheetToPdf(placementSheet(project, plan ?? makePlan(project), { paper, unit })));
    case 'rows-csv':
      return one(text.encode(rowListCsv(plan ?? makePlan(project), project)));
  }
}

const XML_DECLARATION = '<?xml version="1.0" encoding="UTF-8"?>\n';

/** The motifs that are placed, in that order; the first there is where none are. */
function chartedMotifs(project: Project): Motif[] {
  const patterns = [...project.bands.flatMap(({ groups }) => groups), ...project.fills];
  const placed = new Set(patterns.map(({ motif }) => motif));
  return placed.size > 0 ? [...placed].map((id) => motifOf(project, id)) : project.motifs.slice(0, 1);
}

/** Numbers, lines and repeat box, in cells as large as the image may be. */
function chartOptions(project: Project, motif: Motif): ChartImageOptions {
  const decorated = { gauge: gaugeOfMotif(project, motif.id), numbers: true, gridLines: true, repeatBox: true };
  let cellHeight = CELL_PIXELS;
  while (cellHeight > 1 && !isImageSize(chartImageSize(motif, { ...decorated, cellHeight }))) cellHeight--;
  return { ...decorated, cellHeight };
}
