/**
 * Setting labels below a ruler so that none covers another.
 *
 * Each label hangs on a fine line from its needle. Labels are taken by rank and
 * from left to right; each goes to the highest level, and there to the first of
 * the sides it likes, at which neither its text nor its line meets what hangs
 * already. Where that leaves some out, all are tried again centred on their
 * lines, which leaves room for other lines to pass between them.
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

/** Hangs as many labels as it can on at most `levels` levels. */
export function stagger<T extends WantedLabel>(wanted: readonly T[], levels: number): Staggered<T> {
  const asLiked = hang(wanted, levels, (label) => label.anchors);
  if (asLiked.left.length === 0) return asLiked;
  const centred = hang(wanted, levels, (label) => ['middle', ...label.anchors]);
  return centred.left.length < asLiked.left.length ? centred : asLiked;
}

function hang<T extends WantedLabel>(
  wanted: readonly T[],
  levels: number,
  anchorsOf: (label: T) => readonly LabelAnchor[],
): Staggered<T> {
  const hung: HungLabel<T>[] = [];
  const left: T[] = [];
  for (const label of [...wanted].sort((a, b) => a.rank - b.rank || a.x - b.x)) {
    const place = placeFor(label, anchorsOf(label), hung, levels);
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
