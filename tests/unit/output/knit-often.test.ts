/** That several of a piece are knitted is told wherever it is told what to knit. */
import { describe, expect, it } from 'vitest';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { applyChange, knitTimes, pieceIn, projectAt, sampleProject, type Change } from '@shared/project/index.ts';
import { followText } from '../../../src-main/cli/text/follow.ts';
import { planText } from '../../../src-main/cli/text/plan.ts';
import { TEST_DAY } from '../../day.ts';
import { wordsOn } from './items-of.ts';

const one = projectAt(sampleProject());
const pair = projectAt(applyChange(one.whole, knitTimes(one, 2) as Change));
const plan = makePlan(pieceIn(pair));

function pagesOf(project: typeof pair): string[] {
  const { pages } = placementSheet(sheetFacts(project), plan, { paper: 'a4', date: TEST_DAY });
  return pages.map((page) => wordsOn(page).replaceAll(/\s+/g, ' '));
}

describe('a piece that is knitted twice', () => {
  const said = 'Knit 2 of this piece. All figures are for one.';

  it('says so on the first page of its sheet, in its plan and in its steps', () => {
    expect(pagesOf(pair)[0]).toContain(said);
    expect(planText(pair, plan).split('\n')[1]).toBe(said);
    expect(followText(pair, plan).split('\n')[1]).toBe(said);
  });

  it('has yarn told for one, and for all of them together: each twice what is wound for one', () => {
    const page = pagesOf(pair).find((text) => text.includes('Yarn to wind')) ?? '';
    const [, main, contrast] = /All 2 together take ([\d.]+) m of slate and ([\d.]+) m of chalk/.exec(page) ?? [];
    const { uses, margin } = plan.yarn;
    // 1 m is 1000 mm; printed to a tenth.
    const twice = uses.map(({ totalMm }) => (2 * totalMm * (1 + margin)) / 1000);
    expect(Math.abs(Number(main) - (twice[0] as number))).toBeLessThanOrEqual(0.05);
    expect(Math.abs(Number(contrast) - (twice[1] as number))).toBeLessThanOrEqual(0.05);
  });

  it('leaves a piece that is knitted once as it was', () => {
    const told = [...pagesOf(one), planText(one, plan), followText(one, plan)].join('\n');
    expect(told).not.toMatch(/of this piece|For one piece/);
  });
});
