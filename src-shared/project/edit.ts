/**
 * The smallest things that happen to a project, as plain data.
 *
 * An edit names what it changes and says nothing of the rest: cells of one
 * motif are painted, fields of one thing are set, something comes into a list,
 * goes from it or moves in it. So it costs what it changes, however large the
 * project is, and who follows edits knows where to look without comparing.
 * Everything is named by its id.
 */
import { applyPatch, invertPatch, type Patch } from '../grid/index.ts';
import type { Motif, MotifId, Underlay } from '../motif/index.ts';
import type { AllOverInSizes, BandInSizes, PatternId, PatternInSizes } from '../pattern/index.ts';
import type { SizeId, SizeNumbers } from '../piece/index.ts';
import { motifOf, pieceOf, type PieceId, type PieceInSizes, type Project } from './model.ts';

/** The things whose fields can be set. What has edits of its own is no field: the motifs, the pieces, the patterns. */
export interface Things {
  readonly project: Omit<Project, 'motifs' | 'pieces'>;
  readonly piece: Omit<PieceInSizes, 'id' | 'patterns'>;
  /** The numbers of a piece in one size. */
  readonly numbers: SizeNumbers;
  readonly motif: Omit<Motif, 'id'>;
  /** The picture behind a motif; whether there is one is a field of the motif. */
  readonly underlay: Underlay;
  readonly band: Omit<BandInSizes, 'id' | 'kind'>;
  readonly 'all-over': Omit<AllOverInSizes, 'id' | 'kind'>;
}

export type Thing = keyof Things;

/** What says which one is meant, where there are several. */
interface Which {
  readonly project: object;
  readonly piece: { readonly piece: PieceId };
  readonly numbers: { readonly piece: PieceId; readonly size: SizeId };
  readonly motif: { readonly motif: MotifId };
  readonly underlay: { readonly motif: MotifId };
  readonly band: { readonly piece: PieceId; readonly pattern: PatternId };
  readonly 'all-over': { readonly piece: PieceId; readonly pattern: PatternId };
}

/** Names one thing of a project. */
export type Reference<Of extends Thing = Thing> = { [T in Of]: { readonly of: T } & Which[T] }[Of];

/** The lists in which things come, go and move. */
export interface Lists {
  readonly motifs: Motif;
  readonly pieces: PieceInSizes;
  readonly patterns: PatternInSizes;
}

export type ListName = keyof Lists;

/** Names one list: patterns are those of a piece. */
type Listed<List extends ListName> = {
  [L in List]: { readonly list: L } & (L extends 'patterns' ? { readonly piece: PieceId } : object);
}[List];

/** Cells of one motif get other colours. */
export interface Paint {
  readonly kind: 'paint';
  readonly motif: MotifId;
  readonly patch: Patch;
}

/** Fields of one thing get other values. `undefined`: the field, one that may be left out, goes. */
export type SetFields<Of extends Thing = Thing> = {
  [T in Of]: { readonly kind: 'set' } & Reference<T> & { readonly to: Partial<Things[T]> };
}[Of];

/** `item` comes into a list, and stands at `at` then. */
export type Insert<List extends ListName = ListName> = {
  [L in List]: { readonly kind: 'insert' } & Listed<L> & { readonly at: number; readonly item: Lists[L] };
}[List];

/** What is called `id` goes from a list. */
export type Remove<List extends ListName = ListName> = {
  [L in List]: { readonly kind: 'remove' } & Listed<L> & { readonly id: string };
}[List];

/** What is called `id` stands at `at` in its list then; the others keep their order. */
export type Move<List extends ListName = ListName> = {
  [L in List]: { readonly kind: 'move' } & Listed<L> & { readonly id: string; readonly at: number };
}[List];

export type Edit = Paint | SetFields | Insert | Remove | Move;

/** One edit at least: what changes nothing is no change. */
export type Edits = readonly [Edit, ...Edit[]];

/**
 * The project after the edit. What the edit does not name is the same object
 * after it. Throws `motif-missing`, or `RangeError` for a cell, a picture, a
 * piece, a pattern or a place in a list that is not there, and for what comes
 * under the id of another.
 */
export function applyEdit(project: Project, edit: Edit): Project {
  switch (edit.kind) {
    case 'paint':
      return withMotif(project, edit.motif, (motif) => ({ ...motif, grid: applyPatch(motif.grid, edit.patch) }));
    case 'set':
      return withFields(project, edit);
    case 'insert':
      return withList(project, edit, (items) => {
        if (items.some(({ id }) => id === edit.item.id)) throw new RangeError(`There is a "${edit.item.id}" already`);
        return items.toSpliced(placeIn(items, edit.at, 1), 0, edit.item);
      });
    case 'remove':
      return withList(project, edit, (items) => items.toSpliced(placeOf(items, edit.id), 1));
    case 'move':
      return withList(project, edit, (items) => {
        const from = placeOf(items, edit.id);
        return items.toSpliced(from, 1).toSpliced(placeIn(items, edit.at), 0, items[from] as Item);
      });
  }
}

/** The edit that brings back `before`, a project to which `edit` can be applied. */
export function invertEdit(before: Project, edit: Edit): Edit {
  switch (edit.kind) {
    case 'paint':
      return { ...edit, patch: invertPatch(motifOf(before, edit.motif).grid, edit.patch) };
    case 'set':
      return { ...edit, to: valuesOf(thingAt(before, edit), Object.keys(edit.to)) } as SetFields;
    case 'insert': {
      const { at: _, item, ...listed } = edit;
      return { ...listed, kind: 'remove', id: item.id } as Remove;
    }
    case 'remove': {
      const items = listOf(before, edit);
      const at = placeOf(items, edit.id);
      const { id: _, ...listed } = edit;
      return { ...listed, kind: 'insert', at, item: items[at] } as Insert;
    }
    case 'move':
      return { ...edit, at: placeOf(listOf(before, edit), edit.id) };
  }
}

/** What an edit changes, moves or brings: where a person sees it. Null: nothing that is still there after it. */
export function touchedBy(edit: Edit): Reference | null {
  switch (edit.kind) {
    case 'paint':
      return { of: 'motif', motif: edit.motif };
    case 'set': {
      const { kind: _, to: __, ...reference } = edit;
      return reference;
    }
    case 'insert':
      return edit.list === 'patterns'
        ? { of: edit.item.kind, piece: edit.piece, pattern: edit.item.id }
        : listedAs(edit.list, edit.item.id);
    case 'move':
    case 'remove':
      // Where the patterns of a piece are others, or in another order, the piece is.
      if (edit.list === 'patterns') return { of: 'piece', piece: edit.piece };
      return edit.kind === 'move' ? listedAs(edit.list, edit.id) : null;
  }
}

function listedAs(list: 'motifs' | 'pieces', id: string): Reference {
  return list === 'motifs' ? { of: 'motif', motif: id } : { of: 'piece', piece: id };
}

/** The thing that is named. Throws what {@link applyEdit} throws. */
function thingAt(project: Project, reference: Reference): object {
  switch (reference.of) {
    case 'project':
      return project;
    case 'piece':
      return pieceOf(project, reference.piece);
    case 'numbers': {
      const { perSize } = pieceOf(project, reference.piece);
      return perSize[sizeIn(perSize, reference.size)] as SizeNumbers;
    }
    case 'motif':
      return motifOf(project, reference.motif);
    case 'underlay':
      return underlayOf(motifOf(project, reference.motif));
    case 'band':
    case 'all-over': {
      const { patterns } = pieceOf(project, reference.piece);
      return patterns[patternIn(patterns, reference)] as PatternInSizes;
    }
  }
}

function withFields(project: Project, edit: SetFields): Project {
  switch (edit.of) {
    case 'project':
      return assigned(project, edit.to);
    case 'piece':
      return withPiece(project, edit.piece, (piece) => assigned(piece, edit.to));
    case 'numbers':
      return withPiece(project, edit.piece, (piece) => {
        const at = sizeIn(piece.perSize, edit.size);
        return { ...piece, perSize: replaced(piece.perSize, at, (numbers) => assigned(numbers, edit.to)) };
      });
    case 'motif':
      return withMotif(project, edit.motif, (motif) => assigned(motif, edit.to));
    case 'underlay':
      return withMotif(project, edit.motif, (motif) => ({ ...motif, underlay: assigned(underlayOf(motif), edit.to) }));
    case 'band':
    case 'all-over':
      return withPiece(project, edit.piece, (piece) => {
        const at = patternIn(piece.patterns, edit);
        return {
          ...piece,
          patterns: replaced(piece.patterns, at, (pattern) => assigned<PatternInSizes>(pattern, edit.to)),
        };
      });
  }
}

/** `thing` with other fields; those that are `undefined` are left out. */
function assigned<T extends object>(thing: T, to: Partial<NoInfer<T>>): T {
  const result = { ...thing, ...to };
  for (const key of Object.keys(to) as (keyof T)[]) if (to[key] === undefined) delete result[key];
  return result;
}

/** What `thing` has under these keys; `undefined` where it has nothing. */
function valuesOf(thing: object, keys: readonly string[]): object {
  return Object.fromEntries(keys.map((key) => [key, (thing as Record<string, unknown>)[key]]));
}

function withMotif(project: Project, id: MotifId, edit: (motif: Motif) => Motif): Project {
  const at = project.motifs.indexOf(motifOf(project, id));
  return { ...project, motifs: replaced(project.motifs, at, edit) };
}

function withPiece(project: Project, id: PieceId, edit: (piece: PieceInSizes) => PieceInSizes): Project {
  const at = project.pieces.indexOf(pieceOf(project, id));
  return { ...project, pieces: replaced(project.pieces, at, edit) };
}

type Item = Lists[ListName];
type AnyList = { readonly list: 'motifs' | 'pieces' } | { readonly list: 'patterns'; readonly piece: PieceId };

function listOf(project: Project, named: AnyList): readonly Item[] {
  return named.list === 'patterns' ? pieceOf(project, named.piece).patterns : project[named.list];
}

function withList(project: Project, named: AnyList, edit: (items: readonly Item[]) => readonly Item[]): Project {
  const items = edit(listOf(project, named));
  if (named.list !== 'patterns') return { ...project, [named.list]: items };
  return withPiece(project, named.piece, (piece) => ({ ...piece, patterns: items as readonly PatternInSizes[] }));
}

function replaced<T>(items: readonly T[], at: number, edit: (item: T) => T): readonly T[] {
  return items.with(placeIn(items, at), edit(items[at] as T));
}

/** `at` if it is a place in the list, or one of `more` behind it. Throws `RangeError` otherwise. */
function placeIn(items: readonly unknown[], at: number, more = 0): number {
  if (!Number.isInteger(at) || at < 0 || at >= items.length + more)
    throw new RangeError(`Item ${at} of ${items.length}`);
  return at;
}

/** Where what is called `id` stands. Throws `RangeError` where it is not there. */
function placeOf(items: readonly { readonly id: string }[], id: string): number {
  const at = items.findIndex((item) => item.id === id);
  if (at < 0) throw new RangeError(`There is no "${id}"`);
  return at;
}

function sizeIn(perSize: PieceInSizes['perSize'], size: SizeId): number {
  const at = perSize.findIndex((numbers) => numbers.size === size);
  if (at < 0) throw new RangeError(`There is no size "${size}"`);
  return at;
}

function patternIn(patterns: readonly PatternInSizes[], { of, pattern }: Reference<'band' | 'all-over'>): number {
  const at = placeOf(patterns, pattern);
  if (patterns[at]?.kind !== of) throw new RangeError(`The pattern "${pattern}" is of another kind`);
  return at;
}

function underlayOf({ id, underlay }: Motif): Underlay {
  if (!underlay) throw new RangeError(`No picture lies behind motif "${id}"`);
  return underlay;
}
