/**
 * The one way a project changes.
 *
 * A `Change` is plain data: a name, and edits that are carried out in turn. It
 * can be kept in the undo history, sent, and inverted given the project before
 * it. Applying never touches its input. What may change of a project, and how an
 * edit names it, is in edit.ts.
 */
import { applyEdit, invertEdit, touchedBy, type Edit, type Edits, type Reference } from './edit.ts';
import type { Project } from './model.ts';

/** What a step is called in Undo; `words/` has the text. */
export type ChangeName =
  | 'draw'
  | 'erase'
  | 'line'
  | 'rectangle'
  | 'ellipse'
  | 'fill'
  | 'move'
  | 'cut'
  | 'paste'
  | 'lettering'
  | 'mirror-across'
  | 'mirror-up'
  | 'quarter-turn'
  | 'shift'
  | 'insert-column'
  | 'delete-column'
  | 'insert-row'
  | 'delete-row'
  | 'exchange-yarns'
  | 'invert'
  | 'outline'
  | 'mend-slips'
  | 'settle-cell'
  | 'settle-copies'
  | 'crop'
  | 'crop-at-cursor'
  | 'trim'
  | 'resize-motif'
  | 'rename-motif'
  | 'import-motif'
  | 'read-chart'
  | 'add-motif'
  | 'duplicate-motif'
  | 'delete-motif'
  | 'read-picture'
  | 'set-ground'
  | 'set-shows'
  | 'set-lettering'
  | 'add-underlay'
  | 'replace-underlay'
  | 'remove-underlay'
  | 'move-underlay'
  | 'scale-underlay'
  | 'turn-underlay'
  | 'underlay-strength'
  | 'show-underlay'
  | 'hide-underlay'
  | 'stamp'
  | 'yarns'
  | 'add-colourway'
  | 'rename-colourway'
  | 'choose-colourway'
  | 'remove-colourway'
  | 'rename-project'
  | 'piece-size'
  | 'piece-hem'
  | 'gauge'
  | 'turning-row'
  | 'hem-gauge'
  | 'add-section'
  | 'remove-section'
  | 'move-section'
  | 'rename-section'
  | 'section-rows'
  | 'section-gauge'
  | 'section-lining'
  | 'leave-finding'
  | 'lay-by-hand'
  | 'other-yarn'
  | 'watch-finding'
  | 'seam-allowance'
  | 'finished-face'
  | 'start-side'
  | 'end-needles'
  | 'float-limit'
  | 'piece-details'
  | 'machine'
  | 'yarn-margin'
  | 'loop'
  | 'begins'
  | 'ends'
  | 'tension'
  | 'section-tension'
  | 'piece-notes'
  | 'project-notes'
  | 'copies'
  | 'group-motif'
  | 'rule'
  | 'judge'
  | 'choose-placement'
  | 'first-row'
  | 'own-balls'
  | 'anchors'
  | 'anchor-cell'
  | 'cut-copies'
  | 'colour-order'
  | 'long-floats'
  | 'long-carries'
  | 'mirror-group'
  | 'raise-group'
  | 'add-group'
  | 'remove-group'
  | 'add-band'
  | 'remove-band'
  | 'add-all-over'
  | 'replace-by-all-over'
  | 'remove-all-over'
  | 'all-over-motif'
  | 'all-over-rows'
  | 'all-over-border'
  | 'all-over-lie'
  | 'match-seam'
  | 'move-group'
  | 'keep-needles'
  | 'free-needles'
  | 'unit'
  | 'add-size'
  | 'remove-size'
  | 'rename-size'
  | 'add-piece'
  | 'duplicate-piece'
  | 'rename-piece'
  | 'move-piece'
  | 'remove-piece'
  | 'knit-times'
  | 'size-numbers'
  | 'size-copies';

export interface Change {
  readonly name: ChangeName;
  readonly edits: Edits;
}

/** A change of these edits. */
export function changeOf<E extends Edits>(name: ChangeName, ...edits: E): { name: ChangeName; edits: E } {
  return { name, edits };
}

/** The project after the change. Throws what `applyEdit` throws; none of the edits is carried out then. */
export function applyChange(project: Project, { edits }: Change): Project {
  return applyEdits(project, edits);
}

/** The project after these edits in turn. */
export function applyEdits(project: Project, edits: readonly Edit[]): Project {
  return edits.reduce(applyEdit, project);
}

/** The change that brings back `before`, the project this change is applied to. */
export function invertChange(before: Project, change: Change): Change {
  return carriedOut(before, change).inverse;
}

/** The project after the change, and the change that takes it back. */
export function carriedOut(before: Project, change: Change): { readonly project: Project; readonly inverse: Change } {
  let project = before;
  const inverted = change.edits.map((edit) => {
    const inverse = invertEdit(project, edit);
    project = applyEdit(project, edit);
    return inverse;
  });
  return { project, inverse: { ...change, edits: inverted.reverse() as [Edit, ...Edit[]] } };
}

/** What the change touches and leaves there, in the order of its edits: where a person sees it. */
export function thingsTouched({ edits }: Change): Reference[] {
  return edits.flatMap((edit) => touchedBy(edit) ?? []);
}
