import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  gridFromText,
  gridToText,
  makeGrid,
  mirrorAcross,
  mirrorUp,
  quarterTurn,
  straightCopies,
  applyPatch,
  type Cell,
} from '@shared/grid/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import { neighboursOf, nextSymmetry, SYMMETRIES, tileToFollow } from '../../../src-renderer/motif/editing/following.ts';
import { strokeChange } from '../../../src-renderer/motif/editing/strokes.ts';
import { TOOLS, type Drawing } from '../../../src-renderer/motif/tools/index.ts';
import { drawnMotif } from './drawn-motif.ts';

const drawing = (width: number, height: number, to: Partial<Drawing['following']>, isFilled = false): Drawing => ({
  motif: drawnMotif(makeGrid(width, height)),
  colour: 1,
  ground: 0,
  following: { symmetry: 'none', tile: null, ...to },
  isFilled,
  fillsEverywhere: false,
});

const size = fc.integer({ min: 1, max: 12 });
const cell = fc.record({ column: fc.integer({ min: -2, max: 13 }), row: fc.integer({ min: -2, max: 13 }) });

describe('what follows the tool', () => {
  it('keeps an empty motif symmetric, whatever shape is drawn', () => {
    const alike = {
      'left-right': mirrorAcross,
      'up-down': mirrorUp,
      both: (grid: ReturnType<typeof makeGrid>) => mirrorAcross(mirrorUp(grid)),
      turning: (grid: ReturnType<typeof makeGrid>) => (grid.width === grid.height ? quarterTurn(grid) : grid),
    };
    fc.assert(
      fc.property(
        fc.constantFrom('left-right' as const, 'up-down' as const, 'both' as const, 'turning' as const),
        fc.constantFrom('line' as const, 'rectangle' as const, 'ellipse' as const),
        size,
        size,
        cell,
        cell,
        (symmetry, name, width, height, from, to) => {
          const tool = TOOLS[name];
          if (tool.kind !== 'span') throw new Error('Not a shape');
          const asked = drawing(width, height, { symmetry });
          const change = tool.change(asked, from, to);
          if (!change) return;
          const grid = applyPatch(asked.motif.grid, change.edits[0].patch);
          expect(gridToText(alike[symmetry](grid), '.#')).toEqual(gridToText(grid, '.#'));
        },
      ),
    );
  });

  it('keeps all copies alike, even those that the edge cuts', () => {
    fc.assert(
      fc.property(size, size, size, size, cell, (width, height, tileWidth, tileHeight, at) => {
        const { draw } = TOOLS;
        if (draw.kind !== 'stroke') throw new Error('Not a stroke');
        const asked = drawing(width, height, {
          symmetry: 'both',
          tile: straightCopies({ width: tileWidth, height: tileHeight }),
        });
        const change = draw.change(asked, [at]);
        if (!change) return;
        const { cells } = applyPatch(asked.motif.grid, change.edits[0].patch);
        cells.forEach((colour, index) => {
          const column = index % width;
          const row = Math.floor(index / width);
          expect(colour).toBe(cells[(row % tileHeight) * width + (column % tileWidth)]);
        });
      }),
    );
  });

  it('starts with the repeat that is drawn, or with all of an empty motif', () => {
    expect(tileToFollow(measure(gridFromText(['#..#..'], '.#'), 0))).toEqual(straightCopies({ width: 3, height: 1 }));
    expect(tileToFollow(measure(makeGrid(6, 4), 0))).toEqual(straightCopies({ width: 6, height: 4 }));
  });

  it('goes round all symmetries', () => {
    expect(nextSymmetry('turning')).toBe('none');
    expect(SYMMETRIES.map(nextSymmetry).sort()).toEqual([...SYMMETRIES].sort());
  });

  const drawn = (rows: readonly string[], to: Partial<Drawing['following']>, cells: readonly Cell[]): string[] => {
    const grid = gridFromText(rows, '.#');
    const change = strokeChange(drawnMotif(grid), 'draw', 1, cells, { symmetry: 'none', tile: null, ...to });
    return gridToText(change ? applyPatch(grid, change.edits[0].patch) : grid, '.#');
  };
  const over = [
    { column: 3, row: 1 },
    { column: 4, row: 2 },
    { column: 5, row: 3 },
  ];

  it('comes in on the other side where all copies follow, in the place that the step gives, and not where none does', () => {
    const empty = ['....', '....', '....'];
    expect(drawn(empty, {}, over)).toEqual(['....', '...#', '....']);
    const tile = straightCopies({ width: 4, height: 3 });
    expect(drawn(empty, { tile }, over)).toEqual(['#...', '...#', '.#..']);
    // The second column of copies stands one row higher: what is drawn in its row 2 is row 1 of the copy.
    expect(drawn(empty, { tile: { ...tile, laid: 'columns', step: 1 } }, over)).toEqual(['.#..', '#..#', '....']);
    // The second course stands two stitches to the right.
    expect(drawn(empty, { tile: { ...tile, laid: 'courses', step: 2 } }, over)).toEqual(['#...', '...#', '...#']);
  });

  it('draws in a copy around the chart what that copy repeats', () => {
    const rows = ['.#.#', '#.#.', '.#.#'];
    const around = neighboursOf(gridFromText(rows, '.#'), null, null);
    expect(around).toEqual(straightCopies({ width: 2, height: 3 }));
    expect(drawn(rows, { around }, [{ column: -2, row: -3 }])).toEqual(['.#.#', '#.#.', '##.#']);
    expect(drawn(rows, {}, [{ column: -2, row: -3 }])).toEqual(rows);
  });

  it('shows the copies around a drawing as it is, whatever was measured of it before', () => {
    const empty = makeGrid(4, 2);
    expect(neighboursOf(empty, null, measure(empty, 0))).toEqual(straightCopies({ width: 1, height: 1 }));
    // A shape is pulled over it.
    expect(neighboursOf(gridFromText(['#...', '.#..'], '.#'), null, null)).toEqual(
      straightCopies({ width: 4, height: 2 }),
    );
    const tile = { ...straightCopies({ width: 9, height: 2 }), laid: 'courses' as const, step: 1 };
    expect(neighboursOf(empty, tile, null)).toEqual({ ...tile, width: 4 });
  });
});
