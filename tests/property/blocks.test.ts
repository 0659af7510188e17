import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mirrorAcross, mirrorUp, modulo, shiftAround, type Grid } from '@shared/grid/index.ts';
import {
  blocksOf,
  compareCuts,
  cutsOf,
  latticeOf,
  measure,
  trueRepeat,
  type Block,
} from '@shared/motif/repeat/index.ts';
import { drawing } from './drawings.ts';

type Laid = Pick<Block, 'laid' | 'width' | 'height' | 'step' | 'column' | 'row'>;

/** Which block of the plane a cell lies in: a name that no other block has. */
function blockAt({ laid, width, height, step, column, row }: Laid, x: number, y: number): string {
  if (laid === 'columns') {
    const across = Math.floor((x - column) / width);
    return `${across} ${Math.floor((y - row - across * step) / height)}`;
  }
  const up = Math.floor((y - row) / height);
  return `${Math.floor((x - column - up * step) / width)} ${up}`;
}

/**
 * The definition, pair by pair: on one tile of the plane, every figure cell with
 * each of its eight neighbours, counted where the two lie in different blocks,
 * over the blocks that a tile holds.
 */
function cutsByEye(tile: Grid, ground: number, block: Laid): { cuts: number; corners: number } {
  const isFigure = (x: number, y: number): boolean =>
    tile.cells[modulo(y, tile.height) * tile.width + modulo(x, tile.width)] !== ground;
  const count = (pairs: readonly (readonly [number, number])[]): number => {
    let parted = 0;
    for (let y = 0; y < tile.height; y++) {
      for (let x = 0; x < tile.width; x++) {
        for (const [dx, dy] of pairs) {
          if (!isFigure(x, y) || !isFigure(x + dx, y + dy)) continue;
          if (blockAt(block, x, y) !== blockAt(block, x + dx, y + dy)) parted++;
        }
      }
    }
    return parted / ((tile.width * tile.height) / (block.width * block.height));
  };
  return {
    cuts: count([
      [1, 0],
      [0, 1],
    ]),
    corners: count([
      [1, 1],
      [1, -1],
    ]),
  };
}

/** A tile of `times` courses, each the one below it moved by so much to the right: stepped, or straight where the step is 0. */
const steppedTile: fc.Arbitrary<Grid> = fc
  .tuple(drawing({ mostWidth: 6, mostHeight: 4 }), fc.nat(5))
  .map(([cell, wanted]) => {
    const step = wanted % cell.width;
    let times = 1;
    while ((times * step) % cell.width !== 0) times++;
    const { width, height } = { width: cell.width, height: cell.height * times };
    const cells = Uint8Array.from({ length: width * height }, (_, at) => {
      const row = Math.floor(at / width);
      const column = modulo((at % width) - step * Math.floor(row / cell.height), width);
      return cell.cells[(row % cell.height) * width + column] as number;
    });
    return { width, height, cells };
  });

/** The blocks of the smallest tile of the plane that `grid` fills, its copies laid straight. */
function blocksOfPlane(grid: Grid): readonly Block[] {
  const twice = { width: grid.width * 2, height: grid.height * 2, cells: new Uint8Array(grid.cells.length * 4) };
  for (let at = 0; at < twice.cells.length; at++) {
    const row = Math.floor(at / twice.width) % grid.height;
    twice.cells[at] = grid.cells[row * grid.width + (at % grid.width)] as number;
  }
  const { width, height } = trueRepeat(twice);
  const cells = new Uint8Array(width * height);
  for (let at = 0; at < cells.length; at++)
    cells[at] = twice.cells[Math.floor(at / width) * twice.width + (at % width)] as number;
  const unit = { width, height, cells };
  return blocksOf(unit, latticeOf(unit), 0);
}

const told = (blocks: readonly Block[]): object[] =>
  blocks.map(({ laid, width, height, cuts, corners }) => ({ laid, width, height, cuts, corners }));

describe('what the borders of blocks cut', () => {
  it('is what is counted pair by pair on the plane, wherever a block starts', () => {
    fc.assert(
      fc.property(steppedTile, fc.nat(20), fc.nat(20), (tile, column, row) => {
        for (const block of blocksOf(tile, latticeOf(tile), 0)) {
          expect(cutsOf(tile, 0, block, column, row)).toEqual(cutsByEye(tile, 0, { ...block, column, row }));
        }
      }),
      { numRuns: 400, seed: 61 },
    );
  });

  it('is told of the start that cuts least, and of the way that cuts least first', () => {
    fc.assert(
      fc.property(steppedTile, (tile) => {
        const blocks = blocksOf(tile, latticeOf(tile), 0);
        for (const block of blocks) {
          expect(cutsOf(tile, 0, block, block.column, block.row)).toEqual({ cuts: block.cuts, corners: block.corners });
          for (let row = 0; row < tile.height; row++) {
            for (let column = 0; column < tile.width; column++) {
              expect(compareCuts(cutsOf(tile, 0, block, column, row), block)).toBeGreaterThanOrEqual(0);
            }
          }
        }
        const [first, second] = blocks;
        if (first && second) expect(compareCuts(first, second)).toBeLessThanOrEqual(0);
      }),
      { numRuns: 200, seed: 62 },
    );
  });

  it('fills the plane with blocks of one size, which repeat the picture', () => {
    fc.assert(
      fc.property(steppedTile, (tile) => {
        const lattice = latticeOf(tile);
        for (const { laid, width, height, step } of blocksOf(tile, lattice, 0)) {
          expect(width * height).toBe(lattice.across * lattice.rows);
          const [right, up] = laid === 'columns' ? [width, step] : [step, height];
          expect(shiftAround(tile, right, up)).toEqual(tile);
          expect(shiftAround(tile, laid === 'columns' ? 0 : width, laid === 'columns' ? height : 0)).toEqual(tile);
        }
      }),
      { numRuns: 200, seed: 63 },
    );
  });
});

describe('the blocks told first', () => {
  it('are the same wherever the drawing of a repeat begins', () => {
    fc.assert(
      fc.property(steppedTile, fc.nat(20), fc.nat(20), (tile, columns, rows) => {
        expect(told(blocksOfPlane(shiftAround(tile, columns, rows)))).toEqual(told(blocksOfPlane(tile)));
      }),
      { numRuns: 300, seed: 64 },
    );
  });

  it('are the same however many whole repeats are drawn', () => {
    fc.assert(
      fc.property(steppedTile, fc.integer({ min: 2, max: 3 }), fc.integer({ min: 2, max: 3 }), (tile, across, up) => {
        const [width, height] = [tile.width * across, tile.height * up];
        const cells = Uint8Array.from(
          { length: width * height },
          (_, at) => tile.cells[(Math.floor(at / width) % tile.height) * tile.width + (at % tile.width)] as number,
        );
        const { step, blocks } = measure({ width, height, cells }, 0);
        if (step) expect(blocks).toEqual(blocksOfPlane(tile));
        else expect(blocks).toEqual([]);
      }),
      { numRuns: 300, seed: 65 },
    );
  });

  it.each([
    ['left to right', mirrorAcross],
    ['top to bottom', mirrorUp],
  ])('are the mirrored ones of a drawing mirrored %s', (_, mirror) => {
    fc.assert(
      fc.property(steppedTile, (tile) => {
        const there = blocksOfPlane(tile);
        const mirrored = blocksOfPlane(mirror(tile));
        expect(told(mirrored)).toEqual(told(there));
        mirrored.forEach((block, at) => {
          const round = block.laid === 'courses' ? block.width : block.height;
          expect(block.step).toBe(modulo(-(there[at] as Block).step, round));
        });
      }),
      { numRuns: 300, seed: 66 },
    );
  });
});
