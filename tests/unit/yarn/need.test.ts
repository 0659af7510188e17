import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { findingsOf } from '@shared/check/index.ts';
import { evenGauge, wayMm } from '@shared/piece/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { emptyProject, pieceIn, sampleProject, START_YARNS, type Yarn, projectAt } from '@shared/project/index.ts';
import { TAIL_MM } from '@shared/yarn/index.ts';
import { projectWith } from '../fabric/pieces.ts';

// 20 stitches and 25 rows in 10 cm: stitches 5 mm wide, rows 4 mm tall.
const GAUGE = { gauge: { stitches: 20, rows: 25 } };

describe('the way between two needles', () => {
  it('is sideways and then up', () => {
    expect(wayMm(evenGauge(GAUGE.gauge), 3, 1, 3)).toBeCloseTo(3 * 5 + 2 * 4, 10);
  });
});

describe('yarn for a piece', () => {
  const given = {
    motif: ['X', 'X'],
    copies: [1, 1],
    stitches: 20,
    rows: 4,
    piece: GAUGE,
    band: { rule: { kind: 'by-hand' as const, first: [-3, 2] as Slot[] } },
  };

  it('is stitches, floats, carries and tails', () => {
    const { loops, uses, margin } = makePlan(pieceIn(projectWith(given))).yarn;
    const loopMm = loops[0]?.mm ?? 0;
    // S = 5 stitches/cm², l = √(19 / 5) cm = 19.4936 mm.
    expect(loopMm).toBeCloseTo(19.4936, 4);
    // A tenth more is wound off (common practice, no source), and stands in no total.
    expect(margin).toBe(0.1);
    expect(uses).toHaveLength(2);
    const [main, contrast] = uses;
    // 80 stitches less the 4 of contrast; main floats behind each of those, 5 mm each.
    expect(main).toMatchObject({ role: 'main', stitches: 76, carriesMm: 0, tailsMm: 2 * TAIL_MM, sewingMm: 0 });
    // 20 stitches of 5 mm, cast off with 3 to 4 times that.
    expect(main?.castOffMm).toBeCloseTo(3.5 * 100, 10);
    expect(uses.map(({ balls }) => balls.map(({ group }) => group))).toEqual([[null], [null]]);
    expect(main?.floatsMm).toBeCloseTo(4 * 5, 10);
    expect(main?.totalMm).toBeCloseTo(76 * loopMm + 20 + 300 + 350, 8);
    // L3 and R3: four needles between on both rows; row 2 ends at R3 (the carriage comes from the left), row 3 enters there.
    expect(contrast).toMatchObject({ role: 'contrast', yarn: 1, stitches: 4, tailsMm: 2 * TAIL_MM });
    expect(contrast?.floatsMm).toBeCloseTo(2 * 4 * 5, 10);
    expect(contrast?.carriesMm).toBeCloseTo(4, 10);
    expect(contrast?.totalMm).toBeCloseTo(4 * loopMm + 40 + 4 + 300, 8);
  });

  it('has two tails for each ball', () => {
    const own = makePlan(pieceIn(projectWith({ ...given, group: { hasOwnBall: true } }))).yarn.uses[1];
    expect(own).toMatchObject({ floatsMm: 0, tailsMm: 4 * TAIL_MM, stitches: 4 });
    expect(own?.carriesMm).toBeCloseTo(2 * 4, 10);
    // Each of the two is wound off by itself: two stitches, one row up, two ends.
    expect(own?.balls).toMatchObject([
      { group: 0, stitches: 2, floatsMm: 0, tailsMm: 2 * TAIL_MM },
      { group: 1, stitches: 2, floatsMm: 0, tailsMm: 2 * TAIL_MM },
    ]);
    for (const { carriesMm, totalMm } of own?.balls ?? []) {
      expect(carriesMm).toBeCloseTo(4, 10);
      expect(totalMm).toBeCloseTo(2 * 19.4936 + 4 + 300, 3);
    }
  });

  it('has two more tails where a strand is cut and joined again, which a note says', () => {
    // Rows 1 and 28 have figure, 26 between them none: far more than 8 rows.
    const motif = ['X', ...Array<string>(26).fill('.'), 'X'];
    const project = projectWith({ ...given, motif, copies: [1], rows: 28, band: { unit: 'whole' } });
    const plan = makePlan(pieceIn(project));
    const [main, contrast] = plan.yarn.uses;
    expect(contrast).toMatchObject({ stitches: 2, carriesMm: 0, tailsMm: 4 * TAIL_MM });
    expect(main).toMatchObject({ tailsMm: 2 * TAIL_MM });
    expect(plan.rows[0]?.cuts).toMatchObject([{ toRow: 28, rows: 27, mm: 108 }]);
    const notes = findingsOf(pieceIn(project), plan).filter(({ code }) => code === 'long-way-up');
    expect(notes).toMatchObject([{ rows: [1, 28], role: 'contrast', yarn: 1, up: 27, upMm: 108, count: 1 }]);
  });

  it('weighs a yarn whose count is known, and makes none up for one that has none', () => {
    const [slate, chalk] = START_YARNS as [Yarn, Yarn];
    const yarns = [{ ...slate, count: { system: 'tex' as const, value: 278, plies: 1 }, onHand: null }, chalk];
    const [main, contrast] = makePlan(pieceIn(projectWith({ ...given, yarns }))).yarn.uses;
    expect(main?.grams).toBeCloseTo(((main?.totalMm ?? 0) * 278) / 1e6, 10);
    expect(contrast).toMatchObject({ yarn: 1, stitches: 4, grams: null });
  });

  it('says no weight in a new project, since nobody has said how heavy its yarns are', () => {
    for (const project of [projectAt(sampleProject()), projectAt(emptyProject('new', 'motif'))]) {
      expect(project.yarns.map(({ count }) => count)).toEqual([null, null]);
    }
    expect(makePlan(pieceIn(projectAt(sampleProject()))).yarn.uses.map(({ grams }) => grams)).toEqual([null, null]);
  });
});
