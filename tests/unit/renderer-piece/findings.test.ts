/** Findings gone to one by one, and where the bed ends on the drawing. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { gathered, type Finding } from '@shared/check/index.ts';
import { outlineOf } from '@shared/piece/index.ts';
import { projectAt, sampleProject } from '@shared/project/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { Viewport } from '../../../src-renderer/canvas/viewport.ts';
import { beyondBoxes } from '../../../src-renderer/piece/drawing/bed-ends.ts';
import { cornersOf } from '../../../src-renderer/piece/drawing/finding-marks.ts';
import { LaidView } from '../../../src-renderer/piece/drawing/laid-view.ts';
import { stepsOf } from '../../../src-renderer/piece/drawing/outline.ts';
import { missingNeedles } from '../../../src-renderer/piece/drawing/ruler.ts';
import { findingAfter } from '../../../src-renderer/piece/findings/actions.ts';
import { PieceViewModel } from '../../../src-renderer/piece/view-model.ts';
import { Session } from '../../../src-renderer/session/session.ts';

const FINDINGS: readonly Finding[] = [
  { code: 'no-set-up-row', rows: [1, 1] },
  { code: 'edges-unseen', rows: [3, 9], count: 4, seam: { left: 2, right: 2 } },
  { code: 'fill-cut', rows: [2, 9], copies: 2, whole: 4, allOver: 0 },
];
const LIST = gathered(FINDINGS);
const [FIRST, SECOND, LAST] = LIST as [(typeof LIST)[0], (typeof LIST)[0], (typeof LIST)[0]];

describe('going from finding to finding', () => {
  it('goes round in both directions, and begins at the first or the last', () => {
    expect([null, FIRST, SECOND, LAST].map((now) => findingAfter(LIST, now, 1))).toEqual([FIRST, SECOND, LAST, FIRST]);
    expect([null, FIRST, SECOND, LAST].map((now) => findingAfter(LIST, now, -1))).toEqual([LAST, LAST, FIRST, SECOND]);
    expect(findingAfter([], null, 1)).toBeNull();
  });

  it('is what the commands do, and none can be gone to where none is', () => {
    const viewModel = new PieceViewModel(new Session(sampleProject(), true));
    const { 'finding-next': next, 'finding-before': before } = viewModel.commands;
    expect(next.whyNot()).toBe('Nothing was found to watch.');
    viewModel.findings = LIST;
    expect(next.whyNot()).toBeNull();
    void next.run();
    void next.run();
    expect(viewModel.finding).toBe(SECOND);
    const asked = viewModel.asked;
    void before.run();
    expect(viewModel.finding).toBe(FIRST);
    expect(viewModel.asked).not.toBe(asked);
    // It is gone once it is mended.
    viewModel.findings = [SECOND, LAST];
    expect(viewModel.finding).toBeNull();
  });

  it('counts them in words, what blocks first', () => {
    const counts = (blocking: number, warnings: number, notes: number): string =>
      findingWords.line.counts({ blocking, warnings, notes });
    expect(counts(1, 2, 3)).toBe('2 things to watch, 1 that cannot be knitted, 3 to know');
    expect(counts(0, 2, 0)).toBe('2 things to watch');
    expect(counts(0, 0, 0)).toBe('Nothing stands in the way.');
  });
});

describe('the ends of the bed on the drawing', () => {
  const piece = projectAt(sampleProject()).piece;
  /** 10 stitches, 14 from row 4 on, 10 pixels a stitch and 5 a row, the centre of the bed at 100, the cast-on at 50. */
  const outline = outlineOf(
    { kind: 'steps', stitches: 10, rows: 6, steps: [{ row: 4, left: 2, right: 2 }] },
    { ...piece, hemRows: 0 },
  );
  const gauges = [{ first: 1, last: 6, gauge: piece.gauge }] as never;
  const laid = (view: Viewport): LaidView => new LaidView(view, { plan: { outline, gauges }, project: { piece } });
  const bed = { first: -6 as Slot, last: 5 as Slot };

  it('are where the hatching begins, on the rows that leave it', () => {
    const view = new Viewport(10, 5, 100, 50);
    const seen = laid(view);
    expect(beyondBoxes(seen, stepsOf(outline), { bed })).toEqual([
      { left: 30, top: 20, width: 10, height: 15 },
      { left: 160, top: 20, width: 10, height: 15 },
    ]);
    expect(beyondBoxes(seen, stepsOf(outline), { bed: { first: -7 as Slot, last: 6 as Slot } })).toEqual([]);
  });

  it('are where the needles of the ruler end', () => {
    expect(missingNeedles({ first: -7, last: 6 }, bed)).toEqual([
      { first: -7, last: -7 },
      { first: 6, last: 6 },
    ]);
    expect(missingNeedles({ first: -5, last: 5 }, bed)).toEqual([]);
    // A piece that stands beside the bed altogether.
    expect(missingNeedles({ first: 10, last: 12 }, bed)).toEqual([{ first: 10, last: 12 }]);
  });

  it('a finding of whole rows is framed as wide as the widest of them', () => {
    const xs = cornersOf(laid(new Viewport(10, 5, 100, 50)), { rows: [2, 5], needles: null }, outline).map(
      ({ x }) => x,
    );
    // L7–R7 and three pixels around.
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([27, 173]);
  });
});
