/** Cells in hand, kept with the work that they would be laid in. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { layingChange, type Project } from '@shared/project/index.ts';
import { layKept } from '../../../src-renderer/recovery/index.ts';
import { MotifViewModel } from '../../../src-renderer/motif/view-model.ts';
import { hold, lift, moveLifted, selectAll } from '../../../src-renderer/motif/lifted-selection.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { cellsOf, deskInEachTest, FILE, type Desk } from './desk.ts';

let desk: Desk;
deskInEachTest((own) => (desk = own));

describe('cells in hand', () => {
  /** What the next window has on the table, and after one step back. */
  function restored(): { readonly laid: string; readonly undone: string } {
    const next = new Session(desk.onDisk() as Project, false);
    layKept(next, desk.kept()?.laying ?? null);
    const laid = cellsOf(next.project);
    next.undo();
    return { laid, undone: cellsOf(next.project) };
  }
  let viewModel: MotifViewModel;
  beforeEach(() => void (viewModel = new MotifViewModel(desk.session)));

  it('that are lifted and moved are kept where they are, and what was there before with them', async () => {
    desk.session.standsIn(FILE);
    desk.start();
    const before = cellsOf(desk.session.project);
    selectAll(desk.session, viewModel);
    lift(desk.session, viewModel);
    await vi.advanceTimersByTimeAsync(1000);
    // Lifted, and where they were: nothing is to be kept.
    expect(desk.disk.size).toBe(0);
    // Half of them over the edge, over others, and the hand goes on.
    for (let step = 0; step < 7; step++) {
      moveLifted(viewModel, 1, 0);
      await vi.advanceTimersByTimeAsync(100);
    }
    await vi.advanceTimersByTimeAsync(900);
    expect(cellsOf(desk.onDisk())).toBe(before);
    const { laid, undone } = restored();
    expect(undone).toBe(before);
    desk.session.lay();
    expect(laid).toBe(cellsOf(desk.session.project));
    expect(laid).not.toBe(before);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.kept()?.laying).toBeNull();
    expect(cellsOf(desk.onDisk())).toBe(laid);
  });

  it('that are pasted are kept, and no more once they are given up', async () => {
    desk.start();
    const cells = { width: 2, height: 1, cells: Uint8Array.from([1, 1]) };
    hold(desk.session, viewModel, { name: 'paste', cells, at: { column: 0, row: 0 } });
    moveLifted(viewModel, 0, 17);
    await vi.advanceTimersByTimeAsync(1000);
    expect(restored().laid).not.toBe(cellsOf(desk.session.project));
    viewModel.look({ lifted: null });
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.disk.size).toBe(0);
  });

  it('that do not fit what is kept with them are left out', () => {
    const { project } = desk.session;
    const { id, grid } = desk.session.motif;
    const rows = Array.from({ length: grid.height }, () => 'X'.repeat(grid.width));
    const laying = { name: 'move', motif: id, rows, isLettering: false } as const;
    expect(layingChange(project, laying)).toMatchObject({ name: 'move', edits: [{ motif: id }] });
    expect(layingChange(project, { ...laying, motif: 'another' })).toBeNull();
    expect(layingChange(project, { ...laying, rows: rows.slice(1) })).toBeNull();
    expect(layingChange(project, { ...laying, rows: rows.with(0, '+'.repeat(grid.width)) })).toBeNull();
    expect(layingChange(project, { ...laying, rows: rows.with(0, '?'.repeat(grid.width)) })).toBeNull();
    expect(layingChange(project, { ...laying, rows: [] })).toBeNull();
  });
});
