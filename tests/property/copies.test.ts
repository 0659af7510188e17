/** Copies that lie straight, in moved courses or in moved columns, against copies laid down one by one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyPatch,
  gridToText,
  makeGrid,
  mirrorAcross,
  placeInCopy,
  placesInCopies,
  type Cell,
  type CellBox,
  type Copies,
  type Grid,
} from '@shared/grid/index.ts';
import { repeatedCell } from '../../src-renderer/canvas/picture.ts';
import { halfStep, withCopies } from '../../src-renderer/motif/editing/following.ts';
import { strokeChange } from '../../src-renderer/motif/editing/strokes.ts';
import { drawnMotif } from '../unit/renderer-motif/drawn-motif.ts';
import { drawing } from './drawings.ts';

const laid = fc.constantFrom('straight' as const, 'courses' as const, 'columns' as const);
const copies: fc.Arbitrary<Copies> = fc
  .record({ laid, width: fc.integer({ min: 1, max: 6 }), height: fc.integer({ min: 1, max: 6 }), step: fc.nat(9) })
  .map((made) => ({ ...made, step: made.laid === 'straight' ? 0 : made.step }));
const cell = fc.record({ column: fc.integer({ min: -12, max: 18 }), row: fc.integer({ min: -12, max: 18 }) });

/** Copies enough to cover all cells that are asked about. */
const FAR = 200;
const AREA: CellBox = { column: -12, row: -12, width: 31, height: 31 };

/** Lays copies down one by one, the way a stamp would, and gives the place in its copy of every cell of the area. */
function laidDown({ laid: way, width, height, step }: Copies): Map<string, Cell> {
  const places = new Map<string, Cell>();
  for (let across = -FAR; across <= FAR; across++) {
    for (let up = -FAR; up <= FAR; up++) {
      const left = across * width + (way === 'courses' ? up * step : 0);
      const bottom = up * height + (way === 'columns' ? across * step : 0);
      if (left + width <= AREA.column || left >= AREA.column + AREA.width) continue;
      if (bottom + height <= AREA.row || bottom >= AREA.row + AREA.height) continue;
      for (let row = 0; row < height; row++) {
        for (let column = 0; column < width; column++) places.set(`${left + column},${bottom + row}`, { column, row });
      }
    }
  }
  return places;
}

/** A grid of that size filled with copies of one drawing. */
function tiled(copy: Grid, way: Copies, width: number, height: number): Grid {
  const places = laidDown(way);
  const cells = Uint8Array.from({ length: width * height }, (_, index) => {
    const place = places.get(`${index % width},${Math.floor(index / width)}`) as Cell;
    return copy.cells[place.row * copy.width + place.column] as number;
  });
  return { width, height, cells };
}

describe('copies that fill the plane', () => {
  it('have every cell where they would lie if laid down one by one', () => {
    fc.assert(
      fc.property(copies, (way) => {
        const places = laidDown(way);
        for (let row = AREA.row; row < AREA.row + AREA.height; row++) {
          for (let column = AREA.column; column < AREA.column + AREA.width; column++) {
            expect(placeInCopy(way, { column, row })).toEqual(places.get(`${column},${row}`));
          }
        }
      }),
      { numRuns: 30 },
    );
  });

  it('lie straight with a step of 0, whichever way they are moved', () => {
    fc.assert(
      fc.property(copies, cell, (way, at) => {
        expect(placeInCopy({ ...way, step: 0 }, at)).toEqual(placeInCopy({ ...way, laid: 'straight', step: 0 }, at));
      }),
    );
  });

  it('are back where they were two columns on in a half drop, and two courses up as bricks', () => {
    fc.assert(
      fc.property(fc.nat(5), fc.nat(5), cell, (across, up, at) => {
        const size = { width: 2 * across + 2, height: 2 * up + 2 };
        for (const way of ['columns', 'courses'] as const) {
          const half = withCopies({ laid: 'straight', step: 0, ...size }, { laid: way });
          const onceOn = (times: number): Cell =>
            way === 'columns'
              ? { column: at.column + times * size.width, row: at.row }
              : { column: at.column, row: at.row + times * size.height };
          expect(placeInCopy(half, onceOn(2))).toEqual(placeInCopy(half, at));
          expect(placeInCopy(half, onceOn(1))).not.toEqual(placeInCopy(half, at));
        }
      }),
    );
  });

  it('have a box once in each copy that reaches into what is looked at', () => {
    fc.assert(
      fc.property(copies, fc.nat(5), fc.nat(5), fc.nat(3), fc.nat(3), (way, column, row, more, higher) => {
        fc.pre(column < way.width && row < way.height);
        const box = { column, row, width: 1 + more, height: 1 + higher };
        const area = { column: -4, row: -3, width: 12, height: 9 };
        const expected: string[] = [];
        for (let r = area.row - box.height + 1; r < area.row + area.height; r++) {
          for (let c = area.column - box.width + 1; c < area.column + area.width; c++) {
            const place = placeInCopy(way, { column: c, row: r });
            if (place.column === column && place.row === row) expected.push(`${c},${r}`);
          }
        }
        const found = [...placesInCopies(way, box, area)].map((at) => `${at.column},${at.row}`);
        expect(found.sort()).toEqual(expected.sort());
      }),
    );
  });

  it('show the same on the other side of the fabric, mirrored', () => {
    fc.assert(
      fc.property(copies, drawing({ mostWidth: 9, mostHeight: 9 }), cell, (way, grid, at) => {
        fc.pre(way.width <= grid.width && way.height <= grid.height);
        const shown = (of: Grid, isMirrored: boolean, { column, row }: Cell): number => {
          const surround = { copies: way, isMirrored, columns: 5, rows: 3, strength: 0.3 };
          const from = repeatedCell(of, surround, { column, row });
          return of.cells[from.row * of.width + from.column] as number;
        };
        const turned = { column: grid.width - 1 - at.column, row: at.row };
        expect(shown(mirrorAcross(grid), true, turned)).toBe(shown(grid, false, at));
      }),
    );
  });
});

describe('drawing while all copies follow', () => {
  const stroke = fc.array(cell, { minLength: 1, maxLength: 6 });

  it('in stepped copies is drawing in one and laying its copies then', () => {
    fc.assert(
      fc.property(
        copies,
        fc.nat(6),
        fc.nat(6),
        stroke,
        fc.infiniteStream(fc.nat(1)),
        (way, more, higher, at, yarns) => {
          const [width, height] = [way.width + more, way.height + higher];
          const copy = makeGrid(way.width, way.height);
          copy.cells.forEach((_, index) => (copy.cells[index] = yarns.next().value));
          const following = { symmetry: 'none' as const, tile: way };
          const drawnIn = (grid: Grid): Grid => {
            const change = strokeChange(drawnMotif(grid), 'draw', 2, at, following);
            return change ? applyPatch(grid, change.edits[0].patch) : grid;
          };
          // In one copy alone: each cell of the stroke where it lies there.
          const once = { ...copy, cells: copy.cells.slice() };
          const places = laidDown(way);
          for (const each of at) {
            const place = places.get(`${each.column},${each.row}`) as Cell;
            once.cells[place.row * way.width + place.column] = 2;
          }
          const text = (grid: Grid): string[] => gridToText(grid, '.#X');
          expect(text(drawnIn(tiled(copy, way, width, height)))).toEqual(text(tiled(once, way, width, height)));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('keeps a step by half when the copy gets another size, and any other as far as it goes', () => {
    const half = withCopies({ laid: 'straight', width: 6, height: 8, step: 0 }, { laid: 'columns' });
    expect(half.step).toBe(4);
    expect(withCopies(half, { height: 12 }).step).toBe(6);
    const other = withCopies(half, { step: 3 });
    expect(withCopies(other, { height: 12 }).step).toBe(3);
    expect(withCopies(other, { height: 2 }).step).toBe(1);
    expect(withCopies(other, { laid: 'courses' })).toMatchObject({
      laid: 'courses',
      step: halfStep({ ...half, laid: 'courses' }),
    });
    expect(withCopies(other, { laid: 'straight' }).step).toBe(0);
  });
});
