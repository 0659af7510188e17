import { describe, expect, it } from 'vitest';
import { finish, findGrid, photoOf, proposeGrid, rectangle, type Picture } from '@shared/reading/index.ts';
import { hinted } from '../../../src-shared/reading/count-candidates.ts';
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

  it('on bent paper, whose middle bulges beyond the straight line between two corners', () => {
    const [columns, rows, cell] = [50, 60, 12];
    for (const bulge of [-1.5, -0.8, 0.8, 1.5]) {
      const bent = pictureOf(columns * cell, rows * cell, (x, y) => {
        const along = x / (columns * cell);
        const down = y / (1 + (bulge * 4 * along * (1 - along)) / rows);
        return x % cell < 1 || down % cell < 1 ? 120 : 240;
      });
      const proposal = finish(findGrid(bent));
      expect([proposal.columns?.count, proposal.rows?.count]).toEqual([columns, rows]);
    }
  });

  it('halves, and doubts, a count that makes cells flat and comes from both sides of bars', () => {
    const cell = 12;
    const random = seeded(5);
    const barred = pictureOf(60 * cell, 50 * cell, (x, y) => {
      const isBar = x % cell >= 2 && x % cell < 10 && y % cell >= 3 && y % cell < 9;
      const isLine = x % cell < 1 || (y % cell < 1 && x % 60 < 12);
      return (isBar ? 60 : isLine ? 150 : 235) + 4 * normal(random);
    });
    const proposal = finish(findGrid(barred));
    expect([proposal.columns?.count, proposal.rows?.count]).toEqual([60, 50]);
    expect(proposal.rows?.confidence).toBeLessThan(0.5);
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

describe('a count in one direction that the other one bears out', () => {
  const peak = (times: number, strength: number, height: number) => ({ times, strength, height });
  const [ten] = [peak(10, 100, 8)];
  const across = { direction: 'across', edges: [], length: 100, all: [ten], peaks: [ten], chosen: ten } as const;
  const up = (all: readonly ReturnType<typeof peak>[]) => ({ direction: 'up', edges: [], length: 120, all }) as const;

  it('is taken though it stands out less, where it alone makes cells of a likely shape', () => {
    expect(hinted(up([peak(3, 90, 1.2), peak(12, 50, 2.7), peak(20, 30, 1.3)]), across)?.chosen.times).toBe(12);
  });

  it.each([
    ['too low', [peak(12, 50, 2.2)]],
    ['near to another', [peak(12, 50, 2.7), peak(17, 45, 2.6)]],
    ['of cells that nobody knits', [peak(60, 50, 2.7)]],
    ['nothing', []],
  ])('is none where it is %s', (_, all) => {
    expect(hinted(up(all), across)).toBeNull();
  });

  it('is none where the other is none', () => {
    expect(hinted(up([peak(12, 50, 2.7)]), null)).toBeNull();
  });
});
