import { bandsOf, type Band } from '@shared/pattern/index.ts';
import { describe, expect, it } from 'vitest';
import { checkedPlan } from '../check/found.ts';
import { text } from './fabric-text.ts';
import { projectWith } from './pieces.ts';

const CORNER = ['XX..', 'X...', 'X..O'];

describe('the fabric on the needles', () => {
  it.each([
    { shows: 'needles', face: 'knit', lines: ['..XX....', '..X.....', '..X..O..'], why: 'drawn as on the needles' },
    {
      shows: 'worn',
      face: 'purl',
      lines: ['..XX....', '..X.....', '..X..O..'],
      why: 'the purl side is what the knitter sees',
    },
    { shows: 'worn', face: 'knit', lines: ['....XX..', '.....X..', '..O..X..'], why: 'the knit side is seen mirrored' },
  ] as const)('$shows, $face side out: $why', ({ shows, face, lines }) => {
    const plan = checkedPlan(
      projectWith({ motif: CORNER, copies: [1], stitches: 8, rows: 3, shows, piece: { finishedFace: face } }),
    );
    expect(text(plan.fabric)).toEqual(lines);
    expect(plan.groups[0]?.isMirrored).toBe(shows === 'worn' && face === 'knit');
  });

  it('repeats a copy across and up', () => {
    const plan = checkedPlan(
      projectWith({ motif: ['X..', '.X.'], copies: [2], group: { up: 2 }, stitches: 8, rows: 6 }),
    );
    expect(text(plan.fabric)).toEqual(['........', '.X..X...', '..X..X..', '.X..X...', '..X..X..', '........']);
  });

  it('takes the true repeat, or all drawn columns', () => {
    // The drawing holds two repeats of 2 and half a third; a copy is 2 wide, or 5.
    const motif = ['X.X.X'];
    const ofRepeat = checkedPlan(projectWith({ motif, copies: [1], stitches: 9, rows: 1 }));
    expect(ofRepeat.groups[0]?.copy.width).toBe(2);
    expect(text(ofRepeat.fabric)).toEqual(['....X....']);
    const whole = checkedPlan(projectWith({ motif, copies: [1], stitches: 9, rows: 1, band: { unit: 'whole' } }));
    expect(whole.groups[0]?.copy.width).toBe(5);
    expect(text(whole.fabric)).toEqual(['..X.X.X..']);
  });

  it('swaps the blank columns of a mirrored copy', () => {
    // Blank on the right as drawn, so on the left of the needles: the eye sees needles 3–4 of 2–4.
    const plan = checkedPlan(projectWith({ motif: ['XX.'], copies: [1], stitches: 6, rows: 1, shows: 'worn' }));
    const { block, figure } = plan.groups[0] as (typeof plan.groups)[number];
    expect(figure.first - block.first).toBe(1);
    expect(figure.last).toBe(block.last);
    expect(text(plan.fabric)).toEqual(['..XX..']);
  });

  it('mirrors one group and leaves its neighbour as it is', () => {
    const project = projectWith({ motif: CORNER, copies: [1, 1], stitches: 12, rows: 3 });
    const [band] = bandsOf(project) as [Band];
    const [one, other] = band.groups as [(typeof band.groups)[number], (typeof band.groups)[number]];
    const plan = checkedPlan({ ...project, patterns: [{ ...band, groups: [one, { ...other, isMirrored: true }] }] });
    // 4 stitches are left, the seam asks for 1, 2, 1; drawn to the right edge, `..O` has no blank column.
    expect(text(plan.fabric)).toEqual(['.XX......XX.', '.X........X.', '.X..O..O..X.']);
    expect(plan.groups.map(({ isMirrored }) => isMirrored)).toEqual([false, true]);
  });

  it('is cut off by the outline of a tapered piece', () => {
    // 8 stitches at first, one fewer at each edge every second row: 4 on the fourth, and one row straight.
    const plan = checkedPlan(
      projectWith({
        motif: ['X..XX..X', 'XXXXXXXX', 'X.X.XXXX', 'X.XXXX.X', 'XXX..XXX'],
        copies: [1],
        stitches: 8,
        rows: 5,
        piece: { shape: { kind: 'tapered', stitches: 8, stitchesAtTop: 4, rows: 5, straightRows: 1 } },
      }),
    );
    expect(text(plan.fabric)).toEqual(['  .XX.  ', '  XXXX  ', ' .X.XXX ', ' .XXXX. ', 'XXX..XXX']);
  });

  it('takes several bands, one above the other', () => {
    const project = projectWith({ motif: ['XX'], copies: [1], stitches: 4, rows: 4, band: { unit: 'whole' } });
    const [band] = bandsOf(project);
    if (!band) throw new Error('no band');
    const from = (row: number) => ({ ...band, position: { kind: 'from-row' as const, row } });
    const plan = checkedPlan({ ...project, patterns: [from(1), from(4)] });
    expect(text(plan.fabric)).toEqual(['.XX.', '....', '....', '.XX.']);
    expect(plan.groups.map(({ band: index, firstRow }) => [index, firstRow])).toEqual([
      [0, 1],
      [1, 4],
    ]);
  });

  it('is plain without bands', () => {
    const plan = checkedPlan({ ...projectWith({ motif: ['X'], copies: [1], stitches: 3, rows: 2 }), patterns: [] });
    expect(text(plan.fabric)).toEqual(['...', '...']);
    expect(plan.findings).toEqual([]);
    expect(plan.yarn.uses.map(({ role, stitches }) => [role, stitches])).toEqual([['main', 6]]);
  });
});
