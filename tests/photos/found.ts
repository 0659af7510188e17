/** Charts found in photographs, held against where they were drawn. */
import { findCharts, finish, photoOf, sideLengths } from '@shared/reading/index.ts';
import type { Photograph } from '../generate/charts/photographs.ts';

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

export function foundIn({ picture, corners, grid }: Photograph): Found {
  try {
    const [chart] = finish(findCharts(photoOf(picture)));
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
    return { counts: columns === grid.width && rows === grid.height, off, sure, why };
  } catch (thrown) {
    const code = String((thrown as { problem?: { code: string } }).problem?.code ?? thrown);
    return { counts: false, off: Infinity, sure: false, why: [code] };
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

/** By kind and together; `each` hears of every photograph. */
export function foundMany(photographs: Iterable<Photograph>, each: (p: Photograph, found: Found) => void): string {
  const all = new FoundSums();
  const byKind = new Map<string, FoundSums>();
  for (const photograph of photographs) {
    const found = foundIn(photograph);
    const sums = byKind.get(photograph.kind) ?? new FoundSums();
    byKind.set(photograph.kind, sums);
    sums.add(found);
    all.add(found);
    each(photograph, found);
  }
  return [...[...byKind].map(([kind, sums]) => sums.line(kind)), all.line('all')].join('\n');
}
