/**
 * Edits in a row put together: neighbours that change the same thing become
 * one. Others may stand between the two, as long as each is about something
 * else.
 */
import { composePatches } from '../grid/index.ts';
import type { Edit, Paint, Reference, SetFields } from './edit.ts';

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
  // Ways to things of one kind are of one length.
  return isWithin(wayTo(first), wayTo(second));
}

/** One edit that does `first`, then `second`, which must be {@link isOfSameThing}. */
function mergedPair(first: Edit, second: Edit): Edit {
  if (first.kind === 'paint') return { ...first, patch: composePatches(first.patch, (second as Paint).patch) };
  return { ...first, to: { ...(first as SetFields).to, ...(second as SetFields).to } } as SetFields;
}

/** A way from the project down to something in it, which all that lies below belongs to. */
type Way = readonly string[];

/** What an edit reads and writes. */
function extentOf(edit: Edit): readonly Way[] {
  switch (edit.kind) {
    case 'paint':
      return [['motifs', edit.motif, 'grid']];
    case 'insert':
    case 'remove':
    case 'move':
      return [edit.list === 'patterns' ? ['pieces', edit.piece, 'patterns'] : [edit.list]];
    case 'set': {
      const way = wayTo(edit);
      return Object.keys(edit.to).map((field) => [...way, field]);
    }
  }
}

function wayTo(reference: Reference): Way {
  switch (reference.of) {
    case 'project':
      return [];
    case 'piece':
      return ['pieces', reference.piece];
    case 'numbers':
      return ['pieces', reference.piece, 'perSize', reference.size];
    case 'motif':
      return ['motifs', reference.motif];
    case 'underlay':
      return ['motifs', reference.motif, 'underlay'];
    case 'band':
    case 'all-over':
      return ['pieces', reference.piece, 'patterns', reference.pattern];
  }
}

/** True if two edits can change places: neither has to do with what the other changes. */
function areApart(one: readonly Way[], other: readonly Way[]): boolean {
  return one.every((a) => other.every((b) => !isWithin(a, b) && !isWithin(b, a)));
}

function isWithin(way: Way, other: Way): boolean {
  return other.every((step, index) => step === way[index]);
}
