/** Edits by name, for whoever makes a change: each says no more than what it changes. */
import type { Grid, Patch } from '../grid/index.ts';
import type { Insert, ListName, Lists, Move, Paint, Remove, SetFields, Things } from './edit.ts';
import type { Motif, MotifId } from '../motif/index.ts';
import type { Piece } from '../piece/index.ts';
import type { Project } from './model.ts';

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

export function setPiece(to: Partial<Things['piece']>): SetFields<'piece'> {
  return { kind: 'set', of: 'piece', to };
}

export function setMotif(motif: MotifId, to: Partial<Things['motif']>): SetFields<'motif'> {
  return { kind: 'set', of: 'motif', motif, to };
}

export function setUnderlay(motif: MotifId, to: Partial<Things['underlay']>): SetFields<'underlay'> {
  return { kind: 'set', of: 'underlay', motif, to };
}

export function setBand(band: number, to: Partial<Things['band']>): SetFields<'band'> {
  return { kind: 'set', of: 'band', band, to };
}

export function setFill(fill: number, to: Partial<Things['fill']>): SetFields<'fill'> {
  return { kind: 'set', of: 'fill', fill, to };
}

export function insertInto<List extends ListName>(list: List, at: number, item: Lists[List]): Insert<List> {
  return { kind: 'insert', list, at, item } as Insert<List>;
}

export function removeFrom(list: ListName, at: number): Remove {
  return { kind: 'remove', list, at };
}

export function moveWithin(list: ListName, from: number, at: number): Move {
  return { kind: 'move', list, from, at };
}

/** Edits that make the bands of the project these, of which there are as many: each sets the fields that differ. */
export function setBands({ bands }: Project, to: Project['bands']): SetFields<'band'>[] {
  return bands.flatMap((before, band) => {
    const fields = differing(before, to[band] as Project['bands'][number]);
    return Object.keys(fields).length === 0 ? [] : [setBand(band, fields)];
  });
}

/** The edit that makes the piece this one: it sets the fields that differ; none where nothing does. */
export function setPieceFields({ piece }: Project, to: Piece): SetFields<'piece'>[] {
  const fields = differing(piece, to);
  return Object.keys(fields).length === 0 ? [] : [setPiece(fields)];
}

/** The fields of `after` that differ by value from those of `before`; `undefined` for one that is gone. */
function differing<T extends object>(before: T, after: T): Partial<T> {
  const keys = Object.keys({ ...before, ...after }) as (keyof T)[];
  const changed = keys.filter((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]));
  return Object.fromEntries(changed.map((key) => [key, after[key]])) as Partial<T>;
}
