/** Findings that are left as they are, on random pieces; and drawing such fields beside those of a random project. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingsOf, gathered, leaveFinding, leftAmong, severityOf, watchFinding } from '@shared/check/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { afterChange, pieceIn, projectAt, projectFromText, projectToText } from '@shared/project/index.ts';
import { planJson } from '../../src-main/cli/json/plan.ts';
import { beside } from './beside.ts';
import { anyFilledProject } from './filled-projects.ts';
import { anyProject } from './projects.ts';

const numRuns = 60;

describe('findings that are left as they are', () => {
  it('are those that were left, in the file, in JSON and after undo, and nothing else', () => {
    let seen = 0;
    const left = fc.property(fc.oneof(anyProject, anyFilledProject), fc.nat(), (project, which) => {
      const plan = outcome(() => makePlan(pieceIn(project)));
      if (!plan.ok) return;
      const findings = findingsOf(pieceIn(project), plan.value);
      const all = gathered(findings, plan.value.patterns);
      const toLeave = all.filter((found, index) => severityOf(found.finding) < 2 && (which >> (index % 31)) % 2 === 1);
      let now = project;
      for (const found of toLeave) {
        const change = leaveFinding(now, found, all);
        expect(change).not.toBeNull();
        if (change) now = afterChange(now, change);
      }
      const isLeft = leftAmong(findings, plan.value.patterns, now.piece.leftAsIs);
      expect(isLeft).toEqual(new Set(toLeave.flatMap((found) => found.all)));
      seen += isLeft.size;

      const again = projectAt(projectFromText(projectToText(now.whole)), now.at);
      const told = planJson(again, makePlan(pieceIn(again))).findings;
      expect(told.map(({ leftAsIs }) => leftAsIs)).toEqual(findings.map((finding) => isLeft.has(finding)));

      for (const found of toLeave) {
        const change = watchFinding(now, found);
        if (change) now = afterChange(now, change);
      }
      expect(leftAmong(findings, plan.value.patterns, now.piece.leftAsIs).size).toBe(0);
    });
    fc.assert(left, { numRuns });
    expect(seen).toBeGreaterThan(0);
  });
});

describe('a value that is drawn beside others', () => {
  it('leaves those after it as they were, and is drawn at random all the same', () => {
    const [first, last] = [fc.nat(), fc.array(fc.nat())];
    const options = { numRuns: 30, seed: 20260104 };
    const before = fc.sample(fc.record({ first, last }), options);
    const drawn = fc.sample(fc.record({ first, more: beside(fc.string()), last }), options);
    expect(drawn.map(({ more: _, ...others }) => others)).toEqual(before);
    expect(new Set(drawn.map(({ more }) => more)).size).toBeGreaterThan(15);
  });

  it('is made simpler where a test fails', () => {
    const { counterexample } = fc.check(
      fc.property(fc.record({ more: beside(fc.nat()) }), ({ more }) => more < 7),
      { seed: 3, endOnFailure: false },
    );
    expect(counterexample).toEqual([{ more: 7 }]);
  });
});
