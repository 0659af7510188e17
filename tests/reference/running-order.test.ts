/** The running order, followed to the letter by a knitter who knows nothing else, comes to the designed fabric. */
import { describe, expect, it } from 'vitest';
import { sampleProject } from '@shared/project/index.ts';
import { knitPlan } from './knit-plan.ts';

describe('a running order followed by the simulated knitter', () => {
  it('comes to the sample', () => {
    expect(knitPlan(sampleProject())).toMatchObject({ outcome: 'as-designed' });
  });
});
