/**
 * Sections that come, go, change and change places.
 *
 * Patterns name the sections they stand in, so a name and what it names change
 * in one step, and they never point at a section that was taken away: they stay
 * on the rows where they stood.
 */
import { MOST_SECTIONS, sectionTaking, standsIn, withoutSection, type RowSpan, type Section } from '../piece/index.ts';
import { changeOf, type Change, type ChangeName } from './change.ts';
import { repositioned, type Pattern } from '../pattern/index.ts';
import { setPatterns, setPiece } from './edit-makers.ts';
import type { Edit } from './edit.ts';
import { pieceEdits } from './piece-changes.ts';
import type { ProjectAt } from './project-at.ts';

/** Rows of a new section, where the body can spare them. */
const FIRST_ROWS = 20;

export function canAddSection({ piece }: ProjectAt): boolean {
  return piece.sections.length < MOST_SECTIONS;
}

/** A section more, above the others, called as nobody else is: `called(1)`, `called(2)`, … */
export function addSection(project: ProjectAt, called: (number: number) => string): { change: Change; added: Section } {
  const { sections, hemRows, shape } = project.piece;
  let number = sections.length + 1;
  while (isTaken(sections, called(number))) number++;
  const left = shape.rows - hemRows - sections.reduce((sum, { rows }) => sum + rows, 0);
  const rows = Math.max(1, Math.min(FIRST_ROWS, left));
  const added = { name: called(number), rows, isLined: false, gauge: null, tension: '' };
  return { change: changed(project, 'add-section', [...sections, added]), added };
}

/** `rows`: those on which the patterns stand; null for one that is nowhere. */
export function removeSection(project: ProjectAt, index: number, rows: readonly (RowSpan | null)[]): Change {
  const { sections } = project.piece;
  const section = { named: sectionOf(project, index).name };
  const patterns = project.patterns.map((pattern, at): Pattern => {
    const span = rows[at];
    if (!span) return pattern;
    if (pattern.kind === 'all-over') return { ...pattern, position: withoutSection(pattern.position, section, span) };
    return standsIn(pattern.position, section)
      ? { ...pattern, position: { kind: 'from-row', row: span.first } }
      : pattern;
  });
  return changed(
    project,
    'remove-section',
    sections.filter((_, at) => at !== index),
    patterns,
  );
}

/** The section and the one above it (or, with -1, below it) change places. */
export function moveSection(project: ProjectAt, index: number, by: 1 | -1): Change {
  const sections = [...project.piece.sections];
  const section = sectionOf(project, index);
  sections.splice(index, 1);
  sections.splice(index + by, 0, section);
  return changed(project, 'move-section', sections);
}

/** Patterns that stand in the section go on doing so. */
export function renameSection(project: ProjectAt, index: number, name: string): Change {
  const before = { named: sectionOf(project, index).name };
  const patterns = project.patterns.map((pattern) =>
    repositioned(pattern, (place) => (standsIn(place, before) ? { ...place, section: { named: name } } : place)),
  );
  return changed(project, 'rename-section', withSection(project, index, { name }), patterns);
}

export function changeSection(project: ProjectAt, name: ChangeName, index: number, to: Partial<Section>): Change {
  return changed(project, name, withSection(project, index, to));
}

/** The section with other rows, given as a length (mm) or, with null, as a count. */
export function changeSectionRows(project: ProjectAt, index: number, rows: number, mm: number | null): Change {
  const { sections } = project.piece;
  return changed(project, 'section-rows', sections.with(index, sectionTaking(sectionOf(project, index), rows, mm)));
}

/** True if one of the sections is called so already. */
export function isTaken(sections: readonly Section[], name: string): boolean {
  return sections.some((section) => section.name === name);
}

function changed(
  project: ProjectAt,
  name: ChangeName,
  sections: readonly Section[],
  patterns = project.patterns,
): Change {
  const edits = [...pieceEdits(project, { sections }), ...setPatterns(project, patterns)];
  const [first, ...others] = edits.length > 0 ? edits : setPiece(project, { sections });
  return changeOf(name, first as Edit, ...others);
}

function withSection(project: ProjectAt, index: number, to: Partial<Section>): Section[] {
  sectionOf(project, index);
  return project.piece.sections.map((section, at) => (at === index ? { ...section, ...to } : section));
}

function sectionOf({ piece }: ProjectAt, index: number): Section {
  const section = piece.sections[index];
  if (!section) throw new RangeError(`There is no section ${index}`);
  return section;
}
