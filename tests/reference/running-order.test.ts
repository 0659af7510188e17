/** The running order, followed to the letter by a knitter who knows nothing else, comes to the designed fabric. */
import { describe, expect, it } from 'vitest';
import { sampleProject } from '@shared/project/index.ts';
import { knitPlan } from '../knit/knit-plan.ts';
import { knitMany, refusedShare, triedText } from '../knit/tried.ts';

describe('a running order followed by the simulated knitter', () => {
  it('comes to the sample', () => {
    expect(knitPlan(sampleProject())).toMatchObject({ outcome: 'as-designed' });
  });

  it('comes to what was designed for 300 random projects, but for the few that hands cannot knit', () => {
    const tried = knitMany(300, 13);
    console.log(triedText(tried));
    expect(tried.wrong).toEqual([]);
    expect(tried.knitted).toBeGreaterThan(120);
    expect(refusedShare(tried)).toBeLessThan(0.25);
  });
});
