/** The laws that every change keeps; tests give them example changes and get the laws checked. */
import { expect } from 'vitest';
import {
  applyChange,
  invertChange,
  mergeEdits,
  projectFromText,
  projectToText,
  type Change,
  type Edit,
  type Project,
} from '@shared/project/index.ts';

/**
 * Checks that `change`, applied to `project`:
 * - leaves its input as it was,
 * - gives a project that a file can hold,
 * - is undone by its inverse, and done again by the inverse of that,
 * - does the same when kept and sent (copied as plain data),
 * - does the same with neighbouring edits merged, which cannot be merged further,
 * - leaves what its edits do not name as the same objects.
 */
export function expectChangeLaws(project: Project, change: Change): Project {
  const before = structuredClone(project);
  const after = applyChange(project, change);
  const inverse = invertChange(project, change);
  const again = invertChange(after, inverse);
  const merged = { ...change, edits: mergeEdits(change.edits) as [Edit, ...Edit[]] };

  expect(projectFromText(projectToText(after))).toEqual(after);
  expect(structuredClone(applyChange(after, inverse))).toStrictEqual(before);
  expect(applyChange(applyChange(after, inverse), again)).toEqual(after);
  expect(inverse.name).toBe(change.name);
  expect(structuredClone(applyChange(project, merged))).toStrictEqual(structuredClone(after));
  expect(mergeEdits(merged.edits)).toStrictEqual(merged.edits);
  expectOthersTheSame(project, after, [...change.edits, ...inverse.edits].map(areaOf));

  const copy = structuredClone(change);
  expect(copy).toEqual(change);
  expect(applyChange(project, copy)).toEqual(after);

  expect(project).toEqual(before);
  return after;
}

/** The field of the project that an edit is about, and with a motif its id. */
function areaOf(edit: Edit): { readonly field: string | null; readonly motif: string | null } {
  if (edit.kind === 'paint') return { field: 'motifs', motif: edit.motif };
  if (edit.kind !== 'set') return { field: edit.list, motif: null };
  switch (edit.of) {
    case 'motif':
    case 'underlay':
      return { field: 'motifs', motif: edit.motif };
    case 'band':
      return { field: 'bands', motif: null };
    case 'fill':
      return { field: 'fills', motif: null };
    case 'piece':
      return { field: 'piece', motif: null };
    case 'project':
      return { field: null, motif: null };
  }
}

function expectOthersTheSame(before: Project, after: Project, areas: readonly ReturnType<typeof areaOf>[]): void {
  for (const field of ['motifs', 'piece', 'bands', 'fills'] as const) {
    if (!areas.some((area) => area.field === field)) expect(after[field]).toBe(before[field]);
  }
  for (const motif of before.motifs) {
    const now = after.motifs.find(({ id }) => id === motif.id);
    if (now && !areas.some((area) => area.motif === motif.id)) expect(now).toBe(motif);
  }
}
