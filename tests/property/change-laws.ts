/** The laws that every change keeps; tests give them example changes and get the laws checked. */
import { expect } from 'vitest';
import {
  applyChange,
  invertChange,
  mergeEdits,
  projectFromText,
  projectToText,
  type Change,
  projectAt,
  type Edit,
  type Project,
  type ProjectAt,
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
export function expectChangeLaws<P extends Project | ProjectAt>(given: P, change: Change): P {
  if (!('whole' in given)) return lawsOf(given as Project, change) as P;
  return projectAt(lawsOf(given.whole, change), given.at) as P;
}

function lawsOf(project: Project, change: Change): Project {
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

/** What an edit is about: a motif, a piece, all of either, or fields of the project (nothing of these). */
function areaOf(edit: Edit): { readonly list: 'motifs' | 'pieces' | null; readonly id: string | null } {
  if (edit.kind === 'paint') return { list: 'motifs', id: edit.motif };
  if (edit.kind !== 'set') {
    return edit.list === 'patterns' ? { list: 'pieces', id: edit.piece } : { list: edit.list, id: null };
  }
  if ('motif' in edit) return { list: 'motifs', id: edit.motif };
  return 'piece' in edit ? { list: 'pieces', id: edit.piece } : { list: null, id: null };
}

function expectOthersTheSame(before: Project, after: Project, areas: readonly ReturnType<typeof areaOf>[]): void {
  for (const list of ['motifs', 'pieces'] as const) {
    const own = areas.filter((area) => area.list === list);
    if (own.length === 0) expect(after[list]).toBe(before[list]);
    for (const item of before[list]) {
      const now = after[list].find(({ id }) => id === item.id);
      if (now && !own.some(({ id }) => id === item.id)) expect(now).toBe(item);
    }
  }
}
