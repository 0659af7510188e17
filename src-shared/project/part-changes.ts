/**
 * Sections that come, go, change and change places.
 *
 * Bands name the sections they stand in, so a name and what it names change in
 * one step, and bands never point at a section that was taken away: they stay
 * on the rows where they stood.
 */
import { isSameSection, MOST_PARTS, type Part, type Position, type SectionName } from '../piece/index.ts';
import type { Change, ChangeName } from './change.ts';
import type { Band, Project } from './project.ts';

/** Rows of a new section, where the body can spare them. */
const FIRST_ROWS = 20;

type PartsChange = Extract<Change, { kind: 'parts' }>;

export function canAddPart({ piece }: Project): boolean {
  return piece.parts.length < MOST_PARTS;
}

/** A section more, above the others, called as nobody else is: `called(1)`, `called(2)`, … */
export function addPart(project: Project, called: (number: number) => string): PartsChange {
  const { parts, hemRows, shape } = project.piece;
  let number = parts.length + 1;
  while (isTaken(parts, called(number))) number++;
  const left = shape.rows - hemRows - parts.reduce((sum, { rows }) => sum + rows, 0);
  const rows = Math.max(1, Math.min(FIRST_ROWS, left));
  return changed(project, 'add-section', [...parts, { name: called(number), rows, isLined: false, gauge: null }]);
}

/** `firstRows`: the rows on which the bands stand; null for one that is nowhere. */
export function removePart(project: Project, index: number, firstRows: readonly (number | null)[]): PartsChange {
  const { parts } = project.piece;
  const { name } = partAt(project, index);
  return {
    ...changed(
      project,
      'remove-section',
      parts.filter((_, at) => at !== index),
    ),
    bands: project.bands.map((band, at): Band => {
      const row = firstRows[at] ?? null;
      if (!standsIn(band.position, { part: name }) || row === null) return band;
      return { ...band, position: { kind: 'from-row', row } };
    }),
  };
}

/** The section and the one above it (or, with -1, below it) change places. */
export function movePart(project: Project, index: number, by: 1 | -1): PartsChange {
  const parts = [...project.piece.parts];
  const part = partAt(project, index);
  parts.splice(index, 1);
  parts.splice(index + by, 0, part);
  return changed(project, 'move-section', parts);
}

/** Bands that stand in the section go on doing so. */
export function renamePart(project: Project, index: number, name: string): PartsChange {
  const before = { part: partAt(project, index).name };
  return {
    ...changePart(project, 'rename-section', index, { name }),
    bands: project.bands.map((band): Band => {
      const { position } = band;
      if (!standsIn(position, before)) return band;
      return { ...band, position: { ...position, section: { part: name } } as Position };
    }),
  };
}

export function changePart(project: Project, name: ChangeName, index: number, to: Partial<Part>): PartsChange {
  partAt(project, index);
  return changed(
    project,
    name,
    project.piece.parts.map((part, at) => (at === index ? { ...part, ...to } : part)),
  );
}

/** True if one of the parts is called so already. */
export function isTaken(parts: readonly Part[], name: string): boolean {
  return parts.some((part) => part.name === name);
}

function changed({ bands }: Project, name: ChangeName, parts: readonly Part[]): PartsChange {
  return { name, kind: 'parts', parts, bands };
}

function partAt({ piece }: Project, index: number): Part {
  const part = piece.parts[index];
  if (!part) throw new RangeError(`Section ${index} of ${piece.parts.length}`);
  return part;
}

function standsIn(position: Position, section: SectionName): boolean {
  if (position.kind !== 'centred' && position.kind !== 'from-edge') return false;
  const { section: region } = position;
  return region !== 'piece' && region !== 'shown' && isSameSection(region, section);
}
