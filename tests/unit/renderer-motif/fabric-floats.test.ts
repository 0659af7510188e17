/** Floats on the purl side of the Motif bench's fabric. */
import { describe, expect, it } from 'vitest';
import { gridFromText, straightCopies, type Copies, type Grid } from '@shared/grid/index.ts';
import type { CellPicture } from '../../../src-renderer/canvas/picture.ts';
import { Viewport } from '../../../src-renderer/canvas/viewport.ts';
import { fabricFloats, floatsSeen } from '../../../src-renderer/motif/drawing/fabric-floats.ts';

const GAUGE = { stitches: 28, rows: 40 };
const LIMIT = { stitches: 3, mm: null };
const pictureOf = (grid: Grid, copies: Copies | null): CellPicture => ({
  grid,
  colours: ['#5d7591', '#fbf7ea'],
  surround: copies && { copies, isMirrored: false, columns: 5, rows: 3, strength: 0.3 },
});
const seen = (grid: Grid, copies: Copies | null) =>
  floatsSeen(pictureOf(grid, copies), 0, GAUGE, LIMIT).map(
    ({ row, floats }) =>
      `${row}: ${floats.map(({ strand, first, last }) => `${strand.yarn} ${first}..${last}`).join(', ')}`,
  );

describe('floats on the fabric', () => {
  const grid = gridFromText(['#.....'], '.#');

  it('of a motif alone end where it does', () => {
    expect(seen(grid, null)).toEqual(['0: 0 0..0']);
    expect(seen(gridFromText(['#....#'], '.#'), null)).toEqual(['0: 0 0..0, 1 1..4, 0 5..5']);
  });

  it('go on from copy to copy, each told whole', () => {
    const row = '1 -5..-1, 0 0..0, 1 1..5, 0 6..6, 1 7..11';
    expect(seen(grid, straightCopies(grid))).toEqual([-3, -2, -1, 0, 1, 2, 3].map((at) => `${at}: ${row}`));
  });

  it('lie with the step of the copies', () => {
    const stepped: Copies = { ...straightCopies(grid), laid: 'courses', step: 2 };
    expect(seen(grid, stepped)[4]).toBe('1: 1 -9..-5, 0 -4..-4, 1 -3..1, 0 2..2, 1 3..7, 0 8..8, 1 9..13');
  });

  it('are counted in one copy: how many are over the limit, and how long the longest is', () => {
    const look = { raised: '#ffffff', warn: '#8a5200', ink: '#1d2330' };
    const on = { picture: pictureOf(grid, straightCopies(grid)), ground: 0, gauge: GAUGE, look };
    expect(fabricFloats({ ...on, limit: LIMIT })).toMatchObject({ over: 1, longest: 5 });
    expect(fabricFloats({ ...on, limit: { stitches: 5, mm: null } })).toMatchObject({ over: 0, longest: 5 });
  });

  it('are drawn in their yarn, from the stitch before to the stitch after', () => {
    const strokes: { colour: unknown; from: number[]; to: number[] }[] = [];
    let path: number[][] = [];
    const context = new Proxy({} as Record<string, unknown>, {
      get: (on, name) => {
        if (name === 'beginPath') return () => (path = []);
        if (name === 'moveTo') return (...at: number[]) => path.push(at);
        if (name === 'quadraticCurveTo') return (_x: number, _y: number, ...at: number[]) => path.push(at);
        if (name === 'stroke')
          return () =>
            path.length === 2 &&
            strokes.push({ colour: on['strokeStyle'], from: path[0] as number[], to: path[1] as number[] });
        if (name === 'measureText') return () => ({ width: 8 });
        return on[name as string] ?? (() => undefined);
      },
      set: (on, name, value) => ((on[name as string] = value), true),
    });
    const path2d = globalThis.Path2D;
    globalThis.Path2D = class {
      rect(): void {}
    } as unknown as typeof Path2D;
    try {
      const look = { raised: '#ffffff', warn: '#8a5200', ink: '#1d2330' };
      const floats = fabricFloats({
        picture: pictureOf(gridFromText(['#..#'], '.#'), null),
        ground: 0,
        gauge: GAUGE,
        limit: LIMIT,
        look,
      });
      // Cells 20 wide and 20 tall; the row's middle is 10 above its lower edge.
      floats.draw(context as unknown as CanvasRenderingContext2D, new Viewport(20, 20, 0, 100), {
        width: 200,
        height: 200,
      });
    } finally {
      globalThis.Path2D = path2d;
    }
    expect(strokes.filter(({ colour }) => colour === '#fbf7ea')).toEqual([
      { colour: '#fbf7ea', from: [20, 90], to: [60, 90] },
    ]);
    // Main floats behind the two stitches at the edges.
    expect(strokes.filter(({ colour }) => colour === '#5d7591').map(({ from, to }) => [from[0], to[0]])).toEqual([
      [0, 20],
      [60, 80],
    ]);
  });
});
