/**
 * Edits in a row put together: neighbours that change the same thing become
 * one. Others may stand between the two, as long as each is about something
 * else.
 */
import { composePatches } from '../grid/index.ts';
import type { Edit, ListName, Paint, SetFields } from './edit.ts';

/** Fewer edits that do the same as these do in turn, on any project to which these can be applied. */
export function mergeEdits(edits: readonly Edit[]): Edit[] {
  const result: Edit[] = [];
  for (const edit of edits) {
    const at = neighbourOf(edit, result);
    if (at < 0) result.push(edit);
    else result[at] = mergedPair(result[at] as Edit, edit) as Edit;
  }
  return result;
}

/** Index of the edit that `edit` can be merged with, or -1. */
function neighbourOf(edit: Edit, earlier: readonly Edit[]): number {
  for (let at = earlier.length - 1; at >= 0; at--) {
    const other = earlier[at] as Edit;
    if (isOfSameThing(other, edit)) return at;
    if (!areApart(extentOf(other), extentOf(edit))) return -1;
  }
  return -1;
}

/** True if one edit can do what both do. */
function isOfSameThing(first: Edit, second: Edit): boolean {
  if (first.kind === 'paint') return second.kind === 'paint' && second.motif === first.motif;
  if (first.kind !== 'set' || second.kind !== 'set' || first.of !== second.of) return false;
  return extentOf(first).item === extentOf(second).item;
}

/** One edit that does `first`, then `second`, which must be {@link isOfSameThing}. */
function mergedPair(first: Edit, second: Edit): Edit {
  if (first.kind === 'paint') return { ...first, patch: composePatches(first.patch, (second as Paint).patch) };
  return { ...first, to: { ...(first as SetFields).to, ...(second as SetFields).to } } as SetFields;
}

/** What an edit reads and writes. */
interface Extent {
  readonly within: ListName | 'project' | 'piece';
  /** The one thing of the list, or null: their order, and so all of them. */
  readonly item: string | number | null;
  readonly fields: readonly string[];
}

function extentOf(edit: Edit): Extent {
  switch (edit.kind) {
    case 'paint':
      return { within: 'motifs', item: edit.motif, fields: ['grid'] };
    case 'insert':
    case 'remove':
    case 'move':
      return { within: edit.list, item: null, fields: [] };
    case 'set':
      break;
  }
  const fields = Object.keys(edit.to);
  switch (edit.of) {
    case 'project':
    case 'piece':
      return { within: edit.of, item: '', fields };
    case 'motif':
      return { within: 'motifs', item: edit.motif, fields };
    case 'underlay':
      return { within: 'motifs', item: edit.motif, fields: ['underlay'] };
    case 'band':
      return { within: 'bands', item: edit.band, fields };
    case 'fill':
      return { within: 'fills', item: edit.fill, fields };
  }
}

/** True if two edits can change places: neither has to do with what the other changes. */
function areApart(one: Extent, other: Extent): boolean {
  if (one.within !== other.within) return true;
  if (one.item === null || other.item === null) return false;
  return one.item !== other.item || one.fields.every((field) => !other.fields.includes(field));
}
