/** Whether light falls inside cells as the edge of a shadow says. */
import { nthOf } from './nth.ts';
import { cost, shadeOf, type Edge, type Field } from './shadow-edge.ts';

/** By how much the logarithm of light rises inside each cell, to the right and upwards: two numbers a cell, for a cell's width. */
export type Slopes = Float64Array;

/** Slopes are those between places so far to either side of a cell's middle, in cells. */
const SLOPE_REACH = 0.14;

/** Slopes are fitted to about so much (a logarithm). */
const SLOPE_SCALE = 0.08;

/** Cells on the edge are those in which light falls by this much; in them it must fall by such a share of what the edge says, and so clearly. */
const ON_EDGE = 0.02;
const LEAST_SHARE = 0.4;
const LEAST_CLARITY = 0.02;

/** So many slopes at least must be explained by it in all: a few ragged cells along a figure's border fall in its way by chance. */
const LEAST_EXPLAINED = 2.5;

/**
 * Over a soft edge, of such a width in cells, no single cell falls clearly, and a
 * coarse JPEG flattens what falls in each of its blocks. Many that fall in its
 * way tell it all the same: by this share, and so many times what chance gives.
 * Of figures in photographs it was three times at most, of shadows six times and more.
 */
const SOFT = 0.8;
const LEAST_SHARE_OF_MANY = 0.3;
const LEAST_TIMES_CHANCE = 8;

/** Signs and lines make light fall by far more than a soft shadow does: what strays by so many times the middle is not asked. */
const STRAYED_TIMES = 4.5;

interface Fall {
  readonly said: number;
  readonly seen: number;
}

/** Whether light falls inside the cells on the edge about as it says: in those along a figure's border it does not. */
export function fallsInside(edge: Edge, slopes: Slopes, field: Field): boolean {
  const falls = fallsOn(edge, slopes, field);
  let [best, gainThere] = [0, 0];
  for (let share = 0; share <= 2; share += 0.1) {
    const gain = falls.reduce(
      (sum, { said, seen }) => sum + cost(seen, SLOPE_SCALE) - cost(seen - share * said, SLOPE_SCALE),
      0,
    );
    if (gain > gainThere) [best, gainThere] = [share, gain];
  }
  const isClear = best >= LEAST_SHARE && gainThere >= Math.max(LEAST_EXPLAINED, LEAST_CLARITY * falls.length);
  return isClear || (edge.width >= SOFT && gainThere >= LEAST_EXPLAINED && doManyFall(falls, best));
}

/**
 * Whether those that fall about by such a `share` of what is said fall together by far more
 * than by chance (the slope of their regression, against its own standard error).
 */
function doManyFall(falls: readonly Fall[], share: number): boolean {
  const strays = falls.map(({ said, seen }) => Math.abs(seen - share * said));
  const most = STRAYED_TIMES * (nthOf([...strays], strays.length >> 1) as number);
  const asked = falls.filter((_, i) => (strays[i] as number) <= most);
  const products = asked.reduce((sum, { said, seen }) => sum + said * seen, 0);
  const squares = asked.reduce((sum, { said }) => sum + said ** 2, 0);
  const slope = products / squares;
  const strayed = asked.reduce((sum, { said, seen }) => sum + (seen - slope * said) ** 2, 0) / asked.length;
  return slope >= LEAST_SHARE_OF_MANY && slope * Math.sqrt(squares / strayed) >= LEAST_TIMES_CHANCE;
}

function fallsOn(edge: Edge, slopes: Slopes, field: Field): Fall[] {
  const [left, right] = [shadeOf(edge, field, -SLOPE_REACH), shadeOf(edge, field, SLOPE_REACH)];
  const [below, above] = [shadeOf(edge, field, 0, -SLOPE_REACH), shadeOf(edge, field, 0, SLOPE_REACH)];
  const falls: Fall[] = [];
  left.forEach((_, cell) => {
    const along = ((right[cell] as number) - (left[cell] as number)) / (2 * SLOPE_REACH);
    const up = ((above[cell] as number) - (below[cell] as number)) / (2 * SLOPE_REACH);
    if (Math.hypot(along, up) < ON_EDGE) return;
    falls.push({ said: along, seen: slopes[cell * 2] as number });
    falls.push({ said: up, seen: slopes[cell * 2 + 1] as number });
  });
  return falls;
}
