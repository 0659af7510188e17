/** Anchors of main at the edges of the piece, where end-needle selection has its say. */
import { describe, expect, it } from 'vitest';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { knitPlan } from '../../knit/knit-plan.ts';
import { projectWith } from '../fabric/pieces.ts';

/** As wide as the piece, with main in the middle: it floats behind ten stitches to each edge. */
const WIDE: readonly string[] = Array.from({ length: 9 }, () => 'XXXXXXXXXX.XXXXXXXXXX');
/** Above and below it is main, so only its middle rows are far enough from any. */
const MIDDLE = 4;

function wanted(endNeedles: boolean) {
  const byHand = [{ motif: 'motif', column: 20, row: MIDDLE, is: 'always' as const }];
  const anchors = { longest: 4, isBehindFigure: true, byHand };
  const band = { endNeedles, anchors, position: { kind: 'from-row' as const, row: 5 } };
  return projectWith({ motif: WIDE, copies: [1], stitches: 21, rows: 20, band });
}

describe('an anchor of main on an edge needle', () => {
  it.each([
    { endNeedles: false, isThere: true },
    // The outermost needles are brought forward for the contrast, whatever the pattern has there (common practice, no
    // source), and with nothing laid into its hook such a needle would drop its stitch.
    { endNeedles: true, isThere: false },
  ])('is put there with end needles $endNeedles: $isThere', ({ endNeedles, isThere }) => {
    const project = wanted(endNeedles);
    const { rows } = makePlan(pieceIn(project));
    const { anchors, edges } = rows[5 - 1 + MIDDLE] as (typeof rows)[number];
    expect(anchors.includes(edges.last)).toBe(isThere);
    expect(anchors.length).toBeGreaterThan(0);
    expect(knitPlan(project)).toMatchObject({ outcome: 'as-designed' });
  });
});
