/** The running head: the project, the page and the date, which never run into each other. */
import { expect, it } from 'vitest';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { projectAt, pieceIn, sampleProject } from '@shared/project/index.ts';
import { textOf } from '@shared/words/index.ts';
import { TEST_DAY } from '../../day.ts';
import { itemBox } from './items-of.ts';

it.each([
  ['a short name', 'Skerry'],
  ['a name of 200 wide letters', 'W'.repeat(200)],
  ['a name that the font lacks', '編'.repeat(200)],
])('has page and date at its right end, clear of %s', (_case, name) => {
  const project = { ...projectAt(sampleProject()), name };
  for (const paper of ['a4', 'letter'] as const) {
    const { pages } = placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper, date: TEST_DAY });
    pages.forEach((page, index) => {
      const [head] = page.elements;
      const [left, right] = head?.role === 'decoration' ? head.items : [];
      if (left?.kind !== 'text' || right?.kind !== 'text') throw new Error('It has two texts');
      expect(textOf(right.spans)).toBe(`Page ${index + 1} of ${pages.length} · 2 January 2026`);
      expect(itemBox(left).right).toBeLessThan(itemBox(right).left - 5);
      expect(itemBox(right).right).toBeCloseTo(page.widthMm - 16, 1);
    });
  }
});
