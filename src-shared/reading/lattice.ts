/**
 * A lattice of cells followed over a picture from where it is seen best.
 *
 * From each place that is known its neighbours are foretold and looked at; by
 * how much their lines lie beside that is put right, and so on outwards, until
 * nothing comes back any more. So the lattice bends with the paper and the
 * lens, and ends where the chart does, give or take a few cells.
 */
import { Matrix, solve } from 'ml-matrix';
import type { Point } from './corners.ts';
import { lookAtWindow } from './lattice-window.ts';
import type { Seed } from './lattice-seed.ts';
import type { Picture } from './picture.ts';

/** A crossing of lines that was seen, with the steps to the next ones in pixels. */
export interface Anchor {
  /** Columns and rows from the seed's crossing. */
  readonly column: number;
  readonly row: number;
  readonly at: Point;
  readonly across: Point;
  readonly down: Point;
  readonly clarity: number;
}

/** Crossings are looked at this many cells apart. */
export const SPACING = 3;

/** What comes back less clearly is not part of the lattice; chance seldom makes 0.35. */
const LEAST_CLARITY = 0.4;

/** … but where it lies this near to where it is foretold, in cells, less is enough. */
const FORETOLD = 0.1;
const LEAST_FORETOLD = 0.36;

/** A crossing lies at most this far from where it is foretold, in cells. */
const MOST_OFF = 0.32;

/** No chart has more crossings. */
const MOST_ANCHORS = 8000;

/** Known crossings up to this many spacings away foretell the next. */
const NEIGHBOURS = 2;

/** How much the steps of the crossing next to it count, in squares of cells. */
const STEADINESS = 12;

/** The crossings that hang together with the seed, where `isFree`; none where it was mistaken. */
export function grown(
  picture: Picture,
  seed: Seed,
  isFree: (at: Point) => boolean = () => true,
  spacing = SPACING,
): Anchor[] {
  const found = new Map<number, Anchor>();
  const looked = new Map<number, number>();
  const first = begun(picture, seed);
  if (first === null) return [];
  found.set(keyOf(0, 0), first);
  let rim = [first];
  while (rim.length > 0 && found.size < MOST_ANCHORS) {
    const next: Anchor[] = [];
    for (const { column, row } of rim.sort((a, b) => b.clarity - a.clarity)) {
      for (const [dc, dr] of AROUND) {
        const [c, r] = [column + dc * spacing, row + dr * spacing];
        const key = keyOf(c, r);
        if (found.has(key)) continue;
        const known = knownAround(found, c, r, spacing);
        // Looked at again only when more is known.
        if (known.length <= (looked.get(key) ?? 0)) continue;
        looked.set(key, known.length);
        const foretold = foretoldAt(known, c, r, spacing);
        const { x, y } = foretold.at;
        if (x < 0 || y < 0 || x > picture.width || y > picture.height || !isFree(foretold.at)) continue;
        const anchor = anchorAt(picture, foretold, MOST_OFF);
        if (anchor === null) continue;
        const settled = { ...foretoldAt([...known, anchor], c, r, spacing), at: anchor.at, clarity: anchor.clarity };
        found.set(key, settled);
        next.push(settled);
      }
    }
    rim = next;
  }
  return [...found.values()];
}

/** Around the middle of a seed's window it may be seen better, in cells: half of the window may lie beside the chart. */
const BEGINNINGS = [-4, 0, 4];

/** The crossing seen best of those around a seed. */
function begun(picture: Picture, { at, across, down }: Seed): Anchor | null {
  let best: Anchor | null = null;
  for (const r of BEGINNINGS) {
    for (const c of BEGINNINGS) {
      const place = { x: at.x + c * across.x + r * down.x, y: at.y + c * across.y + r * down.y };
      const anchor = anchorAt(picture, { column: 0, row: 0, at: place, across, down, clarity: 0 }, 1);
      if (anchor !== null && anchor.clarity > (best?.clarity ?? 0)) best = anchor;
    }
  }
  return best;
}

const AROUND = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

/** One number for a column and a row. */
export function keyOf(column: number, row: number): number {
  return (row + 5000) * 10000 + column + 5000;
}

function anchorAt(picture: Picture, foretold: Anchor, mostOff: number): Anchor | null {
  let { at } = foretold;
  const { across, down } = foretold;
  let clarity = 0;
  let moved: Point = { x: 0, y: 0 };
  for (let look = 0; look < 2; look++) {
    const seen = lookAtWindow(picture, at, across, down);
    clarity = seen.clarity;
    const isForetold = Math.abs(seen.across) <= FORETOLD && Math.abs(seen.down) <= FORETOLD;
    if (clarity < (isForetold && mostOff < 1 ? LEAST_FORETOLD : LEAST_CLARITY)) return null;
    moved = { x: moved.x + seen.across, y: moved.y + seen.down };
    if (Math.abs(moved.x) > mostOff || Math.abs(moved.y) > mostOff) return null;
    at = {
      x: at.x + seen.across * across.x + seen.down * down.x,
      y: at.y + seen.across * across.y + seen.down * down.y,
    };
    // What lay far off was seen askew; looked at once more.
    if (Math.abs(seen.across) < 0.1 && Math.abs(seen.down) < 0.1) break;
  }
  return { ...foretold, at, clarity };
}

function knownAround(found: ReadonlyMap<number, Anchor>, column: number, row: number, spacing: number): Anchor[] {
  const known: Anchor[] = [];
  for (let dr = -NEIGHBOURS; dr <= NEIGHBOURS; dr++) {
    for (let dc = -NEIGHBOURS; dc <= NEIGHBOURS; dc++) {
      const anchor = found.get(keyOf(column + dc * spacing, row + dr * spacing));
      if (anchor) known.push(anchor);
    }
  }
  return known;
}

/** A plane through the known crossings around, whose slopes are held to the steps of the nearest. */
function foretoldAt(known: readonly Anchor[], column: number, row: number, spacing: number): Anchor {
  const left = Matrix.zeros(3, 3);
  const right = Matrix.zeros(3, 2);
  let nearest = known[0] as Anchor;
  let least = Infinity;
  for (const anchor of known) {
    const [c, r] = [anchor.column - column, anchor.row - row];
    const distance = c * c + r * r;
    if (distance < least && distance > 0) [nearest, least] = [anchor, distance];
    const weight = anchor.clarity / (1 + distance / (2 * spacing * spacing));
    const terms = [1, c, r];
    for (let i = 0; i < 3; i++) {
      const term = weight * (terms[i] as number);
      right.set(i, 0, right.get(i, 0) + term * anchor.at.x);
      right.set(i, 1, right.get(i, 1) + term * anchor.at.y);
      for (let j = 0; j < 3; j++) left.set(i, j, left.get(i, j) + term * (terms[j] as number));
    }
  }
  for (const [i, step] of [
    [1, nearest.across],
    [2, nearest.down],
  ] as const) {
    left.set(i, i, left.get(i, i) + STEADINESS);
    right.set(i, 0, right.get(i, 0) + STEADINESS * step.x);
    right.set(i, 1, right.get(i, 1) + STEADINESS * step.y);
  }
  const plane = solve(left, right);
  const point = (i: number): Point => ({ x: plane.get(i, 0), y: plane.get(i, 1) });
  return { column, row, at: point(0), across: point(1), down: point(2), clarity: 0 };
}
