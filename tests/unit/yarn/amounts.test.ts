/** What rows and sections take, and where what is on hand runs out. */
import { describe, expect, it } from 'vitest';
import { garmentNeed, makePlan, patternGauges, yarnByRow, yarnBySection } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject, type Yarn, type ProjectAt } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';

const sample = projectAt(sampleProject());
/** With a section at the bottom, so that there are two. */
const cuff: ProjectAt = settled(sample, {
  piece: {
    ...sample.piece,
    sections: [{ name: 'rib', rows: 20, isLined: false, gauge: { stitches: 30, rows: 44 }, tension: '' }],
  },
});
const BALL = { system: 'ball', metres: 175, grams: 50 } as const;

function needOf(project: ProjectAt, grams: number | null, knit: number) {
  const yarns: Yarn[] = project.yarns.map((yarn, index) => ({
    ...yarn,
    count: BALL,
    onHand: index === 0 && grams !== null ? { in: 'grams', amount: grams } : null,
  }));
  const piece = { ...pieceIn(project), yarns };
  return garmentNeed([{ name: 'sleeve', knit, plan: makePlan(piece) }], piece);
}

describe('yarn row by row', () => {
  it.each([sample, cuff])('comes to what the piece takes, and so do its sections', (project) => {
    const plan = makePlan(pieceIn(project));
    const byRow = yarnByRow(plan, project.mainYarn);
    const sections = yarnBySection(plan, project.mainYarn);
    for (const { yarn, totalMm } of plan.yarn.uses) {
      expect(byRow.get(yarn)?.reduce((sum, mm) => sum + mm, 0)).toBeCloseTo(totalMm, 4);
      const inSections = sections.flatMap(({ yarns }) => yarns.filter((one) => one.yarn === yarn));
      expect(inSections.reduce((sum, { mm }) => sum + mm, 0)).toBeCloseTo(totalMm, 4);
    }
  });
});

describe('what is on hand', () => {
  it('runs out within the row in which its metres end, in the second of two sleeves', () => {
    const all = needOf(sample, null, 2).yarns[0];
    const one = (all?.total.grams ?? 0) / 2;
    const found = needOf(sample, one * 1.5, 2).yarns[0]?.onHand;
    expect(found?.runsOut?.at).toMatchObject({ name: 'sleeve', number: 2, knit: 2 });
    expect(found?.runsOut?.missing.grams).toBeCloseTo(one / 2, 6);
    const row = found?.runsOut?.at.row ?? 0;
    const lengths = yarnByRow(makePlan(pieceIn(sample)), 0).get(0) as Float64Array;
    const strands = makePlan(pieceIn(sample)).wrapStrands.reduce((sum, { mm }) => sum + mm, 0);
    const there = (one / 2 / 50) * 175_000 - strands;
    expect(lengths.subarray(0, row - 1).reduce((sum, mm) => sum + mm, 0)).toBeLessThanOrEqual(there);
    expect(lengths.subarray(0, row).reduce((sum, mm) => sum + mm, 0)).toBeGreaterThan(there);
    expect(found?.earliest?.row).toBeLessThan(row);
  });

  it('is enough where there is all of it, and may be too little where a stitch takes more', () => {
    const grams = needOf(sample, null, 1).yarns[0]?.total.grams ?? 0;
    expect(needOf(sample, grams * 1.001, 1).yarns[0]?.onHand).toMatchObject({ runsOut: null, earliest: { number: 1 } });
    expect(needOf(sample, grams * 1.2, 1).yarns[0]?.onHand).toMatchObject({ runsOut: null, earliest: null });
  });

  it('of nothing runs out in the first row', () => {
    expect(needOf(sample, 0, 2).yarns[0]?.onHand?.runsOut?.at).toEqual({ name: 'sleeve', number: 1, knit: 2, row: 1 });
  });
});

describe('the whole', () => {
  it('counts a piece that is knitted twice twice, with the margin of the knitter, in balls of the label', () => {
    const [one, two] = [needOf(sample, null, 1), needOf(sample, null, 2)];
    expect(two.yarns[0]?.total.mm).toBeCloseTo(2 * (one.yarns[0]?.total.mm ?? 0), 6);
    const toBuy = two.yarns[0]?.toBuy;
    expect(toBuy?.mm).toBeCloseTo(1.1 * (two.yarns[0]?.total.mm ?? 0), 6);
    expect(toBuy?.balls).toBe(Math.ceil((toBuy?.mm ?? 0) / 175_000));
    const piece = { ...pieceIn(sample), yarnMargin: 0 };
    const bare = garmentNeed([{ name: 'sleeve', knit: 1, plan: makePlan(piece) }], piece).yarns[0];
    expect(bare?.toBuy.mm).toBe(bare?.total.mm);
  });
});

describe('a pattern', () => {
  it('without a gauge of its own has none made up, and one that has it is as wide as that says', () => {
    const [band] = patternGauges(makePlan(pieceIn(sample)), sample.piece.gauge);
    expect(band).toMatchObject({ isOwn: false, row: 25 });
    expect(band?.widthMm).toBe(band?.plainMm);
    const wide = settled(cuff, {
      piece: { ...cuff.piece, sections: cuff.piece.sections.map((one) => ({ ...one, rows: 60 })) },
    });
    const [own] = patternGauges(makePlan(pieceIn(wide)), wide.piece.gauge);
    expect(own).toMatchObject({ isOwn: true });
    expect((own?.widthMm ?? 0) / (own?.plainMm ?? 1)).toBeCloseTo(28 / 30, 10);
  });
});

describe('a swatch larger than the piece', () => {
  it('counts as any other: stitch by stitch the piece takes what the swatch took', () => {
    const plain = settled(sample, {
      piece: { ...sample.piece, loop: { from: 'weighed', stitches: 1000, rows: 1000, grams: 5000 } },
    });
    const yarns: Yarn[] = plain.yarns.map((yarn) => ({ ...yarn, count: BALL }));
    const plan = makePlan({ ...pieceIn(plain), yarns });
    const stitches = plan.yarn.uses.reduce((sum, use) => sum + use.stitches, 0);
    expect(stitches).toBeLessThan(1000 * 1000);
    const mm = plan.yarn.uses.reduce((sum, use) => sum + use.stitchesMm, 0);
    // By dimensions: 5 kg for a million stitches, 50 g to 175 m.
    expect(mm / stitches).toBeCloseTo(((5000 / 1_000_000) * 175_000) / 50, 6);
  });
});
