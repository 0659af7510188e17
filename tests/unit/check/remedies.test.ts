import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { changeFor } from '@shared/check/index.ts';
import { afterChange, type Change } from '@shared/project/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { projectWith } from '../fabric/pieces.ts';
import { checkedPlan, COLUMNS, remediesOf as remedies } from './found.ts';

/** All but hooking up. */
function atOnce(project: Parameters<typeof remedies>[0]) {
  return remedies(project).filter(({ intent: { code } }) => code !== 'hook-up');
}

describe('remedies for long floats', () => {
  it('are hooking them up, once a row', () => {
    // Three floats of eight stitches, five of which may lie loose: one lift for each.
    expect(remedies(COLUMNS).filter(({ intent: { code } }) => code === 'hook-up')).toMatchObject([
      {
        intent: { patterns: [0] },
        effect: { long: { before: 3, after: 0 }, liftsAdded: 3, chainsAdded: 0, cutsAdded: 0, wrapsAdded: 0 },
      },
    ]);
  });

  it('are a ball for each group, and lining', () => {
    // With one ball: 3 long floats, 3 wraps (one a row). With two: no float, a wrap a row for each ball.
    expect(atOnce(COLUMNS)).toMatchObject([
      {
        intent: { code: 'own-balls', bands: [0] },
        effect: { long: { before: 3, after: 0 }, balls: { before: 1, after: 2 }, wrapsAdded: 3, cellsChanged: null },
      },
      // One stitch breaks a float of eight, and each row takes one.
      {
        intent: { code: 'anchors', patterns: [0], longest: 5 },
        effect: { long: { before: 3, after: 0 }, balls: { before: 1, after: 1 }, wrapsAdded: 0, cellsChanged: 3 },
      },
      { intent: { code: 'lining' }, effect: { long: { before: 3, after: 0 }, wrapsAdded: 0, mmAdded: 0 } },
    ]);
  });

  it('do what they say once they are taken', () => {
    for (const remedy of remedies(COLUMNS)) {
      const after = checkedPlan(afterChange(COLUMNS, changeFor(COLUMNS, remedy.intent) as Change));
      expect(after.findings.filter(({ code }) => code === 'long-floats')).toHaveLength(remedy.effect.long.after);
    }
  });

  it('are switching end-needle selection off where it is on', () => {
    const edges = { ...COLUMNS, patterns: bandsOf(COLUMNS).map((band) => ({ ...band, endNeedles: true })) };
    // Each row: five needles to the left edge, eight between, five to the right: one too long a row.
    // Off: the same eight. Nothing gained, so it is not offered for the floats. A ball for each group is: nothing lies between them.
    expect(
      atOnce(edges)
        .map(({ intent: { code }, effect: { long } }) => [code, long.after])
        .sort(),
    ).toEqual([
      ['anchors', 0],
      ['lining', 0],
      ['own-balls', 0],
    ]);
    const near = {
      ...edges,
      patterns: edges.patterns.map((band) => ({
        ...band,
        rule: { kind: 'by-hand' as const, first: [-2, 1] as Slot[] },
      })),
    };
    // L2 and R2: eight needles to each edge, two between. Off: none too long, and a wrap a row.
    expect(atOnce(near)).toMatchObject([
      { intent: { code: 'end-needles-off' }, effect: { long: { before: 6, after: 0 }, wrapsAdded: 3 } },
      { intent: { code: 'anchors' }, effect: { long: { before: 6, after: 0 }, wrapsAdded: 0, cellsChanged: 6 } },
      { intent: { code: 'lining' }, effect: { long: { before: 6, after: 0 } } },
    ]);
  });

  it('are not offered where nothing is too long, or nothing would change', () => {
    expect(remedies(projectWith({ motif: ['X', '.'], copies: [1], stitches: 9, rows: 4 }))).toEqual([]);
    expect(remedies({ ...COLUMNS, piece: { ...COLUMNS.piece, isLined: true } })).toEqual([]);
    // One group: its own ball is the ball it has.
    const solid = projectWith({ motif: ['XXXXXXX.'], copies: [1], stitches: 20, rows: 1 });
    expect(remedies(solid).map(({ intent }) => intent.code)).toEqual(['lining']);
  });

  it('say in words what they cost', () => {
    expect(atOnce(COLUMNS).map((remedy) => findingWords.remedy.effect(remedy))).toEqual([
      'Leaves no long float or carry. It takes 2 balls and 3 more wraps.',
      'Leaves no long float or carry. It takes 3 changed stitches.',
      'The lining covers 3 of 3 long floats and carries.',
    ]);
  });
});
