/** Edits by name, for whoever makes a change: each says no more than what it changes. */
import type { Grid, Patch } from '../grid/index.ts';
import type { Motif, MotifId } from '../motif/index.ts';
import { namesOf, patternsOf, type Pattern, type PatternId, type PatternKind } from '../pattern/index.ts';
import type { Piece, SectionRows, SizeId, SizeNumbers } from '../piece/index.ts';
import type { Edit, Edits, Insert, Lists, Move, Paint, Remove, SetFields, Things } from './edit.ts';
import { pieceOf, type PieceId } from './model.ts';
import type { Place, ProjectAt } from './project-at.ts';
import {
  patternFields,
  patternInSizes,
  sectionRowsAfter,
  sectionRowsOf,
  sectionsAlike,
  splitPiece,
  type Sized,
} from './put-back.ts';

/** Bytes of a cell in a patch and in its inverse, against one in a grid and one in the grid before it. */
const PATCH_IS_DEARER = 3;

export function paintCells(motif: MotifId, patch: Patch): Paint {
  return { kind: 'paint', motif, patch };
}

/** Another drawing in place of a motif's: the cells that differ, or the whole where that is less. */
export function redraw({ id, grid }: Pick<Motif, 'id' | 'grid'>, to: Grid): Paint | SetFields<'motif'> {
  const whole = setMotif(id, { grid: to });
  if (to.width !== grid.width || to.height !== grid.height) return whole;
  const at: number[] = [];
  to.cells.forEach((cell, index) => {
    if (cell !== grid.cells[index]) at.push(index);
  });
  if (at.length * PATCH_IS_DEARER > to.cells.length) return whole;
  return paintCells(id, { at: Uint32Array.from(at), to: Uint8Array.from(at, (index) => to.cells[index] as number) });
}

export function setProject(to: Partial<Things['project']>): SetFields<'project'> {
  return { kind: 'set', of: 'project', to };
}

export function setMotif(motif: MotifId, to: Partial<Things['motif']>): SetFields<'motif'> {
  return { kind: 'set', of: 'motif', motif, to };
}

export function setUnderlay(motif: MotifId, to: Partial<Things['underlay']>): SetFields<'underlay'> {
  return { kind: 'set', of: 'underlay', motif, to };
}

/** A piece gets other fields, whichever size is looked at. */
export function setPieceInSizes(piece: PieceId, to: Partial<Things['piece']>): SetFields<'piece'> {
  return { kind: 'set', of: 'piece', piece, to };
}

/** A piece gets other numbers in one size. */
export function setNumbers({ piece, size }: Place, to: Partial<SizeNumbers>): SetFields<'numbers'> {
  return { kind: 'set', of: 'numbers', piece, size, to };
}

/**
 * Edits that give the piece that is looked at other fields: numbers in the size
 * that is looked at, and rows of a section in all sizes until one has others.
 */
export function setPiece({ whole, at, piece }: ProjectAt, to: Partial<Piece>): Edits {
  const of = pieceOf(whole, at.piece);
  const { shared, numbers } = splitPiece(to);
  if (JSON.stringify(shared.sections) === JSON.stringify(of.sections)) delete shared.sections;
  const edits: Edit[] = Object.keys(shared).length > 0 ? [setPieceInSizes(at.piece, shared)] : [];
  const alike = sectionsAlike(of);
  const rowsIn = (own: SizeNumbers & { readonly size: SizeId }): readonly SectionRows[] => {
    const sections = to.sections ?? piece.sections;
    if (own.size === at.size) return sections.map(sectionRowsOf);
    return sectionRowsAfter(piece.sections, sections, own.sectionRows, alike);
  };
  for (const own of of.perSize) {
    const sectionRows = to.sections ? rowsIn(own) : own.sectionRows;
    const isSame = JSON.stringify(sectionRows) === JSON.stringify(own.sectionRows);
    const fields = { ...(own.size === at.size && numbers), ...(!isSame && { sectionRows }) };
    if (Object.keys(fields).length > 0) edits.push(setNumbers({ piece: at.piece, size: own.size }, fields));
  }
  const [first, ...others] = edits;
  return first ? [first, ...others] : [setPieceInSizes(at.piece, {})];
}

/** A pattern of the kind, in one size. */
type OfKind<Kind extends PatternKind> = Extract<Pattern, { readonly kind: Kind }>;

/**
 * A pattern of the piece that is looked at, `number` of its kind from 0, gets
 * other fields in the size that is looked at. Throws `RangeError` where there
 * is none.
 */
export function setPattern<Kind extends PatternKind>(
  project: ProjectAt,
  kind: Kind,
  number: number,
  to: Partial<Omit<OfKind<Kind>, 'kind'>>,
): SetFields<'band' | 'all-over'> {
  const { piece } = project.at;
  const pattern = patternAt(project, kind, number);
  const fields = patternFields(pattern, to as Partial<Pattern>, sizedAt(project));
  return { kind: 'set', of: kind, piece, pattern: pattern.id, to: fields } as SetFields<'band' | 'all-over'>;
}

/** A pattern more on the piece that is looked at, behind the others, under an `id` that none had. */
export function insertPattern(project: ProjectAt, id: PatternId, pattern: Pattern): Insert<'patterns'> {
  const { piece } = project.at;
  const at = pieceOf(project.whole, piece).patterns.length;
  return { kind: 'insert', list: 'patterns', piece, at, item: patternInSizes(id, pattern, sizedAt(project)) };
}

/** A pattern goes from the piece that is looked at, `number` of its kind from 0. Throws `RangeError` where there is none. */
export function removePattern(project: ProjectAt, kind: PatternKind, number: number): Remove<'patterns'> {
  const { id } = patternAt(project, kind, number);
  return { kind: 'remove', list: 'patterns', piece: project.at.piece, id };
}

function patternAt<Kind extends PatternKind>({ whole, at: { piece } }: ProjectAt, kind: Kind, number: number) {
  return itemAt(patternsOf(pieceOf(whole, piece), kind), number);
}

export function insertInto<List extends 'motifs' | 'pieces'>(list: List, at: number, item: Lists[List]): Insert<List> {
  return { kind: 'insert', list, at, item } as Insert<List>;
}

export function removeFrom<List extends 'motifs' | 'pieces'>(list: List, id: string): Remove<List> {
  return { kind: 'remove', list, id } as Remove<List>;
}

export function moveWithin<List extends 'motifs' | 'pieces'>(list: List, id: string, at: number): Move<List> {
  return { kind: 'move', list, id, at } as Move<List>;
}

/** Edits that make the patterns that are looked at these, of which there are as many: each sets the fields that differ. */
export function setPatterns(project: ProjectAt, to: readonly Pattern[]): SetFields<'band' | 'all-over'>[] {
  return namesOf(project.patterns).flatMap(({ kind, number }, index) => {
    const fields = differing(itemAt(project.patterns, index), itemAt(to, index));
    return Object.keys(fields).length === 0 ? [] : [setPattern(project, kind, number, fields)];
  });
}

/** Edits that make the piece that is looked at this one: they set the fields that differ; none where nothing does. */
export function setPieceFields(project: ProjectAt, to: Piece): readonly Edit[] {
  const fields = differing(project.piece, to);
  return Object.keys(fields).length === 0 ? [] : setPiece(project, fields);
}

/** The fields of `after` that differ by value from those of `before`; `undefined` for one that is gone. */
export function differing<T extends object>(before: T, after: T): Partial<T> {
  const keys = Object.keys({ ...before, ...after }) as (keyof T)[];
  const changed = keys.filter((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]));
  return Object.fromEntries(changed.map((key) => [key, after[key]])) as Partial<T>;
}

function sizedAt({ sizes, at: { size } }: ProjectAt): Sized {
  return { size, sizes: sizes.map(({ id }) => id) };
}

function itemAt<T>(items: readonly T[], index: number): T {
  const item = items[index];
  if (item === undefined) throw new RangeError(`Item ${index} of ${items.length}`);
  return item;
}
