/** A small pullover of a front, a back and two sleeves in three sizes: as a file, and asked of the command line. */
import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';
import { gridFromText } from '@shared/grid/index.ts';
import type { Shape } from '@shared/piece/index.ts';
import {
  projectToText,
  START_MACHINE,
  START_PIECE,
  START_YARNS,
  startBand,
  type PieceInSizes,
  type Project,
} from '@shared/project/index.ts';
import type { GarmentJson } from '../../src-main/cli/json/garment.ts';
import type { PlanJson } from '../../src-main/cli/json/plan.ts';
import { writtenProject } from '../written-projects.ts';

export const GARMENT = 'Harbour pullover';
export const SIZES = ['S', 'M', 'L'] as const;
export type SizeName = (typeof SIZES)[number];

/** Four stitches and four rows without a blank edge, topmost row first: a ring. */
export const RING = ['.##.', '#..#', '#..#', '.##.'];

/**
 * What each size comes to, worked by hand. Common practice, no source.
 *
 * Front and back have two rings of 4 stitches, even to the eye with the seam
 * closed: what is left is parted into a gap in the middle and half of it at each
 * side. Of 40 stitches 32 are left: 8, 16, 8, so that the rings begin 8 stitches
 * from the left edge (L20), at L12, and 8 to the right of the middle, at R9. The
 * 4 rows stand in the middle of all.
 */
export const BODY: { readonly [size in SizeName]: BodySize } = {
  S: { stitches: 40, rows: 60, first: ['L12', 'R9'], onRows: [29, 32] },
  M: { stitches: 48, rows: 64, first: ['L14', 'R11'], onRows: [31, 34] },
  L: { stitches: 56, rows: 68, first: ['L16', 'R13'], onRows: [33, 36] },
};

export interface BodySize {
  readonly stitches: number;
  readonly rows: number;
  readonly first: readonly string[];
  readonly onRows: readonly [number, number];
}

export const SLEEVE: { readonly [size in SizeName]: SleeveSize } = {
  S: { castOn: 24, atTop: 36, rows: 50 },
  M: { castOn: 26, atTop: 40, rows: 54 },
  L: { castOn: 28, atTop: 44, rows: 58 },
};

export interface SleeveSize {
  readonly castOn: number;
  readonly atTop: number;
  readonly rows: number;
}

/** What of the pullover is there. */
export interface GarmentSoFar {
  readonly sizes?: readonly SizeName[];
  readonly pieces?: readonly string[];
}

/** The pullover as a file holds it; in one size, as one that nobody has named yet. */
export function garmentText({ sizes: made = SIZES, pieces = ['front', 'back', 'sleeve'] }: GarmentSoFar = {}): string {
  const { whole } = writtenProject({
    name: GARMENT,
    notes: '',
    machine: START_MACHINE,
    yarnMargin: 10,
    yarns: START_YARNS,
    mainYarn: 0,
    motifs: [
      {
        id: 'ring',
        name: 'ring',
        grid: gridFromText(RING, '.#'),
        shows: 'worn',
        isLettering: false,
        underlay: null,
      },
    ],
    piece: { ...START_PIECE, name: 'front' },
    patterns: [startBand('ring', [1, 1])],
  });
  const [front] = whole.pieces as readonly [PieceInSizes];
  const sizes = made.map((name) => ({ id: `size-${name}`, name }));
  const inSizes = (id: string, knit: number, shapeOf: (size: SizeName) => Shape): PieceInSizes => ({
    ...front,
    id,
    name: id,
    knit,
    patterns: knit > 1 ? [] : front.patterns.map((pattern) => ({ ...pattern, id: `${id}-${pattern.id}` })),
    perSize: sizes.map((size) => ({
      ...(front.perSize[0] as PieceInSizes['perSize'][number]),
      size: size.id,
      shape: shapeOf(size.name),
    })),
  });
  const body = (size: SizeName): Shape => ({
    kind: 'rectangle',
    stitches: BODY[size].stitches,
    rows: BODY[size].rows,
  });
  const sleeve = (size: SizeName): Shape => ({
    kind: 'tapered',
    stitches: SLEEVE[size].castOn,
    stitchesAtTop: SLEEVE[size].atTop,
    rows: SLEEVE[size].rows,
    straightRows: 6,
  });
  const all = [inSizes('front', 1, body), inSizes('back', 1, body), inSizes('sleeve', 2, sleeve)];
  const named = made.length === 1 ? sizes.map((size) => ({ ...size, name: '1' })) : sizes;
  const garment: Project = { ...whole, sizes: named, pieces: all.filter(({ id }) => pieces.includes(id)) };
  return projectToText(garment);
}

const CLI = resolve(import.meta.dirname, '../../out/main/cli.cjs');

/** What `plan --json` says of a piece of the file at `path`. */
export function planned(path: string, piece: string, size?: string): PlanJson {
  return planJson(path, '--piece', piece, ...(size === undefined ? [] : ['--size', size])) as PlanJson;
}

/** What it says of the yarn of all pieces, in a size. */
export function yarnOfAll(path: string, size: string): GarmentJson['yarn'] {
  return (planJson(path, '--all-pieces', '--size', size) as GarmentJson).yarn;
}

function planJson(path: string, ...args: string[]): unknown {
  return JSON.parse(execFileSync(process.execPath, [CLI, 'plan', path, '--json', ...args], { encoding: 'utf8' }));
}
