/** Charts found in photographs, held against where they were drawn. */
import { findCharts, finish, photoOf, sideLengths, type Corners, type Photo } from '@shared/reading/index.ts';
import type { Kind } from '../generate/charts/kinds.ts';
import type { Photograph } from '../generate/charts/photographs.ts';
import { readWithin, type Outcome } from './tried.ts';

export interface Found {
  /** Columns and rows are those drawn. */
  readonly counts: boolean;
  /** How far the corner lies off that is furthest off, in cells; infinitely where nothing was found. */
  readonly off: number;
  readonly sure: boolean;
  /** Why it is not sure, or was not found. */
  readonly why: readonly string[];
}

/** A third of a cell off a corner is still within the cell that is meant. */
export const MOST_OFF = 1 / 3;

export function foundIn(photograph: Photograph): Found {
  return sought(photograph, photoOf(photograph.picture)).found;
}

/** {@link foundIn}, and what comes out when it is read as it was found; null where that is another chart. */
export function foundAndRead(photograph: Photograph): { readonly found: Found; readonly read: Outcome | null } {
  const photo = photoOf(photograph.picture);
  const { found, corners } = sought(photograph, photo);
  const isFound = corners !== null && found.counts && found.off < MOST_OFF;
  return { found, read: isFound ? readWithin(photograph, photo, corners) : null };
}

function sought(
  { corners, grid }: Photograph,
  photo: Photo,
): { readonly found: Found; readonly corners: Corners | null } {
  try {
    const [chart] = finish(findCharts(photo));
    if (!chart) throw new Error('found nothing, and said nothing');
    const { across, up } = sideLengths(corners);
    const cell = Math.min(across / grid.width, up / grid.height);
    const off = Math.max(
      ...chart.corners.map(({ x, y }, i) => {
        const drawn = corners[i] as { x: number; y: number };
        return Math.hypot(x - drawn.x, y - drawn.y) / cell;
      }),
    );
    const { columns, rows, sure, why } = chart;
    const counts = columns === grid.width && rows === grid.height;
    return { found: { counts, off, sure, why }, corners: chart.corners };
  } catch (thrown) {
    const code = String((thrown as { problem?: { code: string } }).problem?.code ?? thrown);
    return { found: { counts: false, off: Infinity, sure: false, why: [code] }, corners: null };
  }
}

/** Of many photographs. */
export class FoundSums {
  photos = 0;
  corners = 0;
  counts = 0;
  sure = 0;
  sureAndRight = 0;

  add({ counts, off, sure }: Found): void {
    const isRight = counts && off < MOST_OFF;
    this.photos++;
    this.counts += counts ? 1 : 0;
    this.corners += isRight ? 1 : 0;
    this.sure += sure ? 1 : 0;
    this.sureAndRight += sure && isRight ? 1 : 0;
  }

  line(name: string): string {
    return `${name.padEnd(30)} ${this.photos} photos: corners found ${this.corners}, counts ${this.counts}, sure ${this.sure}, of which right ${this.sureAndRight}`;
  }
}

/** By kind and together. */
export function foundTable(all: Iterable<{ readonly kind: Kind; readonly found: Found }>): string {
  const together = new FoundSums();
  const byKind = new Map<Kind, FoundSums>();
  for (const { kind, found } of all) {
    const sums = byKind.get(kind) ?? new FoundSums();
    byKind.set(kind, sums);
    sums.add(found);
    together.add(found);
  }
  return [...[...byKind].map(([kind, sums]) => sums.line(kind)), together.line('all')].join('\n');
}
