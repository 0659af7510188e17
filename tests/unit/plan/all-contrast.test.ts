import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { runningOrderOf } from '@shared/plan/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { pieceIn, START_YARNS, startGroup } from '@shared/project/index.ts';
import { byHand, FIVE, onlyFindings as only, checkedPlan } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';

describe('a row all in contrast', () => {
  const STRIPE = {
    motif: ['X'],
    copies: [12],
    stitches: 12,
    rows: 6,
    piece: FIVE,
    band: { ...byHand(-6), position: { kind: 'from-row' as const, row: 3 } },
  };
  const striped = (up: number, piece: Partial<Piece> = {}) =>
    checkedPlan(projectWith({ ...STRIPE, group: { up }, piece: { ...FIVE, ...piece } }));

  it('has one yarn and no float: main waits', () => {
    const plan = striped(2);
    expect(plan.rows.map(({ isMainKnitted }) => isMainKnitted)).toEqual([true, true, false, false, true, true]);
    expect(plan.rows.flatMap(({ floats }) => floats)).toEqual([]);
    expect(plan.findings).toEqual([]);
    expect(striped(2, { isInfant: true }).findings).toEqual([]);
    expect(
      checkedPlan(projectWith({ ...STRIPE, group: { up: 2 }, band: { ...STRIPE.band, endNeedles: true } })).findings,
    ).toEqual([]);
  });

  it('takes no main, but for what goes up the edge beside the stripe', () => {
    const [main, contrast] = striped(2).yarn.uses;
    expect(main).toMatchObject({ stitches: 4 * 12, floatsMm: 0 });
    // Row 2 ends at R6 (row 1 comes from the right, row 2 from the left), row 5 enters there: three rows of 2.5 mm.
    expect(main?.carriesMm).toBeCloseTo(3 * 2.5, 10);
    expect(contrast).toMatchObject({ stitches: 2 * 12, floatsMm: 0 });
  });

  it('leaves main at the other side after an odd number of them, which is warned of', () => {
    // Row 2 ends at R6; row 4 comes from the left and enters at L6: 11 needles.
    const plan = striped(1);
    expect(only(plan, 'long-carry')).toMatchObject([{ role: 'main', yarn: 0, rows: [2, 4], longest: 11, count: 1 }]);
    expect(plan.yarn.uses[0]?.carriesMm).toBeCloseTo((11 * 100) / 28 + 2 * 2.5, 10);
  });

  it('of two contrasts has two yarns, of three three', () => {
    const yarns = [
      ...START_YARNS,
      ...['kelp', 'rust'].map((name) => ({ name, colour: '#aa3300', count: null, onHand: null })),
    ];
    const rowsOf = (cells: readonly string[]) => {
      const project = projectWith({ motif: ['X'], copies: [6], stitches: 6, rows: 3, yarns });
      const motifs = project.motifs.map((motif) => ({ ...motif, grid: gridFromText(cells, '.XOI') }));
      const bands = bandsOf(project).map((band) => ({
        ...band,
        unit: 'whole' as const,
        groups: [startGroup('motif', 1)],
      }));
      return only(checkedPlan({ ...project, motifs, patterns: bands }), 'many-yarns');
    };
    expect(rowsOf(['XXXOOO'])).toEqual([]);
    expect(rowsOf(['XXOOII'])).toMatchObject([{ yarns: 3, count: 1 }]);
    expect(rowsOf(['XXOO..'])).toMatchObject([{ yarns: 3, count: 1 }]);
  });

  it('is not said to be knitted in main too', () => {
    const project = projectWith({ ...STRIPE, group: { up: 2 } });
    const running = runningOrderOf(pieceIn(project), checkedPlan(project));
    const stops = running.isKnittable ? running.order.filter((item) => item.kind === 'stop') : [];
    const { feeders } = stops.find(({ feeders: held }) => held[1] !== pieceIn(project).mainYarn) ?? {};
    expect(
      feeders && [feeders[1], feeders[2]].map((yarn) => (yarn === null ? null : project.yarns[yarn]?.name)),
    ).toEqual(['chalk', null]);
  });
});
