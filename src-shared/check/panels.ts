/**
 * A piece knitted in panels that are sewn together side by side.
 *
 * The joins run straight up. Each side of a join has one stitch more than the
 * picture needs, which vanishes into the seam.
 */
import type { Slot } from '../bed/index.ts';
import type { PlacedGroup } from '../fabric/index.ts';
import { needlesTaken, type Outline } from '../piece/index.ts';

export interface Panels {
  /** Needles that each panel takes, left to right, its seam stitches counted. */
  readonly stitches: readonly number[];
  /** The last needle left of each join. */
  readonly joins: readonly Slot[];
  /** Copies that the joins go through. */
  readonly partedCopies: number;
}

/**
 * The fewest panels that fit on `needles` each; among these, the joins that cut
 * the fewest copies; among these, the panels that are most alike in width; then
 * the joins further left. Null on a bed so short that seam stitches fill it.
 */
export function panelsOf(outline: Outline, groups: readonly PlacedGroup[], needles: number): Panels | null {
  const { first, last } = needlesTaken(outline);
  const width = last - first + 1;
  const count = fewestPanels(width, needles);
  if (count === null) return null;
  const cuts = copiesCut(groups, first, width);
  // best[x]: the best way to split the leftmost x stitches into so many panels.
  let best: (Splitting | null)[] = new Array<Splitting | null>(width + 1).fill(null);
  best[0] = { cut: 0, squares: 0, end: 0, before: null };
  for (let panel = 0; panel < count; panel++) {
    const seams = Number(panel > 0) + Number(panel < count - 1);
    const next = new Array<Splitting | null>(width + 1).fill(null);
    const ends = panel === count - 1 ? [width] : Array.from({ length: width - 1 }, (_, at) => at + 1);
    for (const end of ends) {
      let found: Splitting | null = null;
      let squares = Infinity;
      for (let start = Math.max(0, end - (needles - seams)); start < end; start++) {
        const before = best[start];
        if (!before || (found && before.cut > found.cut)) continue;
        const sum = before.squares + (end - start + seams) ** 2;
        if (found && before.cut === found.cut && sum >= squares) continue;
        [found, squares] = [before, sum];
      }
      const cut = end < width ? (cuts[end] as number) : 0;
      if (found) next[end] = { cut: found.cut + cut, squares, end, before: found };
    }
    best = next;
  }
  return panelsFrom(best[width] as Splitting, first);
}

interface Splitting {
  readonly cut: number;
  /** Of the panels' widths: the smaller for a sum, the more alike they are. */
  readonly squares: number;
  readonly end: number;
  readonly before: Splitting | null;
}

/** The outer panels have one seam stitch, those between them two. */
function fewestPanels(width: number, needles: number): number | null {
  if (width <= needles) return 1;
  const left = width - 2 * (needles - 1);
  if (left <= 0) return 2;
  return needles > 2 ? 2 + Math.ceil(left / (needles - 2)) : null;
}

/** How many copies a join before each stitch would go through, stitches counted from the left edge. */
function copiesCut(groups: readonly PlacedGroup[], first: number, width: number): Uint32Array {
  const cuts = new Uint32Array(width + 1);
  for (const { block, copy, across, up } of groups) {
    for (let column = 1; column < across * copy.width; column++) {
      const at = block.first - first + column;
      if (column % copy.width !== 0 && at > 0 && at < width) cuts[at] = (cuts[at] as number) + up;
    }
  }
  return cuts;
}

function panelsFrom(splitting: Splitting, first: number): Panels {
  const ends: number[] = [];
  for (let at: Splitting | null = splitting; at?.before; at = at.before) ends.unshift(at.end);
  const stitches = ends.map((end, panel) => {
    const seams = Number(panel > 0) + Number(panel < ends.length - 1);
    return end - (ends[panel - 1] ?? 0) + seams;
  });
  const joins = ends.slice(0, -1).map((end) => (first + end - 1) as Slot);
  return { stitches, joins, partedCopies: splitting.cut };
}
