/**
 * Setting labels below a ruler so that none covers another.
 *
 * Each label hangs on a fine line from its needle. Labels are taken one by one;
 * each goes to the highest level, and there to the first of the sides it likes,
 * at which neither its text nor its line meets what hangs already. There is more
 * than one order to take them in, and the one that leaves the fewest out wins.
 */

export type LabelAnchor = 'start' | 'middle' | 'end';

export interface WantedLabel {
  readonly text: string;
  /** Where its line hangs, in mm. */
  readonly x: number;
  readonly widthMm: number;
  /** The lower, the sooner it is given a place. */
  readonly rank: number;
  /** Which side of the line the text may stand on, the best first. */
  readonly anchors: readonly LabelAnchor[];
}

export interface HungLabel<T extends WantedLabel> {
  readonly label: T;
  readonly anchor: LabelAnchor;
  /** 0 is right below the ruler. */
  readonly level: number;
}

/** Free between two texts, and between a text and a line. */
const BETWEEN_MM = 1;
const BESIDE_LINE_MM = 0.5;

export interface Staggered<T extends WantedLabel> {
  readonly hung: readonly HungLabel<T>[];
  /** Those for which there is no place. */
  readonly left: readonly T[];
}

/** A way to take labels one after the other. */
interface Way {
  readonly order: (a: WantedLabel, b: WantedLabel) => number;
  readonly anchors: (label: WantedLabel) => readonly LabelAnchor[];
}

const byRank: Way['order'] = (a, b) => a.rank - b.rank || a.x - b.x;

/** The nicest first. Centred texts leave room for lines between them; stairs hold any cluster of a few. */
const WAYS: readonly Way[] = [
  { order: byRank, anchors: (label) => label.anchors },
  { order: byRank, anchors: (label) => ['middle', ...label.anchors] },
  { order: (a, b) => a.x - b.x, anchors: () => ['end'] },
  { order: (a, b) => b.x - a.x, anchors: () => ['start'] },
];

/** Hangs as many labels as it can on at most `levels` levels, those of a low rank before all. */
export function stagger<T extends WantedLabel>(wanted: readonly T[], levels: number): Staggered<T> {
  let best: Staggered<T> | null = null;
  for (const way of WAYS) {
    const found = hang(wanted, levels, way);
    if (best === null || leftOut(found) < leftOut(best)) best = found;
    if (best.left.length === 0) break;
  }
  return best ?? { hung: [], left: [] };
}

/** How bad it is to leave out what is left; one of a low rank weighs more than all of a higher one. */
function leftOut({ hung, left }: Staggered<WantedLabel>): number {
  const all = hung.length + left.length + 1;
  return left.reduce((sum, { rank }) => sum + (rank === 0 ? all : 1), 0);
}

function hang<T extends WantedLabel>(wanted: readonly T[], levels: number, way: Way): Staggered<T> {
  const hung: HungLabel<T>[] = [];
  const left: T[] = [];
  for (const label of [...wanted].sort(way.order)) {
    const place = placeFor(label, way.anchors(label), hung, levels);
    if (place) hung.push(place);
    else left.push(label);
  }
  return { hung, left };
}

function placeFor<T extends WantedLabel>(
  label: T,
  anchors: readonly LabelAnchor[],
  hung: readonly HungLabel<T>[],
  levels: number,
): HungLabel<T> | null {
  for (let level = 0; level < levels; level++) {
    for (const anchor of anchors) {
      const candidate = { label, anchor, level };
      if (hung.every((other) => isClear(candidate, other))) return candidate;
    }
  }
  return null;
}

function isClear(a: HungLabel<WantedLabel>, b: HungLabel<WantedLabel>): boolean {
  const [aLeft, aRight] = extent(a);
  const [bLeft, bRight] = extent(b);
  if (a.level === b.level) return aRight + BETWEEN_MM <= bLeft || bRight + BETWEEN_MM <= aLeft;
  // The line of the lower label passes the level of the higher one.
  const [low, highLeft, highRight] = a.level > b.level ? [a, bLeft, bRight] : [b, aLeft, aRight];
  return low.label.x <= highLeft - BESIDE_LINE_MM || low.label.x >= highRight + BESIDE_LINE_MM;
}

/** From where to where a label's text reaches, in mm. */
export function extent({ label, anchor }: HungLabel<WantedLabel>): readonly [left: number, right: number] {
  if (anchor === 'start') return [label.x, label.x + label.widthMm];
  if (anchor === 'end') return [label.x - label.widthMm, label.x];
  return [label.x - label.widthMm / 2, label.x + label.widthMm / 2];
}
