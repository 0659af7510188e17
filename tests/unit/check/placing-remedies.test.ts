/** What would help with one finding where patterns may be moved or sections lined, and the pictures beside it. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import {
  changeFor,
  gathered,
  isMendable,
  Remedies,
  remediesAt,
  type PicturedRemedy,
  type RemedyCode,
} from '@shared/check/index.ts';
import { afterChange, pieceIn, type Change, type ProjectAt } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';
import { byHand, checkedPlan, COLUMNS, FIVE, TWO_COLUMNS } from './found.ts';
import { BLANK_ROWS, HOOKED, IN_SECTION, LEANING, UNEVEN } from './mendable.ts';

/** What would help with one finding, from 0, what matters most first. */
function helps(project: ProjectAt, number = 0): PicturedRemedy[] {
  const plan = checkedPlan(project);
  const finding = gathered(plan.findings, plan.patterns).filter(isMendable)[number];
  if (!finding) throw new Error('There is nothing to mend');
  const steps = remediesAt(new Remedies(pieceIn(project), plan), finding);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function helpOf(project: ProjectAt, code: RemedyCode): PicturedRemedy {
  const helping = helps(project);
  const found = helping.find(({ intent }) => intent.code === code);
  if (!found) throw new Error(`There is ${helping.map(({ intent }) => intent.code).join()} and no ${code}`);
  return found;
}

/** The slots on which each group begins. */
const beginnings = (project: ProjectAt): number[] =>
  checkedPlan(project).groups.map(({ block }) => block.first as number);

const taken = (project: ProjectAt, { intent }: PicturedRemedy): ProjectAt =>
  afterChange(project, changeFor(project, intent) as Change);

describe('what would help where a finding is', () => {
  it('is groups moved closer by as much as the float is too long', () => {
    // Eight needles lie between two columns and five may: three fewer, about the same middle.
    const help = helpOf(COLUMNS, 'move-groups');
    expect(help).toMatchObject({
      intent: { bands: [{ band: 0, first: [-4, 2] }] },
      effect: { long: { before: 3, after: 0 }, here: { before: 3, after: 0 }, cellsChanged: null },
    });
    expect(beginnings(taken(COLUMNS, help))).toEqual([-4, 2]);
  });

  it('is no moving of groups whose floats lie within them', () => {
    const within = projectWith({ motif: ['X.......X'], copies: [1, 1], stitches: 30, rows: 1, piece: FIVE });
    expect(helps(within).map(({ intent }) => intent.code)).not.toContain('move-groups');
  });

  it('is mirroring, where mirrored groups meet with what is drawn', () => {
    const help = helpOf(LEANING, 'mirrored-order');
    expect(help).toMatchObject({
      intent: { bands: [0], isFirstMirrored: true },
      effect: { long: { before: 1, after: 0 } },
    });
    const mirrored = taken(LEANING, help);
    expect(mirrored.patterns[0]).toMatchObject({ groups: [{ isMirrored: true }, { isMirrored: false }] });
    // The mirrored copy ends with its two stitches; three needles are left between the figures.
    expect(checkedPlan(mirrored).rows[1]?.floats.filter(({ stitches }) => stitches === 3)).not.toEqual([]);
  });

  it('is never mirroring of letters', () => {
    const [motif] = LEANING.motifs;
    const letters = { ...LEANING, motifs: [{ ...(motif as NonNullable<typeof motif>), isLettering: true }] };
    expect(helps(letters).map(({ intent }) => intent.code)).not.toContain('mirrored-order');
  });

  it('is the lining of its own section alone', () => {
    const help = helpOf(IN_SECTION, 'line-section');
    expect(help).toMatchObject({ intent: { section: 1 }, effect: { long: { before: 3, after: 0 }, mmAdded: 0 } });
    expect(taken(IN_SECTION, help).piece.sections.map(({ isLined }) => isLined)).toEqual([false, true]);
    // What is covered is not drawn as lying in the open.
    expect([help.before.floats.length, help.after.floats.length]).toEqual([3, 0]);
  });

  it('is the lining of its own section above a hem as well', () => {
    const { intent } = helpOf({ ...IN_SECTION, piece: { ...IN_SECTION.piece, hemRows: 12 } }, 'line-section');
    expect(intent).toEqual({ code: 'line-section', section: 1 });
  });

  it('is what helps on one row as on many', () => {
    const row = projectWith({ ...TWO_COLUMNS, motif: ['X'], piece: FIVE, band: byHand(-5, 4) });
    const codes = helps(row).map(({ intent }) => intent.code);
    expect(codes).toEqual(expect.arrayContaining(['own-balls', 'move-groups', 'hook-up', 'anchors', 'lining']));
  });

  it('is another of the placings that there are, and of these the best', () => {
    const others = helps(UNEVEN, 1).filter(({ intent }) => intent.code === 'other-placing');
    const [help] = others as [PicturedRemedy];
    expect(others).toHaveLength(1);
    expect(help.effect.here.after).toBeLessThan(help.effect.here.before);
    const [left, right] = beginnings(taken(UNEVEN, help)) as [number, number];
    const [leftNow, rightNow] = beginnings(UNEVEN) as [number, number];
    expect(right - left).toBeLessThan(rightNow - leftNow);
  });

  it('is end-needle selection for an all-over whose floats are mended, so that its carries lie at the edge', () => {
    expect(helps(BLANK_ROWS).map(({ intent }) => intent.code)).not.toContain('end-needles-on');
    const help = helpOf(HOOKED, 'end-needles-on');
    expect(help).toMatchObject({ intent: { patterns: [0] }, effect: { long: { before: 4, after: 0 } } });
    expect(help.effect.liftsAdded).toBeGreaterThan(0);
    expect(taken(HOOKED, help).patterns[0]).toMatchObject({ endNeedles: true });
  });
});

describe('the picture beside what would help', () => {
  it('is of the rows of the finding, with six needles around, as they are and as they would be', () => {
    const { before, after } = helpOf(COLUMNS, 'own-balls');
    // Eight needles between L5 and R5, on rows 2 to 4.
    expect([before.rows, before.needles]).toEqual([[2, 4], { first: -10, last: 9 }]);
    expect(after).toMatchObject({ rows: before.rows, needles: before.needles });
    expect(before.floats).toEqual([2, 3, 4].map((row) => ({ row, yarn: 1, first: -4, last: 3 })));
    expect(after.floats).toEqual([]);
    // Runs of one yarn: main, a column, main, a column, main.
    expect(before.stitches.filter(({ row }) => row === 2).map(({ yarn, first, last }) => [yarn, first, last])).toEqual([
      [0, -10, -6],
      [1, -5, -5],
      [0, -4, 3],
      [1, 4, 4],
      [0, 5, 9],
    ]);
  });

  it('shows of a high finding its lowest twelve rows', () => {
    const high = projectWith({
      motif: Array.from({ length: 20 }, () => 'X'),
      copies: [1, 1],
      stitches: 20,
      rows: 30,
      piece: FIVE,
      band: { rule: { kind: 'by-hand', first: [-5, 4] as Slot[] } },
    });
    const { before } = helpOf(high, 'own-balls');
    expect(before.rows[1] - before.rows[0]).toBe(11);
    expect(new Set(before.floats.map(({ row }) => row)).size).toBe(12);
  });
});
