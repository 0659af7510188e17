/** Cells sorted by yarn. */
import { findColours } from './clusters.ts';
import { nearestOf, squaredDistance, type Colours } from './k-means.ts';
import { colourTextOf, oklab } from './oklab.ts';
import type { CellSamples } from './sample.ts';

/** A yarn for each cell, and how clear the choice was. */
export interface Sorted {
  readonly yarns: Uint8Array;
  /** `#rrggbb` by yarn. */
  readonly colours: readonly string[];
  /** 0 at the border to the next yarn, 1 at the yarn itself. */
  readonly margins: Float32Array;
  /** How many of the four quarters of the cell's middle side with another yarn. */
  readonly strayQuarters: Uint8Array;
}

/** Quarters that differ by this much (OKLab), and twice the usual, make a cell unclean. */
const UNCLEAN = 0.03;

/** If more than this share is unclean, cells are marked with something that does not fill them. */
const MOST_UNCLEAN = 0.08;

/** A colour this far from its yarn (OKLab), and so many times the usual, is none of the yarns. */
const STRAY = 0.1;
const STRAY_TIMES = 6;

/** `samples` under even light; `wanted` yarns, or null for as many as there are. */
export function sortColours(samples: CellSamples, wanted: number | null): Sorted {
  const cells = inOklab(samples.colours);
  const quarters = inOklab(samples.quarters);
  const found = findColours(cells, cleanCells(cells, quarters), wanted);
  const centres = Float64Array.from(found.flat());
  const yarns = nearestOf(cells, centres);
  const quarterYarns = nearestOf(quarters, centres);
  const strayQuarters = new Uint8Array(yarns.length);
  quarterYarns.forEach((yarn, quarter) => {
    const cell = quarter >> 2;
    if (yarn !== yarns[cell]) strayQuarters[cell] = (strayQuarters[cell] as number) + 1;
  });
  return { yarns, colours: found.map(colourTextOf), margins: marginsOf(cells, centres, yarns), strayQuarters };
}

function inOklab(colours: Float32Array): Colours {
  const converted = new Float64Array(colours.length);
  for (let i = 0; i < colours.length; i += 3) {
    converted.set(oklab(colours[i] as number, colours[i + 1] as number, colours[i + 2] as number), i);
  }
  return converted;
}

/**
 * 1 for each cell whose quarters all have about its own colour. Where a good
 * share of the cells has not, they are marked, not dirty, and all are taken.
 */
function cleanCells(cells: Colours, quarters: Colours): Uint8Array {
  const count = cells.length / 3;
  const furthest = Float64Array.from({ length: count }, (_, cell) =>
    Math.sqrt(Math.max(...[0, 1, 2, 3].map((quarter) => squaredDistance(quarters, cell * 4 + quarter, cells, cell)))),
  );
  const limit = Math.max(UNCLEAN, 2 * middleOf([...furthest]));
  const clean = Uint8Array.from(furthest, (distance) => (distance <= limit ? 1 : 0));
  const unclean = count - clean.reduce((sum, isClean) => sum + isClean, 0);
  return unclean > MOST_UNCLEAN * count ? clean.fill(1) : clean;
}

function marginsOf(cells: Colours, centres: Colours, yarns: Uint8Array): Float32Array {
  const own = Float64Array.from(yarns, (yarn, cell) => Math.sqrt(squaredDistance(cells, cell, centres, yarn)));
  const stray = Array.from({ length: centres.length / 3 }, (_, yarn) =>
    Math.max(STRAY, STRAY_TIMES * middleOf([...own].filter((_, cell) => yarns[cell] === yarn))),
  );
  return Float32Array.from(yarns, (yarn, cell) => {
    const distance = own[cell] as number;
    // None of the yarns: what it is has to be looked at.
    if (distance > (stray[yarn] as number)) return 0;
    let next = Infinity;
    for (let other = 0; other < centres.length / 3; other++) {
      if (other !== yarn) next = Math.min(next, squaredDistance(cells, cell, centres, other));
    }
    if (next === Infinity) return 1;
    next = Math.sqrt(next);
    return next + distance === 0 ? 0 : (next - distance) / (next + distance);
  });
}

function middleOf(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
}
