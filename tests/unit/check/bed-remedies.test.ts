/** What can be done with one press about a piece that is too wide for the bed. */
import { describe, expect, it } from 'vitest';
import { bedFinding, changeFor, pieceAfter, type Intent } from '@shared/check/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import {
  addSize,
  afterChange,
  applyChange,
  inSize,
  pieceIn,
  projectAt,
  type Change,
  type ProjectAt,
} from '@shared/project/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { projectWith } from '../fabric/pieces.ts';

/** 220 stitches at 28 in 10 cm, on 200 needles. */
const WIDE = projectWith({
  motif: ['XX'],
  copies: [1],
  stitches: 220,
  rows: 10,
  piece: { gauge: { stitches: 28, rows: 40 } },
});
const taken = (project: ProjectAt, intent: Intent): ProjectAt =>
  afterChange(project, changeFor(project, intent) as Change);
const leavesBed = (project: ProjectAt): boolean => makePlan(pieceIn(project)).beyondBed !== null;

describe('a piece too wide for the bed', () => {
  it('is knitted looser, as wide as it was on the needles that there are', () => {
    expect(leavesBed(WIDE)).toBe(true);
    const looser = taken(WIDE, { code: 'knit-looser' });
    // 28 × 200 / 220 = 25.45…, and no tenth more; 220 × 25.4 / 28 = 199.57.
    expect(looser.piece.gauge).toEqual({ stitches: 25.4, rows: 40 });
    expect(looser.piece.shape).toEqual({ kind: 'rectangle', stitches: 200, rows: 10 });
    expect(leavesBed(looser)).toBe(false);
  });

  it('is made narrower, and moved to where the bed holds it', () => {
    const beside = { ...WIDE, piece: { ...WIDE.piece, offset: 30 } };
    const narrow = taken(beside, { code: 'narrow-to-bed' });
    expect(narrow.piece.shape).toEqual({ kind: 'rectangle', stitches: 200, rows: 10 });
    expect([narrow.piece.offset, leavesBed(narrow)]).toEqual([0, false]);
  });

  it('is scaled in every size when it is knitted looser, since all have one gauge', () => {
    const whole = applyChange(WIDE.whole, addSize(WIDE, 1, 'large', 'large'));
    const [first, second] = [0, 1].map((index) => inSize(projectAt(whole, WIDE.at), index)) as [ProjectAt, ProjectAt];
    const before = second.piece.shape.stitches;
    const looser = taken(first, { code: 'knit-looser' });
    expect(inSize(looser, 1).piece.shape.stitches).toBe(Math.round((before * 25.4) / 28));
  });

  it('is offered nothing that would not help', () => {
    const onBed = projectWith({ motif: ['XX'], copies: [1], stitches: 20, rows: 10 });
    const ownGauge = {
      ...WIDE,
      piece: { ...WIDE.piece, hem: { turning: 'none' as const, gauge: { stitches: 20, rows: 30 } } },
    };
    for (const code of ['knit-looser', 'narrow-to-bed'] as const) {
      expect(pieceAfter(pieceIn(onBed), { code })).toBeNull();
      expect(changeFor(onBed, { code })).toBeNull();
    }
    expect(pieceAfter(pieceIn(ownGauge), { code: 'knit-looser' })).toBeNull();
    expect(pieceAfter(pieceIn(ownGauge), { code: 'narrow-to-bed' })).not.toBeNull();
  });

  it('is said in one sentence over the drawing', () => {
    const said = (project: ProjectAt): string => {
      const finding = bedFinding(pieceIn(project), makePlan(pieceIn(project)));
      return finding ? findingWords.tooWide.short(finding) : '';
    };
    expect(said(WIDE)).toBe(
      'The bed has 200 needles, and row 1 takes 220: 10 too many at the left and 10 at the right.',
    );
    const beside = projectWith({ motif: ['XX'], copies: [1], stitches: 20, rows: 10, piece: { offset: 95 } });
    expect(said(beside)).toBe('The bed has 200 needles, and row 1 takes 20: 5 too many at the right.');
  });
});
