/** Files made from a project: chart images, the placement sheet, the row list. */
import type { Day } from '@shared/day/index.ts';
import { exportSources, type ExportKind } from '@shared/host/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { plannedPlaces, type ChartSides, type PaperSize, type PlannedPlace } from '@shared/output/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { LOOKED_AT, pieceIn, type ProjectAt, type Scope } from '@shared/project/index.ts';
import { filesOf, type FileToMake } from './files-of.ts';
import { garmentPdf, MAKERS, type ChartMaker, type PlanMaker } from './makers.ts';

export type { ExportKind } from '@shared/host/index.ts';
export { exportFileNames } from './files-of.ts';
export { numberedNames, safeFileName } from './file-name.ts';
export { sheetToPdf } from './pdf.ts';
export { chartPng, MOST_PIXELS, MOST_SIDE, type ChartPngOptions } from './png.ts';

export interface ExportRequest {
  readonly project: ProjectAt;
  readonly kinds: readonly ExportKind[];
  /** Of which pieces in which sizes; of the one that is looked at if left out. */
  readonly scope?: Scope;
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

/**
 * Makes the files asked for, one after the other: all of them are there before
 * the first is written. `made` is told how many there are whenever one is.
 * Throws what planning throws, of several pieces or sizes with which it is, and
 * `image-too-large`.
 */
export async function makeExports(
  request: ExportRequest,
  made: (count: number) => void = () => undefined,
): Promise<MadeFile[]> {
  const { project, kinds, scope = LOOKED_AT } = request;
  // Planned before anything is made, so that what stands in the way is found first.
  const isPlanned = kinds.some((kind) => exportSources[kind] === 'plan');
  const plans = new Map(isPlanned ? plannedPlaces(project, scope).flatMap(plansOf) : []);
  const files: MadeFile[] = [];
  for (const file of filesOf(project, kinds, scope)) {
    files.push({ name: file.name, content: await contentOf(file, request, plans) });
    made(files.length);
  }
  return files;
}

function plansOf(places: readonly PlannedPlace[]): (readonly [ProjectAt, Plan])[] {
  return places.map(({ place, plan }) => [place, plan]);
}

async function contentOf(
  file: FileToMake,
  { paper, date, lengthUnit = 'cm', charts = 'both' }: ExportRequest,
  plans: ReadonlyMap<ProjectAt, Plan>,
): Promise<Uint8Array> {
  const options = { paper, date, lengthUnit, charts };
  const planOf = (place: ProjectAt): Plan => plans.get(place) ?? makePlan(pieceIn(place));
  switch (file.of) {
    case 'motif':
      return (MAKERS[file.kind] as ChartMaker).draw(file.motif, file.place, { date });
    case 'piece':
      return (MAKERS[file.kind] as PlanMaker).make(planOf(file.place), file.place, options);
    case 'garment':
      return garmentPdf(
        file.places.map((place) => ({ place, plan: planOf(place) })),
        options,
      );
  }
}
