import { describe, expect, it } from 'vitest';
import type { Side, Slot } from '@shared/bed/index.ts';
import { gathered, type Finding } from '@shared/check/index.ts';
import { edgesAt } from '@shared/piece/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { startGroup } from '@shared/project/index.ts';
import { stripOf } from '../../../src-renderer/piece/panel/strip.ts';
import { plannedOf } from '../../../src-renderer/piece/planned.ts';
import { onPiece, spotAfterKey } from '../../../src-renderer/piece/stage/cursor-keys.ts';
import { planOf, projectOf, twoGroups } from './projects.ts';

describe('a choice as a strip', () => {
  // Common practice, no source: 120 stitches, two groups of three 12-stitch copies, first column blank,
  // stand at L48 and R12; the eye sees 13 / 24 / 13, the blocks leave 12 / 23 / 13.
  const twelve = ['.###########'];
  const plan = planOf(projectOf(twelve, [3, 3], { piece: { shape: { kind: 'rectangle', stitches: 120, rows: 40 } } }));
  const choice = bandsOf(plan)[0]?.choices[0];
  const edges = edgesAt(plan.outline, 1);
  const strip = (judge: 'figure' | 'blocks', allowance = 0, width = 240) =>
    choice && stripOf(choice, judge, edges, { left: allowance, right: allowance }, width);

  it('numbers its spaces as the eye sees them, or by the blocks', () => {
    expect(strip('figure')?.spaces).toEqual([13, 24, 13]);
    expect(strip('blocks')?.spaces).toEqual([12, 23, 13]);
  });

  it('draws blocks and figures to scale', () => {
    // Two pixels a stitch: the left block from L48, 12 needles in, 36 wide; its figure without the blank column.
    expect(strip('figure')?.blocks[0]).toEqual({ x: 24, width: 72 });
    expect(strip('figure')?.figures[0]).toEqual({ x: 26, width: 70 });
  });

  it('shows what the seam takes at both edges', () => {
    expect(strip('figure')?.seams).toEqual([]);
    expect(strip('figure', 2)?.seams).toEqual([
      { x: 0, width: 4 },
      { x: 236, width: 4 },
    ]);
  });

  it('says what the seam leaves of each margin, where it takes any and there is so much', () => {
    expect(strip('figure')?.clear).toBeNull();
    expect(strip('figure', 2)?.clear).toEqual([11, 11]);
    expect(strip('figure', 14)?.clear).toBeNull();
  });

  it('writes widths beside spaces only where they have room', () => {
    expect(strip('figure')?.numbers.map(({ text }) => text)).toEqual(['13', '35', '24', '35', '13']);
    expect(strip('figure', 0, 70)?.numbers.map(({ text }) => text)).toEqual(['13', '24', '13']);
  });
});

describe('the piece while something stands in the way', () => {
  it('is planned whole where nothing does', () => {
    const { plan, problem } = plannedOf(twoGroups());
    expect(problem).toBeNull();
    expect(plan.groups).toHaveLength(2);
  });

  it.each([
    {
      name: 'groups wider than the piece',
      to: { band: { rule: { kind: 'seam' }, groups: [startGroup('m', 9)] } },
      code: 'groups-wider-than-piece',
    },
    {
      name: 'rows above its top',
      to: { band: { position: { kind: 'from-row', row: 6 } } },
      code: 'rows-outside-piece',
    },
    { name: 'a hem longer than it', to: { piece: { hemRows: 100 } }, code: 'hem-longer-than-piece' },
    {
      name: 'more increases than rows',
      to: { piece: { shape: { kind: 'tapered', stitches: 20, stitchesAtTop: 200, rows: 6, straightRows: 0 } } },
      code: 'shaping-impossible',
    },
  ] as const)('stays on the stage, plain, with $name', ({ to, code }) => {
    const { plan, problem } = plannedOf(twoGroups(to as Parameters<typeof twoGroups>[0]));
    expect(problem?.code).toBe(code);
    expect(plan.outline.rows).toBe(6);
    expect(plan.groups).toEqual([]);
  });

  it('gives the same plan for the same project', () => {
    const project = twoGroups();
    expect(plannedOf(project)).toBe(plannedOf(project));
  });
});

describe('the cursor on the piece', () => {
  const { outline } = planOf(
    projectOf(['#'], [1], {
      piece: { shape: { kind: 'tapered', stitches: 10, stitchesAtTop: 20, rows: 30, straightRows: 0 } },
    }),
  );
  const press = (needle: number, row: number, key: string, ctrlKey = false) =>
    spotAfterKey({ needle, row }, { key, ctrlKey }, outline);

  it.each([
    { key: 'ArrowLeft', from: [0, 5], to: [-1, 5] },
    { key: 'ArrowRight', from: [-1, 5], to: [0, 5] },
    { key: 'ArrowUp', from: [0, 5], to: [0, 6] },
    { key: 'ArrowDown', from: [0, 5], to: [0, 4] },
    { key: 'PageUp', from: [0, 5], to: [0, 15] },
    { key: 'PageDown', from: [0, 5], to: [0, 1] },
  ])('goes with $key from $from to $to', ({ key, from: [needle, row], to }) => {
    expect(press(needle as number, row as number, key)).toEqual({ needle: to[0], row: to[1] });
  });

  it('stops at the edges, which move with the rows', () => {
    expect(press(-5, 1, 'ArrowLeft')).toEqual({ needle: -5, row: 1 });
    expect(press(0, 30, 'ArrowUp')).toEqual({ needle: 0, row: 30 });
    // The widest needle of the top row is not there ten rows below.
    expect(press(-10, 30, 'PageDown')).toEqual({ needle: outline.first[19], row: 20 });
  });

  it('goes to the edges of the row, and to the first and the last stitch of all', () => {
    expect(press(0, 30, 'Home')).toEqual({ needle: -10, row: 30 });
    expect(press(0, 30, 'End')).toEqual({ needle: 9, row: 30 });
    expect(press(0, 20, 'Home', true)).toEqual({ needle: -5, row: 1 });
    expect(press(0, 20, 'End', true)).toEqual({ needle: 9, row: 30 });
  });

  it('leaves other keys alone', () => {
    expect(press(0, 5, 'a')).toBeNull();
  });

  it('comes back onto a piece that was made smaller', () => {
    expect(onPiece({ needle: 400, row: 999 }, outline)).toEqual({ needle: 9, row: 30 });
  });
});

describe('findings as they are read', () => {
  const floats = (role: 'main' | 'contrast', yarn: number, longest: number): Finding => ({
    code: 'long-floats',
    isBetweenGroups: false,
    role,
    yarn,
    longest,
    longestMm: longest * 3.5,
    count: 1,
    rows: [1, 1],
    needles: { first: 0 as Slot, last: 1 as Slot },
  });

  it('are one a kind, the worst place speaking for the others', () => {
    const read = gathered([
      floats('main', 0, 7),
      floats('main', 0, 13),
      floats('contrast', 1, 34),
      floats('main', 0, 9),
    ]);
    expect(read.map(({ finding, alike }) => ('longest' in finding ? [finding.longest, alike] : []))).toEqual([
      [34, 0],
      [13, 2],
    ]);
  });

  it('put what must be mended before what is good to know', () => {
    const lined: Finding = { ...floats('contrast', 1, 60), code: 'lined-floats' } as Finding;
    const read = gathered([lined, { code: 'no-set-up-row', rows: [1, 1] }, floats('main', 0, 7)]);
    expect(read.map(({ finding, isWarning }) => [finding.code, isWarning])).toEqual([
      ['no-set-up-row', true],
      ['long-floats', true],
      ['lined-floats', false],
    ]);
  });

  it('keep the two seams apart', () => {
    const inSeam = (side: Side): Finding => ({ code: 'figure-in-seam', side, stitches: 1, rows: [1, 2] });
    expect(gathered([inSeam('left'), inSeam('right')])).toHaveLength(2);
  });
});
