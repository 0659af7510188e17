/**
 * A lattice carried on over what hides it: a part where lines are faint or
 * broken, strokes that are stronger, the rim of a shadow.
 *
 * Crossing by crossing a lattice ends there. Once enough of it is seen, it
 * says by itself, laid smoothly, where the next crossings are; so near to
 * where they are foretold, less of them need be seen.
 */
import type { Point } from './corners.ts';
import { keyOf, SPACING, type Anchor } from './lattice.ts';
import { modelOf, type LatticeModel } from './lattice-model.ts';
import { lookAtWindow } from './lattice-window.ts';
import type { Picture } from './picture.ts';

/** Fewer crossings than this foretell nothing. */
const LEAST_ANCHORS = 9;

/** Rounds in which it is carried on by one more crossing. */
const MOST_ROUNDS = 12;

/** A crossing is looked for up to so many spacings from one that is known. */
const REACH = 2;

/** What comes back less clearly, or lies further off in cells, is not its own. */
const LEAST_CLARITY = 0.36;
const MOST_OFF = 0.1;

/** The crossings with those that the lattice foretells and that are seen there. */
export function spread(
  picture: Picture,
  anchors: readonly Anchor[],
  isFree: (at: Point) => boolean = () => true,
): readonly Anchor[] {
  if (anchors.length < LEAST_ANCHORS) return anchors;
  let known = new Map(anchors.map((anchor) => [keyOf(anchor.column, anchor.row), anchor]));
  const missed = new Set<number>();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const model = modelOf([...known.values()]);
    const next: Anchor[] = [];
    for (const { column, row } of known.values()) {
      for (let dr = -REACH; dr <= REACH; dr++) {
        for (let dc = -REACH; dc <= REACH; dc++) {
          const [c, r] = [column + dc * SPACING, row + dr * SPACING];
          const key = keyOf(c, r);
          if (known.has(key) || missed.has(key)) continue;
          missed.add(key);
          const anchor = anchorOn(picture, model, c, r);
          if (anchor !== null && isFree(anchor.at)) next.push(anchor);
        }
      }
    }
    if (next.length === 0) break;
    known = new Map([...known, ...next.map((anchor) => [keyOf(anchor.column, anchor.row), anchor] as const)]);
  }
  return [...known.values()];
}

function anchorOn(picture: Picture, model: LatticeModel, column: number, row: number): Anchor | null {
  const at = model.at(column, row);
  if (!(at.x >= 0 && at.y >= 0 && at.x <= picture.width && at.y <= picture.height)) return null;
  const [left, right] = [model.at(column - 0.5, row), model.at(column + 0.5, row)];
  const [upper, lower] = [model.at(column, row - 0.5), model.at(column, row + 0.5)];
  const across = { x: right.x - left.x, y: right.y - left.y };
  const down = { x: lower.x - upper.x, y: lower.y - upper.y };
  const seen = lookAtWindow(picture, at, across, down);
  if (seen.clarity < LEAST_CLARITY || Math.abs(seen.across) > MOST_OFF || Math.abs(seen.down) > MOST_OFF) return null;
  return {
    column,
    row,
    at: {
      x: at.x + seen.across * across.x + seen.down * down.x,
      y: at.y + seen.across * across.y + seen.down * down.y,
    },
    across,
    down,
    clarity: seen.clarity,
  };
}
