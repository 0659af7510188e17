import { describe, expect, it } from 'vitest';
import { OUTSIDE } from '@shared/fabric/index.ts';
import { gridFromText, gridToText } from '@shared/grid/index.ts';
import { draggedGrid } from '../../../src-renderer/piece/drawing/dragged-cells.ts';

const FABRIC = gridFromText(['......', '.##...', '.#.#..', '......'], '.#');
const GROUP = { column: 1, row: 1, width: 2, height: 2 };

describe('groups in the hand', () => {
  it('leave plain main and lie where they are carried, their ground with them', () => {
    const dragged = draggedGrid(FABRIC, [{ from: GROUP, to: { column: 3, row: 0 } }], 0);
    expect(gridToText(dragged, '.#')).toEqual(['......', '......', '...##.', '...#..']);
    // Only the picture changes.
    expect(gridToText(FABRIC, '.#')).toEqual(['......', '.##...', '.#.#..', '......']);
  });

  it('lie over their own old place, and none wipes out another', () => {
    const dragged = draggedGrid(
      FABRIC,
      [
        { from: { ...GROUP, width: 1 }, to: { column: 2, row: 1 } },
        { from: { ...GROUP, column: 2, width: 1 }, to: { column: 4, row: 2 } },
      ],
      0,
    );
    expect(gridToText(dragged, '.#')).toEqual(['....#.', '..#...', '..##..', '......']);
  });

  it('are seen only where there is fabric', () => {
    const cells = FABRIC.cells.slice();
    // The last needle stands beside the piece on the third row.
    cells[2 * 6 + 5] = OUTSIDE;
    const dragged = draggedGrid({ ...FABRIC, cells }, [{ from: GROUP, to: { column: 4, row: 1 } }], 0);
    expect(dragged.cells[2 * 6 + 5]).toBe(OUTSIDE);
    expect(dragged.cells[2 * 6 + 4]).toBe(1);
    expect(dragged.cells[1 * 6 + 4]).toBe(1);
  });
});
