/** Pieces knitted by somebody who reads the stops alone, judged by the simulated knitter. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inSize, projectAt, projectFromText, sizesOf, type ProjectAt } from '@shared/project/index.ts';
import { drive } from '../../knit/driver.ts';
import { projectsOf } from '../../knit/tried.ts';
import { settled } from '../../written-projects.ts';
import { sample, trial } from './knitting.ts';

const fixture = (name: string): ProjectAt =>
  projectAt(
    projectFromText(readFileSync(resolve(import.meta.dirname, '../../fixtures', `${name}.walewright`), 'utf8')),
  );

describe('a knitter who reads the stops alone', () => {
  it.each<[string, ProjectAt]>([
    ['the sample', sample()],
    ['a hem', fixture('harbour-hem-3')],
    ['a hemmed sleeve', settled(sample(), { piece: { ...sample().piece, hemRows: 20 } })],
    [
      'a piece with own balls',
      trial({ motif: ['X.X', '.X.', 'XXX'], copies: [1, 2], stitches: 30, rows: 24, group: { hasOwnBall: true } }),
    ],
  ])('finishes %s as it was designed', (_, project) => {
    const driven = drive(project);
    expect(driven?.wrong).toEqual([]);
    expect(driven?.rows).toBeGreaterThan(20);
  });

  const graded = fixture('graded-sleeve-4');
  it.each(sizesOf(graded).map(({ name }, index) => [name, index] as const))(
    'finishes an all-over below bands in size %s',
    (_, index) => {
      const project = inSize(graded, index);
      expect(project.patterns.some(({ kind }) => kind === 'all-over')).toBe(true);
      expect(drive(project)?.wrong).toEqual([]);
    },
  );

  it('finishes random pieces as they were designed', () => {
    let finished = 0;
    for (const project of projectsOf(50, 21)) {
      const driven = drive(project);
      if (driven === null) continue;
      expect(driven.wrong).toEqual([]);
      finished++;
    }
    expect(finished).toBeGreaterThan(20);
  });
});
