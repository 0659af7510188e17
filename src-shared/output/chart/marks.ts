/**
 * Marks that tell yarns apart where colour is not seen: in grey print, in bad
 * light, by eyes that see few colours. Each is a few thin strokes, so that it
 * takes little ink and leaves most of a cell to its yarn.
 */
import { contrastRatio } from '../../colour/index.ts';
import type { Point } from '../model.ts';
import { colourOf, type Tone } from '../tones.ts';

/** Strokes in a square from -0.5 to 0.5 each way, y downwards. */
export type YarnMark = readonly (readonly Point[])[];

/** The mark of each yarn that has one, by palette index. */
export type YarnMarks = ReadonlyMap<number, YarnMark>;

const FAR = 0.32;
const NEAR = 0.16;
const stroke = (...points: number[]): Point[] =>
  Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i] as number, points[2 * i + 1] as number]);

/** Those told apart best come first. None rises to the right: so are blank columns hatched. */
const MARKS: readonly YarnMark[] = [
  // A stroke that falls to the right; a plus; a dash; an upright.
  [stroke(-0.4, -0.4, 0.4, 0.4)],
  [stroke(-FAR, 0, FAR, 0), stroke(0, -FAR, 0, FAR)],
  [stroke(-FAR, 0, FAR, 0)],
  [stroke(0, -FAR, 0, FAR)],
  // A cross; a diamond; two dashes; two uprights.
  [stroke(-FAR, -FAR, FAR, FAR), stroke(-FAR, FAR, FAR, -FAR)],
  [stroke(0, -FAR, FAR, 0, 0, FAR, -FAR, 0, 0, -FAR)],
  [stroke(-FAR, -NEAR, FAR, -NEAR), stroke(-FAR, NEAR, FAR, NEAR)],
  [stroke(-NEAR, -FAR, -NEAR, FAR), stroke(NEAR, -FAR, NEAR, FAR)],
  // Triangles up and down; a square; a peak and a valley.
  [stroke(-FAR, FAR, 0, -FAR, FAR, FAR, -FAR, FAR)],
  [stroke(-FAR, -FAR, 0, FAR, FAR, -FAR, -FAR, -FAR)],
  [stroke(-0.28, -0.28, 0.28, -0.28, 0.28, 0.28, -0.28, 0.28, -0.28, -0.28)],
  [stroke(-FAR, NEAR, 0, -NEAR, FAR, NEAR)],
  [stroke(-FAR, -NEAR, 0, NEAR, FAR, -NEAR)],
  // An hourglass; a star.
  [stroke(-FAR, -FAR, FAR, -FAR, -FAR, FAR, FAR, FAR, -FAR, -FAR)],
  [
    stroke(-FAR, 0, FAR, 0),
    stroke(0, -FAR, 0, FAR),
    stroke(-0.24, -0.24, 0.24, 0.24),
    stroke(-0.24, 0.24, 0.24, -0.24),
  ],
];

/** Beyond the marks there are, corners tell those with the same one apart. */
const CORNERS: readonly Point[][] = [
  stroke(-0.46, -0.3, -0.46, -0.46, -0.3, -0.46),
  stroke(0.46, -0.3, 0.46, -0.46, 0.3, -0.46),
  stroke(0.46, 0.3, 0.46, 0.46, 0.3, 0.46),
  stroke(-0.46, 0.3, -0.46, 0.46, -0.3, 0.46),
];

/** A mark of its own for each of the yarns but the plain one, which has none; the first of the palette get those told apart best. */
export function marksFor(yarns: Iterable<number>, plain: number): YarnMarks {
  const marked = [...new Set(yarns)].filter((yarn) => yarn !== plain).sort((a, b) => a - b);
  return new Map(
    marked.map((yarn, index): [number, YarnMark] => {
      const mark = MARKS[index % MARKS.length] as YarnMark;
      return [yarn, [...mark, ...CORNERS.slice(0, Math.floor(index / MARKS.length))]];
    }),
  );
}

/** The strokes of a mark round (`x`, `y`), where a square of `size` is to hold it. */
export function markStrokes(mark: YarnMark, x: number, y: number, size: number): Point[][] {
  return mark.map((points) => points.map(([across, down]): Point => [x + across * size, y + down * size]));
}

/** Two yarns nearer in lightness than this are hard to tell apart without colour. */
export const TOLD_APART = 2;

/** The tone that shows best on all of some colours. */
export function toneOn(colours: readonly string[]): Tone {
  const worst = (tone: Tone): number => Math.min(...colours.map((colour) => contrastRatio(colourOf(tone), colour)));
  return (['ink', 'rule', 'paper'] as const).reduce((best, tone) => (worst(tone) > worst(best) ? tone : best));
}
