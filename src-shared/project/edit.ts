/**
 * The smallest things that happen to a project, as plain data.
 *
 * An edit names what it changes and says nothing of the rest: cells of one
 * motif are painted, fields of one thing are set, something comes into a list,
 * goes from it or moves in it. So it costs what it changes, however large the
 * project is, and who follows edits knows where to look without comparing.
 * Motifs are named by id, bands and fills by their place in the list.
 */
import { applyPatch, invertPatch, type Patch } from '../grid/index.ts';
import type { Motif, MotifId, Underlay } from '../motif/index.ts';
import type { Band, Fill } from '../pattern/index.ts';
import type { Piece } from '../piece/index.ts';
import { motifOf, type Project } from './model.ts';

/** The things whose fields can be set. What has edits of its own is no field: the motifs, the piece, the lists. */
export interface Things {
  readonly project: Omit<Project, 'motifs' | 'piece' | 'bands' | 'fills'>;
  readonly piece: Piece;
  readonly motif: Omit<Motif, 'id'>;
  /** The picture behind a motif; whether there is one is a field of the motif. */
  readonly underlay: Underlay;
  readonly band: Band;
  readonly fill: Fill;
}

export type Thing = keyof Things;

/** What says which one is meant, where there are several. */
interface Which {
  readonly project: object;
  readonly piece: object;
  readonly motif: { readonly motif: MotifId };
  readonly underlay: { readonly motif: MotifId };
  readonly band: { readonly band: number };
  readonly fill: { readonly fill: number };
}

/** Names one thing of a project. */
export type Reference<Of extends Thing = Thing> = { [T in Of]: { readonly of: T } & Which[T] }[Of];

/** The lists in which things come, go and move. */
export interface Lists {
  readonly motifs: Motif;
  readonly bands: Band;
  readonly fills: Fill;
}

export type ListName = keyof Lists;

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
  [L in List]: { readonly kind: 'insert'; readonly list: L; readonly at: number; readonly item: Lists[L] };
}[List];

/** What stands at `at` in a list goes. */
export interface Remove {
  readonly kind: 'remove';
  readonly list: ListName;
  readonly at: number;
}

/** What stands at `from` in a list stands at `at` then; the others keep their order. */
export interface Move {
  readonly kind: 'move';
  readonly list: ListName;
  readonly from: number;
  readonly at: number;
}

export type Edit = Paint | SetFields | Insert | Remove | Move;

/**
 * The project after the edit. What the edit does not name is the same object
 * after it. Throws `motif-missing`, or `RangeError` for a cell, a picture, a
 * band, a fill or a place in a list that is not there, and for a motif that
 * comes under the id of another.
 */
export function applyEdit(project: Project, edit: Edit): Project {
  switch (edit.kind) {
    case 'paint':
      return withMotif(project, edit.motif, (motif) => ({ ...motif, grid: applyPatch(motif.grid, edit.patch) }));
    case 'set':
      return withFields(project, edit);
    case 'insert':
      if (edit.list === 'motifs') assertIsNew(project, edit.item.id);
      return withList(project, edit.list, (items) => items.toSpliced(placeIn(items, edit.at, 1), 0, edit.item));
    case 'remove':
      return withList(project, edit.list, (items) => items.toSpliced(placeIn(items, edit.at), 1));
    case 'move':
      return withList(project, edit.list, (items) => {
        const item = items[placeIn(items, edit.from)] as Lists[ListName];
        return items.toSpliced(edit.from, 1).toSpliced(placeIn(items, edit.at), 0, item);
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
    case 'insert':
      return { kind: 'remove', list: edit.list, at: edit.at };
    case 'remove': {
      const items = before[edit.list];
      return { kind: 'insert', list: edit.list, at: edit.at, item: items[placeIn(items, edit.at)] } as Insert;
    }
    case 'move':
      return { ...edit, from: edit.at, at: edit.from };
  }
}

/** What an edit changes or brings: where a person sees it. Null: nothing that is still there after it. */
export function touchedBy(edit: Edit): Reference | null {
  switch (edit.kind) {
    case 'paint':
      return { of: 'motif', motif: edit.motif };
    case 'set': {
      const { kind: _, to: __, ...reference } = edit;
      return reference;
    }
    case 'insert':
      if (edit.list === 'motifs') return { of: 'motif', motif: edit.item.id };
      return placed(edit.list, edit.at);
    case 'move':
      return edit.list === 'motifs' ? null : placed(edit.list, edit.at);
    case 'remove':
      return null;
  }
}

/** The thing that is named. Throws what {@link applyEdit} throws. */
function thingAt(project: Project, reference: Reference): object {
  switch (reference.of) {
    case 'project':
      return project;
    case 'piece':
      return project.piece;
    case 'motif':
      return motifOf(project, reference.motif);
    case 'underlay':
      return underlayOf(motifOf(project, reference.motif));
    case 'band':
      return project.bands[placeIn(project.bands, reference.band)] as Band;
    case 'fill':
      return project.fills[placeIn(project.fills, reference.fill)] as Fill;
  }
}

function withFields(project: Project, edit: SetFields): Project {
  switch (edit.of) {
    case 'project':
      return assigned(project, edit.to);
    case 'piece':
      return { ...project, piece: assigned(project.piece, edit.to) };
    case 'motif':
      return withMotif(project, edit.motif, (motif) => assigned(motif, edit.to));
    case 'underlay':
      return withMotif(project, edit.motif, (motif) => ({ ...motif, underlay: assigned(underlayOf(motif), edit.to) }));
    case 'band':
      return withList(project, 'bands', (bands) => replaced(bands, edit.band, (band) => assigned(band, edit.to)));
    case 'fill':
      return withList(project, 'fills', (fills) => replaced(fills, edit.fill, (fill) => assigned(fill, edit.to)));
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
  return withList(project, 'motifs', (motifs) => replaced(motifs, at, edit));
}

function withList<L extends ListName>(
  project: Project,
  list: L,
  edit: (items: readonly Lists[L][]) => readonly unknown[],
): Project {
  return { ...project, [list]: edit(project[list] as readonly Lists[L][]) };
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

function assertIsNew({ motifs }: Project, id: MotifId): void {
  if (motifs.some((motif) => motif.id === id)) throw new RangeError(`There is a motif "${id}" already`);
}

function underlayOf({ id, underlay }: Motif): Underlay {
  if (!underlay) throw new RangeError(`No picture lies behind motif "${id}"`);
  return underlay;
}

function placed(list: Exclude<ListName, 'motifs'>, at: number): Reference {
  return list === 'bands' ? { of: 'band', band: at } : { of: 'fill', fill: at };
}
