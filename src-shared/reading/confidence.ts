/**
 * How sure each cell of a reading is.
 *
 * Three things make a cell doubtful. Its colour lies nearly as near to another
 * yarn as to its own. Or the quarters of its middle do not agree, more than is
 * usual for its yarn (a slash through a cell leaves two quarters white in all
 * of them): then it is half painted, dirty, or not where it was thought to be.
 * Or its yarn is that of a handful of cells, which dirt and glare make too.
 */
export interface Confidence {
  /** 0 … 1 for each cell. */
  readonly confidence: Float32Array;
  /** 1 for each cell that a person should look at. */
  readonly doubtful: Uint8Array;
}

/** Below this a cell is doubtful. */
export const DOUBTFUL_BELOW = 0.5;

/** A cell this far from the border between two yarns is as sure as can be; 1 is at its yarn. */
const SURE_MARGIN = 0.6;

/** Cells of a yarn that has no more than this, and no more than this share of all, are looked at, each of them. */
const HANDFUL = 4;
const HANDFUL_SHARE = 0.02;

/** What each quarter more than usual that sides with another yarn takes off. */
const QUARTER_COST = 0.3;

/**
 * Of `yarns` chosen for each cell, the margin of each choice (0 at the border
 * to the next yarn, 1 at the yarn itself), and how many quarters side with
 * another yarn.
 */
export function confidenceOf(yarns: Uint8Array, margins: Float32Array, strayQuarters: Uint8Array): Confidence {
  const usual = usualStray(yarns, strayQuarters);
  const handful = Math.min(HANDFUL, HANDFUL_SHARE * yarns.length);
  const cells = new Map<number, number>();
  for (const yarn of yarns) cells.set(yarn, (cells.get(yarn) ?? 0) + 1);
  const confidence = new Float32Array(yarns.length);
  const doubtful = new Uint8Array(yarns.length);
  yarns.forEach((yarn, cell) => {
    const more = Math.max(0, (strayQuarters[cell] as number) - (usual.get(yarn) as number));
    const clear = Math.min(1, (margins[cell] as number) / SURE_MARGIN) * Math.max(0, 1 - QUARTER_COST * more);
    const sure = (cells.get(yarn) as number) <= handful ? Math.min(clear, DOUBTFUL_BELOW / 2) : clear;
    confidence[cell] = sure;
    if (sure < DOUBTFUL_BELOW) doubtful[cell] = 1;
  });
  return { confidence, doubtful };
}

/** The middle number of stray quarters of each yarn's cells. */
function usualStray(yarns: Uint8Array, strayQuarters: Uint8Array): Map<number, number> {
  const counts = new Map<number, number[]>();
  yarns.forEach((yarn, cell) => {
    const count = counts.get(yarn) ?? [0, 0, 0, 0, 0];
    count[strayQuarters[cell] as number] = (count[strayQuarters[cell] as number] as number) + 1;
    counts.set(yarn, count);
  });
  return new Map(
    [...counts].map(([yarn, count]) => {
      const half = count.reduce((sum, n) => sum + n, 0) / 2;
      let below = 0;
      const middle = count.findIndex((n) => (below += n) >= half);
      return [yarn, middle];
    }),
  );
}
