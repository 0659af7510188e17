/** Files made from a project: chart images, the placement sheet, the row list. */
import type { Day } from '@shared/day/index.ts';
import { exportSources, type ExportKind } from '@shared/host/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import type { ChartSides, PaperSize } from '@shared/output/index.ts';
import { copiesIn } from '@shared/pattern/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { motifOf, pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { distinctNames, safeFileName } from './file-name.ts';
import { MAKERS, type ChartMaker, type PlanMaker } from './makers.ts';

export type { ExportKind } from '@shared/host/index.ts';
export { numberedNames, safeFileName } from './file-name.ts';
export { sheetToPdf } from './pdf.ts';
export { chartPng, MOST_PIXELS, MOST_SIDE, type ChartPngOptions } from './png.ts';

export interface ExportRequest {
  readonly project: ProjectAt;
  readonly kinds: readonly ExportKind[];
  readonly paper: PaperSize;
  readonly date: Day;
  /** What the fabric is measured in on the sheet; cm if left out. */
  readonly lengthUnit?: LengthUnit;
  /** Which charts the sheet has; both if left out. */
  readonly charts?: ChartSides;
}

export interface MadeFile {
  readonly name: string;
  readonly content: Uint8Array;
}

/** Of the name of a project and of a piece, so that there is room for those beside it. */
const MOST_BYTES_BESIDE = 60;

/**
 * Makes the files asked for, one after the other: all of them are there before
 * the first is written. Throws what planning throws, and `image-too-large`.
 */
export async function makeExports(request: ExportRequest): Promise<MadeFile[]> {
  const { project, kinds } = request;
  // Planned before anything is made, so that what stands in the way is found first.
  const plan = kinds.some((kind) => exportSources[kind] === 'plan') ? makePlan(pieceIn(project)) : null;
  const made: MadeFile[] = [];
  for (const kind of new Set(kinds)) made.push(...(await filesOf(kind, request, plan)));
  return made;
}

/**
 * `Skerry sleeve - chart.png`; the charts of further motifs are numbered from
 * 2. Where there are several pieces or sizes, it says of which the file is:
 * `Skerry, sleeve, size M - rows.csv`.
 */
export function exportFileName(project: ProjectAt, kind: ExportKind, number = 1): string {
  const { ending } = MAKERS[kind];
  const named = words.sheet.files[kind];
  return `${placeName(project)} - ${number === 1 ? named : `${named} ${number}`}.${ending}`;
}

/** What the files of the piece and the size that are looked at begin with, as those of no other piece and size of the project do. */
function placeName({ name, whole: { pieces, sizes }, at }: ProjectAt): string {
  const { unnamed } = words.sheet.files;
  if (pieces.length * sizes.length === 1) return safeFileName(name, unnamed);
  const ofProject = safeFileName(name, unnamed, MOST_BYTES_BESIDE);
  const places = pieces.flatMap((piece) => {
    const parts = pieces.length === 1 ? [] : [safeFileName(piece.name, unnamed, MOST_BYTES_BESIDE)];
    const ofPiece = words.pieces.named([ofProject, ...parts]);
    return sizes.map((size) => ({
      isThis: piece.id === at.piece && size.id === at.size,
      name: sizes.length === 1 ? ofPiece : words.sizes.named(ofPiece, safeFileName(size.name, unnamed)),
    }));
  });
  return distinctNames(places.map((place) => place.name))[places.findIndex(({ isThis }) => isThis)] ?? ofProject;
}

/** The names of all files that these kinds come to. */
export function exportFileNames(project: ProjectAt, kinds: readonly ExportKind[]): string[] {
  return [...new Set(kinds)].flatMap((kind) => {
    const count = exportSources[kind] === 'motifs' ? chartedMotifs(project).length : 1;
    return Array.from({ length: count }, (_, index) => exportFileName(project, kind, index + 1));
  });
}

async function filesOf(kind: ExportKind, request: ExportRequest, plan: Plan | null): Promise<MadeFile[]> {
  const { project, paper, date, lengthUnit = 'cm', charts = 'both' } = request;
  if (exportSources[kind] === 'motifs') {
    const { draw } = MAKERS[kind] as ChartMaker;
    return chartedMotifs(project).map((motif, index) => ({
      name: exportFileName(project, kind, index + 1),
      content: draw(motif, project, { date }),
    }));
  }
  const { make } = MAKERS[kind] as PlanMaker;
  const content = await make(plan ?? makePlan(pieceIn(project)), project, { paper, date, lengthUnit, charts });
  return [{ name: exportFileName(project, kind), content }];
}

/** The motifs that are placed, in that order; the first there is where none are. */
function chartedMotifs(project: ProjectAt): Motif[] {
  const placed = new Set(copiesIn(project).map(({ motif }) => motif));
  return placed.size > 0 ? [...placed].map((id) => motifOf(project, id)) : project.motifs.slice(0, 1);
}
