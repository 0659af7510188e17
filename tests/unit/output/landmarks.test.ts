import { describe, expect, it } from 'vitest';
import { landmarksOf, placementSheet, sheetFacts } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, startBand, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { followText } from '../../../src-main/cli/text/follow.ts';
import { planText } from '../../../src-main/cli/text/plan.ts';
import { TEST_DAY } from '../../day.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from '../fabric/pieces.ts';
import { orderOf } from '../running-order/order-lines.ts';

const hem = (begins: ProjectAt['piece']['begins']): ProjectAt =>
  projectWith({
    motif: BLANK_FIRST_12_BY_31,
    copies: [3, 3],
    stitches: 120,
    rows: 160,
    piece: { hemRows: 100, begins },
  });
const kinds = (project: ProjectAt): string[] =>
  landmarksOf(orderOf(project)).map(({ counter, acts }) => `${counter}: ${acts.map(({ kind }) => kind).join(', ')}`);

describe('the landmarks of a running order', () => {
  it('are casting on, setting a pattern, hanging the hem, and the finish', () => {
    expect(kinds(hem('usual'))).toEqual(['0: cast-on', '59: first-needles', '100: hang-hem', '160: finish']);
  });

  it('tell a pattern that is set again and again where it is set first', () => {
    const project = projectWith({ motif: ['XX', '..', '..', '..', 'XX'], copies: [2], stitches: 20, rows: 40 });
    const bands = [3, 20].map((row) => ({
      ...startBand('motif', [2]),
      position: { kind: 'from-row' as const, row },
    }));
    const set = (of: ProjectAt): number[] =>
      orderOf(of).flatMap((item) =>
        item.kind === 'stop' && item.acts.some(({ kind }) => kind === 'first-needles') ? [item.counter] : [],
      );
    expect(set({ ...project, patterns: bands }).length).toBeGreaterThan(2);
    expect(kinds({ ...project, patterns: bands }).filter((line) => line.endsWith('first-needles'))).toEqual([
      '1: first-needles',
      '18: first-needles',
    ]);
  });
});

// Common practice, no source: only an open start leaves loops that can be hung.
describe('a hem that begins closed', () => {
  it('is told to hang no loops, wherever its knitting is told', () => {
    const told = (begins: ProjectAt['piece']['begins']): string => {
      const project = hem(begins);
      const [piece, plan] = [pieceIn(project), makePlan(pieceIn(project))];
      const sheet = placementSheet(sheetFacts(project), plan, { paper: 'a4', date: TEST_DAY });
      return [
        followText(project, plan),
        planText(project, plan),
        words.sections.hem(piece.hemRows, piece.hem.turning, begins !== 'closed'),
        JSON.stringify(sheet),
      ].join('\n');
    };
    expect(told('usual')).toMatch(/hang the hem/i);
    expect(told('closed')).not.toMatch(/hang the (hem|cast-on)|loops? of the cast-on/i);
  });
});
