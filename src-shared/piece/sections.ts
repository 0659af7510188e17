/**
 * Sections up the piece: the folded hem, the sections that a knitter names, and
 * the body, which is the rest.
 *
 * A folded hem knits its hidden half, the facing, first. A turning row, knitted
 * looser or in eyelets so that the fold lies flat, is the last row of it: 11
 * rows are 5, the turning row, and 5 (common practice, no source). What cannot
 * be halved goes to the outside, so that the facing never shows below it.
 */
import { problemError } from '../problem/index.ts';
import type { Gauge, Hem, Sectioned } from './model.ts';
import type { SectionName } from './position-model.ts';

/** Rows `first` … `last`, 1-based, both included. */
export interface SectionSpan {
  readonly name: SectionName;
  readonly first: number;
  readonly last: number;
  /** Its floats are covered: a folded hem hides the wrong side of both its halves. */
  readonly isLined: boolean;
  readonly gauge: Gauge;
}

/**
 * The sections of a piece of `rows` rows, from the bottom up; those without
 * rows are left out. Throws `hem-longer-than-piece` or `sections-longer-than-piece`.
 */
export function sectionsOf(rows: number, piece: Sectioned): SectionSpan[] {
  const { hemRows, hem, sections: called, isLined } = piece;
  if (hemRows > rows) throw problemError('hem-longer-than-piece', { hem: hemRows, rows });
  const sections: SectionSpan[] = [];
  let below = 0;
  const add = (name: SectionName, height: number, isCovered: boolean, gauge: Gauge | null): void => {
    if (height === 0) return;
    const [first, last] = [below + 1, below + height];
    sections.push({ name, first, last, isLined: isCovered, gauge: gauge ?? piece.gauge });
    below = last;
  };
  const half = facingRows(piece);
  add('hem-back', half, true, hem.gauge);
  add('hem-front', hemRows - half, true, hem.gauge);
  for (const section of called) {
    if (below + section.rows > rows) throw tooLong(rows, piece);
    add({ named: section.name }, section.rows, isLined || section.isLined, section.gauge);
  }
  add('body', rows - below, isLined, null);
  return sections;
}

/** Rows of the hidden half of a folded hem, its turning row among them; 0 where nothing folds, as a single row does not. */
export function facingRows({
  hemRows,
  hem,
}: Pick<Sectioned, 'hemRows'> & { readonly hem: Pick<Hem, 'turning'> }): number {
  if (hemRows < 2) return 0;
  return hem.turning === 'none' ? Math.floor(hemRows / 2) : Math.ceil(hemRows / 2);
}

function tooLong(rows: number, { hemRows, sections }: Sectioned) {
  return problemError('sections-longer-than-piece', {
    hem: hemRows,
    parts: sections.map(({ name, rows: own }) => ({ name, rows: own })),
    rows,
  });
}

export function sectionAt(sections: readonly SectionSpan[], row: number): SectionSpan {
  const found = sections.find((section) => row >= section.first && row <= section.last);
  if (!found) throw new RangeError(`Row ${row} lies in no section`);
  return found;
}

/** True if the two name one section. */
export function isSameSection(one: SectionName, other: SectionName): boolean {
  if (typeof one === 'string' || typeof other === 'string') return one === other;
  return one.named === other.named;
}

/** The section called so. Throws `section-missing`; sections without rows are missing too. */
export function sectionCalled(sections: readonly SectionSpan[], name: SectionName): SectionSpan {
  const found = sections.find((section) => isSameSection(section.name, name));
  if (!found) throw problemError('section-missing', { section: name });
  return found;
}
