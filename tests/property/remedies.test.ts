/** What a remedy says it would do, against the project with the remedy taken, planned from nothing. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  changeFor,
  findingsOf,
  gathered,
  isMendable,
  Remedies,
  remediesAt,
  remediesFor,
  type PicturedRemedy,
  type StrandStrip,
} from '@shared/check/index.ts';
import { OUTSIDE } from '@shared/fabric/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { afterChange, pieceIn, type Change, type ProjectAt } from '@shared/project/index.ts';
import { anyFilledProject } from './filled-projects.ts';
import { anyProject } from './projects.ts';

function longIn(project: ProjectAt, plan: Plan): number {
  const overIn = (row: number): number =>
    plan.rows[row - 1]?.floats.filter(({ isOver, strand }) => isOver && strand.role === 'contrast').length ?? 0;
  return findingsOf(pieceIn(project), plan).reduce((sum, finding) => {
    if (finding.code === 'long-floats' || finding.code === 'long-carry') return sum + finding.count;
    // It counts rows; anchors break the float across one into several.
    if (finding.code === 'contrast-loose-across') return finding.at.reduce((floats, row) => floats + overIn(row), sum);
    return sum;
  }, 0);
}

/** Rows with stitches of three yarns or more. */
function manyYarnsIn({ fabric: { rows, width, cells } }: Plan): number {
  const yarnsOf = (row: number): Set<number> => new Set(cells.subarray(row * width, (row + 1) * width));
  return Array.from({ length: rows }, (_, row) => yarnsOf(row)).filter(
    (yarns) => [...yarns].filter((yarn) => yarn !== OUTSIDE).length > 2,
  ).length;
}

const wrapsIn = ({ rows }: Plan): number => rows.reduce((sum, { wraps }) => sum + wraps.length, 0);

it('remedies of projects at random do what they say', () => {
  let taken = 0;
  fc.assert(
    fc.property(fc.oneof(anyProject, anyFilledProject), (project) => {
      const plan = outcome(() => makePlan(pieceIn(project)));
      fc.pre(plan.ok);
      if (!plan.ok) return;
      for (const { intent, effect } of remediesFor(
        pieceIn(project),
        plan.value,
        findingsOf(pieceIn(project), plan.value),
      )) {
        const mended = afterChange(project, changeFor(project, intent) as Change);
        const after = makePlan(pieceIn(mended));
        expect(effect.long).toEqual({ before: longIn(project, plan.value), after: longIn(mended, after) });
        expect(effect.wrapsAdded).toBe(wrapsIn(after) - wrapsIn(plan.value));
        taken++;
      }
    }),
    { numRuns: 100, maxSkipsPerRun: 2000 },
  );
  expect(taken).toBeGreaterThan(10);
});

/** As many floats as its picture shows of one yarn, counted in the plan on its rows and needles. */
function overIn({ rows, sections }: Plan, { rows: [first, last], needles }: StrandStrip): number {
  return rows
    .slice(first - 1, last)
    .filter(({ row }) => !sections.some((each) => each.isLined && each.first <= row && row <= each.last))
    .flatMap(({ floats }) => floats)
    .filter((each) => each.isOver && each.last >= needles.first && each.first <= needles.last).length;
}

it('what would help with one finding does what it says there, and is pictured so', () => {
  let taken = 0;
  fc.assert(
    fc.property(fc.oneof(anyProject, anyFilledProject), (project) => {
      const piece = pieceIn(project);
      const plan = outcome(() => makePlan(piece));
      fc.pre(plan.ok);
      if (!plan.ok) return;
      const remedies = new Remedies(piece, plan.value);
      for (const found of gathered(findingsOf(piece, plan.value), plan.value.patterns).filter(isMendable).slice(0, 2)) {
        const steps = remediesAt(remedies, found);
        let step = steps.next();
        while (!step.done) step = steps.next();
        const helping: readonly PicturedRemedy[] = step.value;
        for (const { intent, effect, before, after } of helping) {
          const mended = afterChange(project, changeFor(project, intent) as Change);
          const then = makePlan(pieceIn(mended));
          if (intent.code === 'other-yarn') {
            expect(effect.manyYarns.after).toBeLessThan(effect.manyYarns.before);
          } else {
            expect(effect.here.after).toBeLessThan(effect.here.before);
          }
          expect(effect.manyYarns).toEqual({ before: manyYarnsIn(plan.value), after: manyYarnsIn(then) });
          expect(effect.long).toEqual({ before: longIn(project, plan.value), after: longIn(mended, then) });
          expect(before.floats.length).toBe(overIn(plan.value, before));
          expect(after.floats.length).toBe(overIn(then, after));
          taken++;
        }
        expect(new Set(helping.map(({ intent }) => JSON.stringify(intent))).size).toBe(helping.length);
      }
    }),
    { numRuns: 60, maxSkipsPerRun: 2000 },
  );
  expect(taken).toBeGreaterThan(10);
});
