import { describe, expect, it } from 'vitest';
import { finish, findGrid, photoOf, proposeGrid, rectangle, type Picture } from '@shared/reading/index.ts';
import { normal, photograph, seeded, type ChartStyle } from './chart-photo.ts';
import { blobs } from './motifs.ts';

const PAPER = [235, 230, 220] as const;
const INK = [60, 55, 60] as const;
const straightOn = { width: 440, height: 440, roll: 0, tilt: 0, pan: 0 };

function counts(style: ChartStyle, columns: number, rows: number, seed = 1): (number | undefined)[] {
  const { picture, corners } = photograph(blobs(columns, rows, 2, seed), style, straightOn, { blur: 0.7, noise: 3 });
  const proposal = finish(proposeGrid(photoOf(picture), corners));
  return [proposal.columns?.count, proposal.rows?.count];
}

function pictureOf(width: number, height: number, value: (x: number, y: number) => number): Picture {
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rgba.fill(value(x, y), (y * width + x) * 4, (y * width + x) * 4 + 3);
  }
  return { width, height, rgba };
}

describe('counting columns and rows', () => {
  it.each<{ paper: string; style: ChartStyle }>([
    { paper: 'fine lines', style: { colours: [PAPER, INK], line: 0.06 } },
    { paper: 'faint lines', style: { colours: [PAPER, INK], line: 0.08, lineColour: [215, 210, 205] } },
    { paper: 'thick lines', style: { colours: [PAPER, INK], line: 0.25, lineColour: [80, 80, 80] } },
    { paper: 'broken lines', style: { colours: [PAPER, INK], line: 0.08, broken: 0.4 } },
    { paper: 'every fifth line thicker', style: { colours: [PAPER, INK], line: 0.08, thickEvery: 5 } },
    { paper: 'every tenth line thicker', style: { colours: [PAPER, INK], line: 0.06, thickEvery: 10 } },
    { paper: 'no lines, only cells that meet', style: { colours: [PAPER, INK], line: 0 } },
    { paper: 'dots and lines', style: { colours: [PAPER, INK], line: 0.06, mark: 'dot' } },
    { paper: 'holes and no lines', style: { colours: [PAPER, INK], line: 0, mark: 'hole', surround: [40, 40, 40] } },
  ])('on $paper', ({ style }) => {
    expect(counts(style, 30, 40)).toEqual([30, 40]);
    expect(counts(style, 48, 36)).toEqual([48, 36]);
  });

  it('on lined paper with eight stitches only, and with a motif that repeats', () => {
    expect(counts({ colours: [PAPER, INK], line: 0.06 }, 8, 10)).toEqual([8, 10]);
    const repeated = blobs(8, 6, 2, 4);
    const grid = {
      width: 48,
      height: 36,
      cells: Uint8Array.from({ length: 48 * 36 }, (_, i) => {
        const row = Math.floor(i / 48);
        return repeated.cells[(row % 6) * 8 + ((i % 48) % 8)] as number;
      }),
    };
    const { picture, corners } = photograph(grid, { colours: [PAPER, INK], line: 0.06 }, straightOn, { noise: 3 });
    const proposal = finish(proposeGrid(photoOf(picture), corners));
    expect([proposal.columns?.count, proposal.rows?.count]).toEqual([48, 36]);
  });

  it('proposes nothing where there is nothing to count', () => {
    const random = seeded(3);
    const nothings = [
      pictureOf(400, 300, () => 230),
      pictureOf(400, 300, (x, y) => 120 + 0.2 * x + 0.1 * y),
      pictureOf(400, 300, () => 128 + 30 * normal(random)),
      // Hills and one dark shape, as a snapshot has.
      pictureOf(400, 300, (x, y) => (Math.hypot(x - 150, y - 120) < 60 ? 50 : 140 + 60 * Math.sin(x / 97 + y / 61))),
    ];
    for (const picture of nothings) {
      expect(finish(findGrid(picture))).toEqual({ columns: null, rows: null });
    }
  });

  it('says of stripes that run one way that the other way was not found', () => {
    const proposal = finish(findGrid(pictureOf(480, 360, (x) => (x % 20 < 2 ? 90 : 230))));
    expect(proposal.columns?.count).toBe(24);
    expect(proposal.columns?.confidence).toBeLessThan(0.5);
    expect(proposal.rows).toBeNull();
  });

  it('counts the same however large the picture is', () => {
    for (const scale of [8, 14, 40]) {
      const lined = pictureOf(24 * scale, 30 * scale, (x, y) => (x % scale < 1 || y % scale < 1 ? 120 : 240));
      const photo = photoOf(lined);
      const proposal = finish(proposeGrid(photo, rectangle(24 * scale, 30 * scale)));
      expect([proposal.columns?.count, proposal.rows?.count]).toEqual([24, 30]);
    }
  });
});
