/** Which steps a lattice may have, of all that was seen over a picture, and what comes of following each. */
import type { Point } from './corners.ts';
import { grown, SPACING, type Anchor } from './lattice.ts';
import type { Seed } from './lattice-seed.ts';
import { spread } from './lattice-spread.ts';
import type { Photo } from './photo.ts';
import type { Picture } from './picture.ts';

/** A seed on one of the levels of a photo. */
export interface PlacedSeed {
  readonly seed: Seed;
  readonly level: number;
}

/** A lattice as far as it was seen, on a level of the photo that is `scale` times smaller. */
export interface Lattice {
  readonly picture: Picture;
  readonly scale: number;
  readonly anchors: readonly Anchor[];
  /** How much of the picture it makes clear. */
  readonly worth: number;
  /** How much windows all over the picture say of its steps. */
  readonly score: number;
}

/** Seeds of about the same steps, in pixels of the photo; the best first. */
export type Hypothesis = readonly PlacedSeed[];

/** Steps that differ by less than this share are the same, seen from aslant. */
const SAME_STEPS = 0.3;

/** Cells this wide on a level are followed best: their lines are seen, and not much else. */
const BEST_STEP = 11;

/** Crossings that a lattice has at least. */
const LEAST_ANCHORS = 6;

/** Seeds of one hypothesis that are tried. */
const MOST_TRIED = 5;

/** A crossing must be this clear to speak for its lattice. */
const SPEAKS_FROM = 0.35;

/** Pictures this large are looked over, though they are half as large on the next level: there cells of very fine charts are still five pixels wide. */
const MOST_SIDE = 3600;

/** A picture smaller than this, in pixels, holds no chart that can be read. */
export const LEAST_SIDE = 100;

/** Whether seeds are looked for in a level of a photo. */
export function isLookedOver({ width, height }: Picture): boolean {
  return Math.max(width, height) <= MOST_SIDE && Math.min(width, height) >= LEAST_SIDE;
}

/** The seeds by their steps, those that say most together first: what one window alone says may be chance. */
export function hypothesesOf(seeds: readonly PlacedSeed[]): Hypothesis[] {
  const groups: { readonly steps: readonly [Point, Point]; readonly seeds: PlacedSeed[] }[] = [];
  const sorted = [...seeds].sort((a, b) => b.seed.score - a.seed.score);
  for (const placed of sorted) {
    const steps = stepsOf(placed);
    const group = groups.find((other) => isSame(other.steps, steps));
    if (group) group.seeds.push(placed);
    else groups.push({ steps, seeds: [placed] });
  }
  groups.sort((a, b) => scoreOf(b.seeds) - scoreOf(a.seeds));
  return groups.map(({ seeds: same }) => [...same].sort((a, b) => fitness(b) - fitness(a)));
}

function scoreOf(seeds: readonly PlacedSeed[]): number {
  return seeds.reduce((sum, { seed }) => sum + seed.score, 0);
}

/** In pixels of the photo. */
function stepsOf({ seed, level }: PlacedSeed): readonly [Point, Point] {
  const scaled = ({ x, y }: Point): Point => ({ x: x * 2 ** level, y: y * 2 ** level });
  return [scaled(seed.across), scaled(seed.down)];
}

function isSame(one: readonly [Point, Point], other: readonly [Point, Point]): boolean {
  return one.every((step, i) => {
    const { x, y } = other[i] as Point;
    return Math.hypot(step.x - x, step.y - y) < SAME_STEPS * Math.hypot(x, y);
  });
}

/** A seed's score, less where its cells are small or large on its level. */
function fitness({ seed: { across, down, score } }: PlacedSeed): number {
  const step = Math.sqrt(Math.abs(across.x * down.y - across.y * down.x));
  return score / (1 + Math.log2(step / BEST_STEP) ** 2);
}

/**
 * The lattice of the first seed that leads to one, where the photo `isFree`; null if none does. `isCarriedOn`: over
 * what hides it, too.
 */
export function followed(
  photo: Photo,
  hypothesis: Hypothesis,
  isFree: (at: Point) => boolean = () => true,
  isCarriedOn = true,
  spacingOf: (seed: Seed) => number = () => SPACING,
): Lattice | null {
  for (const { seed, level } of hypothesis.slice(0, MOST_TRIED)) {
    const picture = photo.levels[level] as Picture;
    const scale = 2 ** level;
    const isFreeHere = ({ x, y }: Point): boolean => isFree({ x: x * scale, y: y * scale });
    const seen = grown(picture, seed, isFreeHere, spacingOf(seed));
    const anchors = isCarriedOn ? spread(picture, seen, isFreeHere) : seen;
    if (anchors.length < LEAST_ANCHORS) continue;
    // By the area that each speaks for: a lattice twice as fine has twice as many.
    const worth = anchors.reduce(
      (sum, { clarity, across, down }) =>
        sum + (clarity - SPEAKS_FROM) * Math.abs(across.x * down.y - across.y * down.x),
      0,
    );
    return { picture, scale, anchors, worth: worth * scale * scale, score: scoreOf(hypothesis) };
  }
  return null;
}
