/**
 * Counts that were given as lengths.
 *
 * A person says "45 cm wide" before the gauge is known, or another swatch comes
 * out differently: what was said is the length. So it is kept beside its count,
 * which is the nearest to it and follows the gauge, and the rows that change
 * where gauges lie. A count that was given as a count stays.
 *
 * A length holds as long as its count is the nearest to it. Whatever gives the
 * count another value without a word of the length ends it.
 */
import { MOST_STITCHES } from '../bed/index.ts';
import { outcome } from '../problem/index.ts';
import { countsOf } from './counts.ts';
import { gaugesOf } from './gauges.ts';
import { MOST_SEAM_STITCHES, type Piece, type Section, type Sectioned } from './model.ts';
import { isDistant, rowsOf } from './position.ts';
import type { Distant, Place } from './position-model.ts';
import { MOST_PIECE_ROWS, type Lengths, type Shape } from './shape-model.ts';
import { evenScale, scaleDown, scaleUp, stitchScale, type Scale } from './scales.ts';
import { sectionsOf } from './sections.ts';

/** What of a piece is given as counts or as lengths, and what these depend on. */
export type Measured = Pick<Piece, 'shape' | 'hemRows' | 'lengths' | 'hem' | 'sections' | 'gauge' | 'seamAllowance'>;

/** The bounds of a count, and how long it is. */
export interface Bounds {
  readonly scale: Scale;
  readonly least: number;
  readonly most: number;
}

/** The count within its bounds that comes nearest to `mm`: 0 for no length, where there may be none. */
export function countFor(mm: number, { scale, least, most }: Bounds): number {
  return Math.min(most, Math.max(least, mm === 0 ? 0 : scale.nearest(mm)));
}

/** The length, if the count is the nearest to it. */
export function heldLength(mm: number | undefined, count: number, bounds: Bounds): number | null {
  return mm !== undefined && countFor(mm, bounds) === count ? mm : null;
}

/** With a length for one more count, or without one (null); undefined where none is left. */
export function withLength(lengths: Lengths | undefined, of: keyof Lengths, mm: number | null): Lengths | undefined {
  const { [of]: _, ...rest } = lengths ?? {};
  if (mm !== null) return { ...rest, [of]: mm };
  return Object.keys(rest).length > 0 ? rest : undefined;
}

/** Those of the counts that a shape has, and of the hem; undefined where there are none. */
export function lengthsIn(shape: Shape, lengths: Lengths | undefined): Lengths | undefined {
  const fields = new Set<string>(['hemRows', ...countsOf(shape).map(({ field }) => field)]);
  const kept = Object.entries(lengths ?? {}).filter(([of]) => fields.has(of));
  return kept.length > 0 ? Object.fromEntries(kept) : undefined;
}

/**
 * The piece `after` a change of `before`, its lengths kept: a length that came
 * gives its count, one that held gives it anew, one that held no more goes.
 */
export function fitted<P extends Measured>(before: Measured, after: P): P {
  const was = new Map(givenIn(before).map((given) => [given.key, given]));
  // Each count is asked for anew: it may lie on rows that the one before it moved.
  return givenIn(after).reduce<P>((piece, { key }) => {
    const now = givenIn(piece).find((given) => given.key === key);
    if (now?.mm === undefined) return piece;
    const earlier = was.get(key);
    const isNew = earlier?.mm !== now.mm;
    const holds = isNew || (earlier.count === now.count && heldLength(earlier.mm, earlier.count, earlier) !== null);
    if (!holds) return { ...piece, ...now.to(now.count, null) };
    const count = countFor(now.mm, now);
    // A count that stands for another in its field (no straight rows for one) is said when it is given.
    return count === now.count && !isNew ? piece : { ...piece, ...now.to(count, now.mm) };
  }, after);
}

/** Of what lengths are: the counts of the shape, or how high hem and sections are. */
export type LengthsOf = 'shape' | 'sections';

/** The lengths that counts of a size hold to, each under a key that names its count in any size of the piece. */
export function heldLengths(piece: Measured, of: LengthsOf): Map<string, number> {
  return new Map(
    givenIn(piece).flatMap((given): [string, number][] => {
      const mm = given.of === of ? heldLength(given.mm, given.count, given) : null;
      return mm === null ? [] : [[given.key, mm]];
    }),
  );
}

/** The piece with these lengths ({@link heldLengths}) beside its counts, which stay as they are. */
export function withLengthsGiven<P extends Measured>(piece: P, lengths: ReadonlyMap<string, number>): P {
  return [...lengths].reduce<P>((made, [key, mm]) => {
    const given = givenIn(made).find((one) => one.key === key);
    return given ? { ...made, ...given.to(given.count, mm) } : made;
  }, piece);
}

/** The bounds of the rows that keep a pattern from an edge of the piece, or from the hem. */
export function distanceBounds(piece: Measured & Sectioned, place: Distant): Bounds {
  const gauges = gaugesOf(piece);
  const section = place.kind === 'above-hem' ? 'hem-front' : place.section;
  const rows = outcome(() => rowsOf(section, sectionsOf(piece.shape.rows, piece)));
  const scale = !rows.ok
    ? evenScale(piece.gauge, 'rows')
    : place.kind === 'above-hem'
      ? scaleUp(gauges, rows.value.last + 1)
      : place.edge === 'lower'
        ? scaleUp(gauges, rows.value.first)
        : scaleDown(gauges, rows.value.last);
  return { scale, least: 0, most: MOST_PIECE_ROWS };
}

/**
 * A place on the piece `after` a change, at the length from an edge or from the
 * hem that it was given; `to` is what becomes of it, if that changes too.
 */
export function fittedPlace<P extends Place>(
  before: Measured & Sectioned,
  after: Measured & Sectioned,
  place: Place,
  to: P,
): P {
  if (!isDistant(place) || !isDistant(to) || to.lengthMm === undefined) return to;
  const isNew = to.lengthMm !== place.lengthMm;
  const holds = isNew || heldLength(place.lengthMm, place.rows, distanceBounds(before, place)) !== null;
  return holds ? { ...to, rows: countFor(to.lengthMm, distanceBounds(after, to)) } : keptAway(to, to.rows, null);
}

/**
 * A place as it is on a piece in one size. The length that it is given as is
 * one for all sizes; the rows that come nearest to it are those of the size
 * that they were given in, and may be others where hem or sections are.
 * `sizes`: the piece in all sizes, in one of which the rows must be the nearest,
 * or the length says nothing.
 */
export function placeInSize<P extends Place>(
  place: P,
  piece: Measured & Sectioned,
  sizes: () => readonly (Measured & Sectioned)[],
): P {
  if (!isDistant(place) || place.lengthMm === undefined) return place;
  const { lengthMm } = place;
  const rowsOn = (size: Measured & Sectioned): number => countFor(lengthMm, distanceBounds(size, place));
  const rows = rowsOn(piece);
  if (rows === place.rows || !sizes().some((size) => rowsOn(size) === place.rows)) return place;
  return { ...place, rows };
}

/** A place so many rows from what it keeps away from, given as a length or (null) as a count. */
export function keptAway<P extends Distant>({ lengthMm: _, ...place }: P, rows: number, mm: number | null): P {
  return { ...place, rows, ...(mm !== null && { lengthMm: mm }) } as unknown as P;
}

/** A count of a piece, and the length it was given as. */
interface Given extends Bounds {
  readonly key: string;
  readonly of: LengthsOf | 'seam';
  readonly count: number;
  readonly mm: number | undefined;
  readonly to: (count: number, mm: number | null) => Partial<Measured>;
}

/** The order in which the counts of shapes depend on each other. */
const ORDER: readonly (keyof Lengths)[] = [
  'stitches',
  'rows',
  'rowsToWaist',
  'stitchesAtWaist',
  'rowsToChest',
  'stitchesAtChest',
  'straightRows',
  'stitchesAtTop',
];

/** From those that others depend on to the last. */
function givenIn(piece: Measured): Given[] {
  const { shape, hemRows, lengths, hem, sections, gauge, seamAllowance } = piece;
  const gauges = gaugesOf(piece);
  const setLength = (of: keyof Lengths, mm: number | null): Partial<Measured> => ({
    lengths: withLength(lengths, of, mm),
  });
  const ofHem: Given = {
    key: 'hem',
    of: 'sections',
    count: hemRows,
    mm: lengths?.hemRows,
    scale: evenScale(hem.gauge ?? gauge, 'rows'),
    least: 0,
    most: MOST_PIECE_ROWS,
    to: (count, mm) => ({ hemRows: count, ...setLength('hemRows', mm) }),
  };
  const ofSections = sections.map((section, index): Given => ({
    key: `section ${section.name}`,
    of: 'sections',
    count: section.rows,
    mm: section.lengthMm,
    scale: evenScale(section.gauge ?? gauge, 'rows'),
    least: 1,
    most: MOST_PIECE_ROWS,
    to: (count, mm) => ({ sections: sections.with(index, sectionTaking(section, count, mm)) }),
  }));
  const ofSeam = (['left', 'right'] as const).map((side): Given => ({
    key: `seam ${side}`,
    of: 'seam',
    count: seamAllowance[side],
    mm: seamAllowance[`${side}Mm`],
    scale: stitchScale(gauges, 1),
    least: 0,
    most: MOST_SEAM_STITCHES,
    to: (count, mm) => ({ seamAllowance: seamTaking(seamAllowance, side, count, mm) }),
  }));
  const ofShape = countsOf(shape).map(({ field, of, value, least, changed, scaleOf }): Given => ({
    key: field,
    of: 'shape',
    count: value,
    mm: lengths?.[field],
    scale: scaleOf(gauges),
    least,
    most: of === 'rows' ? MOST_PIECE_ROWS : MOST_STITCHES,
    to: (count, mm) => ({ shape: changed(count), ...setLength(field, mm) }),
  }));
  const place = (key: string): number => ORDER.indexOf(key as keyof Lengths);
  return [ofHem, ...ofSections, ...ofSeam, ...ofShape.toSorted((one, other) => place(one.key) - place(other.key))];
}

/** The section with other rows, given as a length or (null) as a count. */
export function sectionTaking({ lengthMm: _, ...section }: Section, rows: number, mm: number | null): Section {
  return { ...section, rows, ...(mm !== null && { lengthMm: mm }) };
}

/** A seam allowance that takes other stitches at one edge, given as a length or (null) as a count. */
export function seamTaking(
  allowance: Piece['seamAllowance'],
  side: 'left' | 'right',
  stitches: number,
  mm: number | null,
): Piece['seamAllowance'] {
  const { [`${side}Mm` as const]: _, ...rest } = allowance;
  return { ...rest, [side]: stitches, ...(mm !== null && { [`${side}Mm`]: mm }) };
}
