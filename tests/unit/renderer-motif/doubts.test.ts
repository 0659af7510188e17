/** Which cells of a chart that was read are to be settled, as its motif is worked on. */
import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { changeOf, paintCells, projectAround, redraw, START_YARNS } from '@shared/project/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import { Doubts } from '../../../src-renderer/motif/doubts/doubts.ts';
import { WHOLE } from '../../../src-renderer/motif/editing/whole.ts';
import { Session } from '../../../src-renderer/session/session.ts';

const GRID = gridFromText(['..#.', '.##.', '..#.'], '.#');
const straight = { width: 4, height: 3, rgba: new Uint8ClampedArray(48) };
const PLACE = { cursor: { column: 0, row: 0 }, selected: null, colour: 1, ground: 0 };

/** A motif just read, its cells 1 and 6 in doubt. */
function read(): { session: Session; doubts: Doubts; motif: MotifId } {
  const session = new Session(projectAround('chart', 'chart', GRID, 0, 'worn', START_YARNS), true);
  const doubts = new Doubts(session);
  const motif = session.motif.id;
  session.change(changeOf('read-chart', redraw(session.motif, { ...GRID, cells: GRID.cells.with(0, 1) })));
  const cells = [
    { at: 1, sure: 0.4 },
    { at: 6, sure: 0.2 },
  ];
  doubts.keep({ motif, width: 4, height: 3, doubts: cells, straight });
  return { session, doubts, motif };
}
const places = (doubts: Doubts): readonly (readonly [number, number])[] =>
  (doubts.now?.cells ?? []).map(({ cell }) => [cell.column, cell.row] as const);
const paint = (session: Session, at: number, to: number): void =>
  session.change(changeOf('draw', paintCells(session.motif.id, { at: Uint32Array.of(at), to: Uint8Array.of(to) })));

describe('cells in doubt', () => {
  it('are there after reading, and gone with it when it is taken back', () => {
    const { session, doubts } = read();
    expect(places(doubts)).toEqual([
      [1, 0],
      [2, 1],
    ]);
    session.undo();
    expect(doubts.now).toBeNull();
    paint(session, 6, 0);
    expect(doubts.now).toBeNull();
    session.undo();
    session.redo();
    expect(doubts.now).toBeNull();
  });

  it('come back when the reading is done again', () => {
    const { session, doubts } = read();
    session.undo();
    session.redo();
    expect(places(doubts)).toHaveLength(2);
  });

  it('are settled by paint, open again when it is taken back, and settled when it is done again', () => {
    const { session, doubts } = read();
    paint(session, 1, 1);
    expect(places(doubts)).toEqual([[2, 1]]);
    paint(session, 1, 0);
    expect(places(doubts), 'painted back to what was read: somebody has looked at it').toEqual([[2, 1]]);
    session.undo();
    session.undo();
    expect(places(doubts)).toHaveLength(2);
    session.redo();
    expect(places(doubts)).toEqual([[2, 1]]);
  });

  it('are right as read in every state of the project, until that is taken back', () => {
    const { session, doubts } = read();
    paint(session, 11, 1);
    doubts.takeAsRead(0);
    expect(places(doubts)).toEqual([[2, 1]]);
    session.undo();
    expect(places(doubts)).toEqual([[2, 1]]);
    expect(doubts.bringBack()).toBe(0);
    expect(places(doubts)).toHaveLength(2);
    expect(doubts.bringBack()).toBeNull();
    doubts.takeAllAsRead();
    expect(doubts.now).toMatchObject({ cells: [], asRead: 2 });
  });

  it.each([
    {
      name: 'mirror-across',
      to: [
        [2, 0],
        [1, 1],
      ],
    },
    {
      name: 'mirror-up',
      to: [
        [1, 2],
        [2, 1],
      ],
    },
    {
      name: 'quarter-turn',
      to: [
        [0, 2],
        [1, 1],
      ],
    },
    {
      name: 'shift-right',
      to: [
        [2, 0],
        [3, 1],
      ],
    },
    {
      name: 'shift-up',
      to: [
        [1, 1],
        [2, 2],
      ],
    },
  ] as const)('go with their cells: $name', ({ name, to }) => {
    const { session, doubts } = read();
    const change = WHOLE[name](session.motif, PLACE);
    if (change) session.change(change);
    expect(places(doubts)).toEqual(to);
    expect(doubts.now?.cells.map(({ onPhoto }) => [onPhoto.column, onPhoto.row])).toEqual([
      [1, 0],
      [2, 1],
    ]);
    session.undo();
    expect(places(doubts)).toEqual([
      [1, 0],
      [2, 1],
    ]);
  });

  it('are lost where the motif is cut, until that is taken back', () => {
    const { session, doubts } = read();
    const change = WHOLE['delete-column'](session.motif, PLACE);
    if (change) session.change(change);
    expect(doubts.now).toMatchObject({ cells: [], isLost: true });
    paint(session, 0, 1);
    expect(doubts.now).toMatchObject({ isLost: true });
    session.undo();
    session.undo();
    expect(places(doubts)).toHaveLength(2);
  });

  it('are those of the latest reading, and of the one before when that is taken back', () => {
    const { session, doubts, motif } = read();
    session.change(changeOf('read-chart', redraw(session.motif, { ...GRID, cells: GRID.cells.with(3, 1) })));
    expect(doubts.now, 'another drawing, of which nothing was said yet').toBeNull();
    doubts.keep({ motif, width: 4, height: 3, doubts: [{ at: 2, sure: 0.1 }], straight });
    expect(places(doubts)).toEqual([[2, 0]]);
    session.undo();
    expect(places(doubts)).toHaveLength(2);
    session.redo();
    expect(places(doubts)).toEqual([[2, 0]]);
  });

  it('stay where all cells of a yarn change', () => {
    const { session, doubts } = read();
    const change = WHOLE.invert(session.motif, PLACE);
    if (change) session.change(change);
    expect(places(doubts)).toHaveLength(2);
  });

  it('belong to their motif, and to the project on the table', () => {
    const { session, doubts } = read();
    session.look({ bench: 'piece' });
    session.look({ bench: 'motif' });
    expect(places(doubts)).toHaveLength(2);
    session.replace(session.project, null, true);
    expect(doubts.now).toBeNull();
  });

  it('are forgotten of states that cannot be gone back to', () => {
    const { session, doubts } = read();
    for (let step = 0; step < 2600; step++) {
      session.change(
        changeOf('draw', paintCells(session.motif.id, { at: Uint32Array.of(11), to: Uint8Array.of(step % 2) })),
        'one stroke',
      );
    }
    expect(doubts.remembered).toBeLessThan(2500);
    session.undo();
    expect(places(doubts)).toHaveLength(2);
  });
});
