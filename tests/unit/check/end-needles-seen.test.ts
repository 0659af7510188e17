/** Contrast that end needles bring to an edge is hidden in the seam, or it shows. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { changeFor, type Intent } from '@shared/check/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import { afterChange, startAllOver, type Change, type ProjectAt } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';
import { checkedPlan, onlyFindings } from './found.ts';

/** An all-over pattern with its figure in the middle of each copy of three, so that edges are main by themselves. */
function allOver(seamAllowance: Piece['seamAllowance'], stitches = 9, endNeedles = true): ProjectAt {
  const project = projectWith({ motif: ['.X.'], copies: [1], stitches, rows: 6, piece: { seamAllowance } });
  return { ...project, patterns: [{ ...startAllOver('motif', 2), unit: 'whole', endNeedles }] };
}

const seen = (project: ProjectAt) => onlyFindings(checkedPlan(project), 'end-needles-seen');

describe('contrast at an edge', () => {
  it.each([
    { allowance: { left: 0, right: 0 }, stitches: 9, edge: 'both', seam: { left: 1, right: 1 } },
    { allowance: { left: 1, right: 0 }, stitches: 9, edge: 'right', seam: { left: 1, right: 1 } },
    { allowance: { left: 0, right: 2 }, stitches: 11, edge: 'left', seam: { left: 1, right: 2 } },
  ] as const)('shows at $edge where the seam takes $allowance', ({ allowance, stitches, edge, seam }) => {
    expect(seen(allOver(allowance, stitches))).toEqual([
      { code: 'end-needles-seen', rows: [2, 6], edge, count: 5, seam },
    ]);
  });

  it('is hidden in a seam that takes a stitch at both edges', () => {
    expect(seen(allOver({ left: 1, right: 1 }))).toEqual([]);
  });

  it('is not there with end-needle selection off, and figure that reaches an edge by itself is meant', () => {
    expect(seen(allOver({ left: 0, right: 0 }, 9, false))).toEqual([]);
    // Seven stitches: half of the figure's columns at either edge.
    expect(seen(allOver({ left: 0, right: 0 }, 7))).toEqual([]);
  });

  it('goes into the seam once the remedy is taken', () => {
    const project = allOver({ left: 0, right: 2 }, 11);
    expect(seen(project)).toHaveLength(1);
    const [{ seam } = { seam: null }] = seen(project);
    const after = afterChange(project, changeFor(project, { code: 'seam-takes', ...seam } as Intent) as Change);
    expect(after.piece.seamAllowance).toEqual({ left: 1, right: 2 });
    expect(seen(after)).toEqual([]);
  });
});
