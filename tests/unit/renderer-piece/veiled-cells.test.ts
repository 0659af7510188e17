import { describe, expect, it } from 'vitest';
import { makePlan } from '@shared/plan/index.ts';
import { purlSideOf } from '@shared/plan/purl-side/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { veiledPicture } from '../../../src-renderer/piece/purl/veiled-cells.ts';
import { COLUMNS } from '../check/found.ts';

describe('the purl side from afar', () => {
  it('mixes into each stitch three tenths of the yarn that lies uppermost over it, and keeps what lies bare', () => {
    const plan = makePlan(pieceIn(COLUMNS));
    const { grid, colours } = veiledPicture(plan.fabric, purlSideOf(plan, 0), ['#000000', '#ffffff', '#20302a']);
    const row = (at: number): string[] =>
      [...grid.cells.subarray((at - 1) * grid.width, at * grid.width)].map((cell) => colours[cell] as string);
    // 255 × 0.3 = 76.5, up to 77; the other way round 178.5, up to 179.
    const [bare, under, figure] = ['#000000', '#4d4d4d', '#b3b3b3'];
    expect(row(1)).toEqual(Array(20).fill(bare));
    expect(row(2)).toEqual([
      ...Array<string>(5).fill(bare),
      figure,
      ...Array<string>(8).fill(under),
      figure,
      ...Array<string>(5).fill(bare),
    ]);
  });
});
