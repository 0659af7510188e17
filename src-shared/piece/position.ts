/** Placing up and down: the first row of a motif on the piece. */
import { problemError } from '../problem/index.ts';
import type { Position, Region, SectionName } from './model.ts';
import { sectionCalled, type SectionSpan } from './sections.ts';

/** The rows of a region. Throws `section-missing`. */
export function rowsOf(region: Region, sections: readonly SectionSpan[]): Pick<SectionSpan, 'first' | 'last'> {
  if (region === 'piece') return { first: 1, last: sections.at(-1)?.last ?? 0 };
  return sectionCalled(sections, region);
}

/**
 * The first row of `height` rows at a position. Throws `section-missing`,
 * `motif-taller-than-section` or `motif-leaves-section`; rows that leave the
 * piece from a row on are the caller's to refuse.
 */
export function firstRowAt(position: Position, height: number, sections: readonly SectionSpan[]): number {
  switch (position.kind) {
    case 'from-row':
      return position.row;
    case 'above-hem':
      return sectionCalled(sections, 'hem-front').last + 1;
    case 'centred': {
      const region = position.section === 'shown' ? shownIn(sections) : position.section;
      const { first, left } = roomIn(region, height, sections);
      return first + (position.oddRow === 'below' ? Math.ceil(left / 2) : Math.floor(left / 2));
    }
    case 'from-edge': {
      const { edge, section, rows } = position;
      const { first, left } = roomIn(section, height, sections);
      if (rows > left) throw problemError('motif-leaves-section', { rows: height, section, plain: rows, left, edge });
      return edge === 'lower' ? first + rows : first + left - rows;
    }
  }
}

/**
 * The position that puts `height` rows on `firstRow`: as many rows from the
 * edge as that takes where they were placed from one and still fit, else from
 * that row on.
 */
export function movedTo(
  position: Position,
  firstRow: number,
  height: number,
  sections: readonly SectionSpan[],
): Position {
  if (position.kind === 'from-edge') {
    const { first, last } = rowsOf(position.section, sections);
    const rows = position.edge === 'lower' ? firstRow - first : last - (firstRow + height - 1);
    if (firstRow >= first && firstRow + height - 1 <= last) return { ...position, rows };
  }
  return { kind: 'from-row', row: firstRow };
}

/** Where a motif is put that nobody has said more about: where it will be seen first. */
function shownIn(sections: readonly SectionSpan[]): SectionName {
  return sections.some(({ name }) => name === 'hem-front') ? 'hem-front' : 'body';
}

/** The first row of a region, and how many of its rows `height` leaves. */
function roomIn(region: Region, height: number, sections: readonly SectionSpan[]): { first: number; left: number } {
  const { first, last } = rowsOf(region, sections);
  const available = last - first + 1;
  if (height > available) throw problemError('motif-taller-than-section', { rows: height, section: region, available });
  return { first, left: available - height };
}
