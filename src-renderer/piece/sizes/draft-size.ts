/**
 * A size that is about to be added: proposed, shown, changed, and taken or not.
 *
 * The project stays as it is until it is taken. What is shown is the project as
 * it would be, and what a person changes of the proposed numbers are changes
 * of that one; taken, all of it is one change.
 */
import type { SizeId } from '@shared/piece/index.ts';
import {
  addSize,
  afterChange,
  changeOf,
  mergeEdits,
  type Change,
  type Edit,
  type Edits,
  type ProjectAt,
} from '@shared/project/index.ts';

export interface DraftSize {
  readonly id: SizeId;
  readonly name: string;
  /** Its place among the sizes. */
  readonly at: number;
  /** What was changed of the numbers that were proposed there. */
  readonly edits: readonly Edit[];
}

/** The change that adds the size with its numbers as they stand. Throws what {@link addSize} throws. */
export function takingOf(project: ProjectAt, { id, name, at, edits }: DraftSize): Change {
  const added = addSize(project, at, name, id);
  return changeOf(added.name, ...(mergeEdits([...added.edits, ...edits]) as readonly Edit[] as Edits));
}

/** The project as it would be with the size, looked at where it is now. */
export function withDraft(project: ProjectAt, draft: DraftSize): ProjectAt {
  return afterChange(project, takingOf(project, draft));
}

/** With other numbers than were proposed; `change` is one of {@link withDraft}. */
export function changedDraft(draft: DraftSize, { edits }: Change): DraftSize {
  return { ...draft, edits: mergeEdits([...draft.edits, ...edits]) };
}

/** At another place, where other numbers are proposed. */
export function movedDraft(draft: DraftSize, at: number): DraftSize {
  return { ...draft, at, edits: [] };
}
