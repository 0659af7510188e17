/** Placing up and down: the rows of a pattern on the piece. */
import { problemError } from '../problem/index.ts';
import type { Distant, End, Extent, Place, Position, Region, SectionName, Start } from './position-model.ts';
import { isSameSection, sectionCalled, type SectionSpan } from './sections.ts';

/** Rows `first` … `last`, 1-based, both included. */
export type RowSpan = Pick<SectionSpan, 'first' | 'last'>;

/** The rows of a region. Throws `section-missing`. */
export function rowsOf(region: Region, sections: readonly SectionSpan[]): RowSpan {
  if (region === 'piece') return { first: 1, last: sections.at(-1)?.last ?? 0 };
  return sectionCalled(sections, region);
}

/**
 * The first row of `height` rows at a position. Throws `section-missing`,
 * `motif-taller-than-section` or `motif-leaves-section`; rows that leave the
 * piece from a row on are the caller's to refuse.
 */
export function firstRowAt(position: Position, height: number, sections: readonly SectionSpan[]): number {
  return lowestRowAt(position, height, sections, {
    taller: (facts) => problemError('motif-taller-than-section', facts),
    leaves: (facts) => problemError('motif-leaves-section', { rows: height, ...facts }),
  });
}

/**
 * The rows of an all-over. Where the sections of a size lie otherwise the first
 * may come out above the last, and that as rows that leave the piece is the
 * caller's to refuse. Throws `section-missing`, `all-over-taller-than-section`
 * or `all-over-leaves-section`.
 */
export function rowsOfExtent(extent: Extent, sections: readonly SectionSpan[]): RowSpan {
  const rowOf = (position: Position, height: number): number => lowestRowAt(position, height, sections, ALL_OVER);
  if (extent.kind === 'so-high') {
    const first = rowOf(extent.at, extent.height);
    return { first, last: first + extent.height - 1 };
  }
  const { from, to } = extent;
  return { first: rowOf(from, 1), last: to.kind === 'to-row' ? to.row : rowOf(to, 1) };
}

/** What to throw for rows that do not fit where they are to stand. */
interface Refusals {
  readonly taller: (facts: { rows: number; section: Region; available: number }) => Error;
  readonly leaves: (facts: { section: Region; plain: number; left: number; edge: 'lower' | 'upper' }) => Error;
}

const ALL_OVER: Refusals = {
  taller: (facts) => problemError('all-over-taller-than-section', facts),
  leaves: (facts) => problemError('all-over-leaves-section', facts),
};

function lowestRowAt(position: Position, height: number, sections: readonly SectionSpan[], refuse: Refusals): number {
  switch (position.kind) {
    case 'from-row':
      return position.row;
    case 'above-hem':
      return sectionCalled(sections, 'hem-front').last + 1 + position.rows;
    case 'centred': {
      const region = position.section === 'shown' ? shownIn(sections) : position.section;
      const { first, left } = roomIn(region, height, sections, refuse);
      return first + (position.oddRow === 'below' ? Math.ceil(left / 2) : Math.floor(left / 2));
    }
    case 'from-edge': {
      const { edge, section, rows } = position;
      const { first, left } = roomIn(section, height, sections, refuse);
      if (rows > left) throw refuse.leaves({ section, plain: rows, left, edge });
      return edge === 'lower' ? first + rows : first + left - rows;
    }
  }
}

/**
 * The position that puts `height` rows on `firstRow`: as many rows from the
 * edge or above the hem as that takes where they were placed so and still fit,
 * else from that row on.
 */
export function movedTo(
  position: Position,
  firstRow: number,
  height: number,
  sections: readonly SectionSpan[],
): Position {
  if (position.kind === 'above-hem') {
    const hem = sections.find(({ name }) => name === 'hem-front');
    if (hem && firstRow > hem.last) return { ...position, rows: firstRow - hem.last - 1 };
  }
  if (position.kind === 'from-edge') {
    const { first, last } = rowsOf(position.section, sections);
    const rows = position.edge === 'lower' ? firstRow - first : last - (firstRow + height - 1);
    if (firstRow >= first && firstRow + height - 1 <= last) return { ...position, rows };
  }
  return { kind: 'from-row', row: firstRow };
}

/** True if the place is said by the section of that name. */
export function standsIn(place: Place, section: SectionName): boolean {
  if (place.kind !== 'centred' && place.kind !== 'from-edge') return false;
  const { section: region } = place;
  return region !== 'piece' && region !== 'shown' && isSameSection(region, section);
}

/** The extent with each of its places changed into one of the same kind. */
export function withPlaces(extent: Extent, change: <P extends Place>(place: P) => P): Extent {
  if (extent.kind === 'so-high') return { ...extent, at: change(extent.at) };
  return { ...extent, from: change(extent.from), to: change(extent.to) };
}

/** The extent that says those of its places by rows of the row counter that were said by a section, the rows being these. */
export function withoutSection(extent: Extent, section: SectionName, { first, last }: RowSpan): Extent {
  const fromRow = { kind: 'from-row', row: first } as const;
  if (extent.kind === 'so-high') return standsIn(extent.at, section) ? { ...extent, at: fromRow } : extent;
  const from: Start = standsIn(extent.from, section) ? fromRow : extent.from;
  const to: End = standsIn(extent.to, section) ? { kind: 'to-row', row: last } : extent.to;
  return { ...extent, from, to };
}

/** Up to the last row of the piece, however long it is. */
export const TO_THE_TOP: End = { kind: 'from-edge', edge: 'upper', section: 'piece', rows: 0 };

/** True for a place so many plain rows away from something. */
export function isDistant(place: Place): place is Distant {
  return place.kind === 'from-edge' || place.kind === 'above-hem';
}

/** Where a motif is put that nobody has said more about: where it will be seen first. */
function shownIn(sections: readonly SectionSpan[]): SectionName {
  return sections.some(({ name }) => name === 'hem-front') ? 'hem-front' : 'body';
}

/** The first row of a region, and how many of its rows `height` leaves. */
function roomIn(
  region: Region,
  height: number,
  sections: readonly SectionSpan[],
  { taller }: Refusals,
): { first: number; left: number } {
  const { first, last } = rowsOf(region, sections);
  const available = last - first + 1;
  if (height > available) throw taller({ rows: height, section: region, available });
  return { first, left: available - height };
}
