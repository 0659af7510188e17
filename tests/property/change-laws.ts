/** The laws that every change keeps; tests give them example changes and get the laws checked. */
import { expect } from 'vitest';
import {
  applyChange,
  invertChange,
  projectFromText,
  projectToText,
  type Change,
  type Project,
} from '@shared/project/index.ts';

/**
 * Checks that `change`, applied to `project`:
 * - leaves its input as it was,
 * - gives a project that a file can hold,
 * - is undone by its inverse, and done again by the inverse of that,
 * - does the same when kept and sent (copied as plain data).
 */
export function expectChangeLaws(project: Project, change: Change): Project {
  const before = structuredClone(project);
  const after = applyChange(project, change);
  const inverse = invertChange(project, change);
  const again = invertChange(after, inverse);

  expect(projectFromText(projectToText(after))).toEqual(after);
  expect(applyChange(after, inverse)).toEqual(before);
  expect(applyChange(applyChange(after, inverse), again)).toEqual(after);
  expect(inverse.name).toBe(change.name);

  const copy = structuredClone(change);
  expect(copy).toEqual(change);
  expect(applyChange(project, copy)).toEqual(after);

  expect(project).toEqual(before);
  return after;
}
