/**
 * Sections up the piece, and centring a motif in one.
 *
 * A folded hem knits its hidden half first: rows 1 … ⌊n/2⌋ are the back, the
 * rest the front.
 */
import { problemError } from '../problem/index.ts';

export type SectionName = 'hem-back' | 'hem-front' | 'body';

/** Rows `first` … `last`, 1-based, both included. */
export interface Section {
  readonly name: SectionName;
  readonly first: number;
  readonly last: number;
  /** Its floats are covered: a folded hem hides the wrong side of both its halves. */
  readonly isLined: boolean;
}

/** The sections of a piece of `rows` rows with a hem of `hemRows` (0: none). Throws `hem-longer-than-piece`. */
export function sectionsOf(rows: number, hemRows: number, isLined: boolean): Section[] {
  if (hemRows > rows) throw problemError('hem-longer-than-piece', { hem: hemRows, rows });
  const sections: Section[] = [];
  const half = Math.floor(hemRows / 2);
  if (half > 0) sections.push({ name: 'hem-back', first: 1, last: half, isLined: true });
  if (hemRows > 0) sections.push({ name: 'hem-front', first: half + 1, last: hemRows, isLined: true });
  if (hemRows < rows) sections.push({ name: 'body', first: hemRows + 1, last: rows, isLined });
  return sections;
}

export function sectionAt(sections: readonly Section[], row: number): Section {
  const found = sections.find((section) => row >= section.first && row <= section.last);
  if (!found) throw new RangeError(`Row ${row} lies in no section`);
  return found;
}

/**
 * The first row of `height` rows centred in a section; what is left over by an
 * odd difference goes below or above. Throws `motif-taller-than-section`.
 */
export function centredFirstRow(section: Section, height: number, oddRow: 'below' | 'above'): number {
  const available = section.last - section.first + 1;
  const left = available - height;
  if (left < 0) {
    throw problemError('motif-taller-than-section', { rows: height, section: section.name, available });
  }
  const below = oddRow === 'below' ? Math.ceil(left / 2) : Math.floor(left / 2);
  return section.first + below;
}
