/**
 * A punched card: a chart without lines, whose cells are punched or not. Rows
 * without a hole are seen by its feed holes: at each side of the card one for
 * each row, as far from the outermost column on either side (common practice,
 * no source).
 */
import type { Bounds } from './cell-sides.ts';
import { holesIn, type Hole } from './holes.ts';
import type { Anchor } from './lattice.ts';
import { modelOf, type LatticeModel } from './lattice-model.ts';
import type { Picture } from './picture.ts';

/** A card has this many columns, where its feed holes allow for it (common practice, no source). */
const COLUMNS = 24;

/** Holes are looked for so many cells beyond those that are known, round by round. */
const BEYOND = 6;
const MOST_ROUNDS = 8;

/** Fewer holes than this are not followed. */
const LEAST_HOLES = 20;

/** Holes of cells lie at most this far from their middle, in cells. */
const OFF_MIDDLE = 0.3;

/** Feed holes: how far the next one lies down, to the side, and how many there are at least. */
const NEXT = 0.25;
const ASIDE = 0.2;
const LEAST_FEEDS = 8;

/** One may be missed between two. */
const MOST_STEPS = 2;

/** So many are seen of all that would be there. */
const FEEDS_SEEN = 0.9;

/** Both sides begin and end at the same row, but for this, in cells. */
const SAME_ROW = 0.5;

/** The first column begins at least and at most this far from the middle of a feed hole, in cells. */
const LEAST_AWAY = 0.45;
const MOST_AWAY = 2.3;

/** A card between its feed holes. */
export interface Card {
  readonly bounds: Bounds;
  /** Through its holes. */
  readonly model: LatticeModel;
  /** It has as many columns as cards have. */
  readonly isWhole: boolean;
}

/** The card that a lattice without lines is of; null where its feed holes do not show one. */
export function cardOn(picture: Picture, lattice: LatticeModel, core: Bounds): Card | null {
  let model = lattice;
  let within = widened(core);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const holes = holesIn(picture, model, within);
    const anchors = anchorsOf(holes, model);
    if (anchors.length < LEAST_HOLES) return null;
    model = modelOf(anchors);
    const next = joined(within, widened(around(anchors)));
    if (isSame(next, within)) break;
    within = next;
  }
  const holes = holesIn(picture, model, within);
  const between = betweenFeeds(holes);
  if (between === null) return null;
  const { bounds, away, left, right } = between;
  // Feed holes lie beside its corners, where no cell may be punched.
  const feeds = [
    { column: bounds.left - away, feeds: left },
    { column: bounds.right + away, feeds: right },
  ].flatMap(({ column, feeds: { holes: chain, first } }) =>
    chain.map((hole) => anchorOf(column, bounds.top + 0.5 + Math.round(hole.row - first), hole, model)),
  );
  return {
    bounds,
    model: modelOf([...anchorsOf(holes, model), ...feeds]),
    isWhole: bounds.right - bounds.left === COLUMNS,
  };
}

function widened({ left, top, right, bottom }: Bounds): Bounds {
  return { left: left - BEYOND, top: top - BEYOND, right: right + BEYOND, bottom: bottom + BEYOND };
}

function joined(one: Bounds, other: Bounds): Bounds {
  return {
    left: Math.min(one.left, other.left),
    top: Math.min(one.top, other.top),
    right: Math.max(one.right, other.right),
    bottom: Math.max(one.bottom, other.bottom),
  };
}

function isSame(one: Bounds, other: Bounds): boolean {
  return (['left', 'top', 'right', 'bottom'] as const).every((side) => one[side] === other[side]);
}

function around(anchors: readonly Anchor[]): Bounds {
  const columns = anchors.map(({ column }) => Math.floor(column));
  const rows = anchors.map(({ row }) => Math.floor(row));
  return {
    left: Math.min(...columns),
    right: Math.max(...columns) + 1,
    top: Math.min(...rows),
    bottom: Math.max(...rows) + 1,
  };
}

/** Holes that are those of cells, as what the lattice is laid through. */
function anchorsOf(holes: readonly Hole[], model: LatticeModel): Anchor[] {
  const [across, down] = [meanOff(holes.map(({ column }) => column)), meanOff(holes.map(({ row }) => row))];
  return holes.flatMap((hole): Anchor[] => {
    const [c, r] = [hole.column - across, hole.row - down];
    const [column, row] = [Math.floor(c) + 0.5, Math.floor(r) + 0.5];
    if (Math.abs(c - column) > OFF_MIDDLE || Math.abs(r - row) > OFF_MIDDLE) return [];
    return [anchorOf(column, row, hole, model)];
  });
}

/** The place of a hole in the picture, as that of a column and a row. */
function anchorOf(column: number, row: number, hole: Hole, model: LatticeModel): Anchor {
  const at = model.at(hole.column, hole.row);
  const [right, below] = [model.at(hole.column + 1, hole.row), model.at(hole.column, hole.row + 1)];
  return {
    column,
    row,
    at,
    across: { x: right.x - at.x, y: right.y - at.y },
    down: { x: below.x - at.x, y: below.y - at.y },
    clarity: 1,
  };
}

/** How far from the middle of cells places usually lie, −½ … ½: the mean of their angles on a circle. */
function meanOff(places: readonly number[]): number {
  let [x, y] = [0, 0];
  for (const place of places) {
    const angle = 2 * Math.PI * (place - 0.5);
    x += Math.cos(angle);
    y += Math.sin(angle);
  }
  return Math.atan2(y, x) / (2 * Math.PI);
}

/** Holes one below the other, a row apart. */
interface Feeds {
  readonly holes: readonly Hole[];
  readonly column: number;
  readonly first: number;
  readonly last: number;
}

/** The rows and columns between two sides of feed holes, and how far from these they begin. */
interface Between {
  readonly left: Feeds;
  readonly right: Feeds;
  readonly bounds: Bounds;
  readonly away: number;
}

function betweenFeeds(holes: readonly Hole[]): Between | null {
  const each = feedsOf(holes);
  let best: { readonly left: Feeds; readonly right: Feeds } | null = null;
  for (const left of each) {
    for (const right of each) {
      if (right.column - left.column < LEAST_FEEDS) continue;
      if (Math.abs(left.first - right.first) > SAME_ROW || Math.abs(left.last - right.last) > SAME_ROW) continue;
      const isWider = best === null || right.column - left.column > best.right.column - best.left.column;
      if (isWider) best = { left, right };
    }
  }
  if (best === null) return null;
  const { left, right } = best;
  const top = Math.min(left.first, right.first) - SAME_ROW;
  const bottom = Math.max(left.last, right.last) + SAME_ROW;
  const columns = columnsBetween(left.column, right.column);
  if (columns === null) return null;
  const { away, ...across } = columns;
  return { bounds: { ...across, top: Math.round(top), bottom: Math.round(bottom) }, away, left, right };
}

/** As far from the one as from the other. */
function columnsBetween(
  from: number,
  to: number,
): { readonly left: number; readonly right: number; readonly away: number } | null {
  const room = to - from;
  const fits = [COLUMNS, ...Array.from({ length: Math.floor(room) }, (_, i) => Math.floor(room) - i)];
  for (const count of fits) {
    const away = (room - count) / 2;
    const left = from + away;
    if (away < LEAST_AWAY || away > MOST_AWAY || Math.abs(left - Math.round(left)) > OFF_MIDDLE) continue;
    return { left: Math.round(left), right: Math.round(left) + count, away };
  }
  return null;
}

function feedsOf(holes: readonly Hole[]): Feeds[] {
  const sorted = [...holes].sort((one, other) => one.row - other.row);
  const taken = new Set<Hole>();
  return sorted.flatMap((start, from): Feeds[] => {
    if (taken.has(start)) return [];
    const chain = [start];
    for (const hole of sorted.slice(from + 1)) {
      const last = chain.at(-1) as Hole;
      const steps = Math.round(hole.row - last.row);
      if (steps > MOST_STEPS) break;
      const isNext = steps >= 1 && Math.abs(hole.row - last.row - steps) <= NEXT;
      if (isNext && Math.abs(hole.column - last.column) <= ASIDE) chain.push(hole);
    }
    for (const hole of chain) taken.add(hole);
    const last = chain.at(-1) as Hole;
    const rows = Math.round(last.row - start.row) + 1;
    if (rows < LEAST_FEEDS || chain.length < FEEDS_SEEN * rows) return [];
    const column = chain.reduce((sum, hole) => sum + hole.column, 0) / chain.length;
    return [{ holes: chain, column, first: start.row, last: last.row }];
  });
}
