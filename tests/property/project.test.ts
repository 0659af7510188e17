import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outcome } from '@shared/problem/index.ts';
import { projectFileSchema, projectFromText, projectToText } from '@shared/project/index.ts';
import { z } from '@shared/schema/index.ts';
import { anyFilledProject } from './filled-projects.ts';
import { anyProject as anyGrouped } from './projects.ts';

const anyProject = fc.oneof(anyGrouped, anyFilledProject).map(({ whole }) => whole);

const RUNS = { numRuns: 200, seed: 50 };

describe('a project file', () => {
  it('holds any project, and gives the same text again', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        const text = projectToText(project);
        const read = projectFromText(text);
        expect(read).toEqual(project);
        expect(projectToText(read)).toBe(text);
      }),
      RUNS,
    );
  });

  it('holds what the library makes of the project by the schema', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        const encoded: unknown = z.encode(projectFileSchema, project as z.output<typeof projectFileSchema>);
        expect(projectToText(project)).toBe(`${JSON.stringify(encoded, null, 2)}\n`);
      }),
      RUNS,
    );
  });

  it('cut anywhere is refused by name', () => {
    fc.assert(
      fc.property(anyProject, fc.nat(), (project, at) => {
        const text = projectToText(project).trimEnd();
        const read = outcome(() => projectFromText(text.slice(0, at % text.length)));
        expect(read).toMatchObject({ ok: false, problem: { code: 'project-not-json' } });
      }),
      RUNS,
    );
  });

  it('with any one value replaced is read or refused by name, never unexpected', () => {
    fc.assert(
      fc.property(anyProject, fc.nat(), fc.jsonValue({ maxDepth: 1 }), (project, at, value) => {
        const file = JSON.parse(projectToText(project)) as unknown;
        replaceValue(file, at, value);
        const read = outcome(() => projectFromText(JSON.stringify(file)));
        if (!read.ok) expect(read.problem.code).toMatch(/^project-/);
      }),
      { ...RUNS, numRuns: 400 },
    );
  });
});

/** Replaces one of the values inside `holder`, at any depth. */
function replaceValue(holder: unknown, at: number, value: unknown): void {
  const places: [Record<string, unknown>, string][] = [];
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    for (const key of Object.keys(node)) {
      places.push([node as Record<string, unknown>, key]);
      walk((node as Record<string, unknown>)[key]);
    }
  };
  walk(holder);
  const [inside, key] = places[at % places.length] as [Record<string, unknown>, string];
  inside[key] = value;
}
