/** Keeping unsaved work aside while it is made. */
import { describe, expect, it, vi } from 'vitest';
import { sampleProject } from '@shared/project/index.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { cellsOf, deskInEachTest, FILE, type Desk } from './desk.ts';

let desk: Desk;
deskInEachTest((own) => (desk = own));

describe('unsaved work', () => {
  it('is on the disk within a second, with its file, the version it began from, and the time', async () => {
    desk.session.standsIn(FILE);
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(cellsOf(desk.onDisk())).toBe(cellsOf(desk.session.project));
    expect(desk.kept()).toMatchObject({
      window: 'window-1',
      browser: 'browser-1',
      name: desk.session.project.name,
      file: { path: FILE.path, stamp: 'first' },
    });
    expect(Date.parse(desk.kept()?.keptAt ?? '')).toBeGreaterThanOrEqual(Date.parse('2026-01-02T03:04:05.678Z'));
  });

  it.each([20, 150, 300])(
    'is never more than 1 s behind a hand that does not rest, if keeping takes %i ms',
    async (ms) => {
      desk.answersAfter = ms;
      desk.start();
      /** What the drawing was, every 20 ms of one stroke of 30 s. */
      const states: { readonly at: number; readonly cells: string }[] = [];
      for (let step = 0; step < 1500; step++) {
        // A Gray code: one cell a step, and no drawing comes twice.
        desk.paint(31 - Math.clz32((step + 1) & -(step + 1)), 'one stroke');
        states.push({ at: Date.now(), cells: cellsOf(desk.session.project) });
        await vi.advanceTimersByTimeAsync(20);
        const due = states.findLastIndex(({ at }) => Date.now() - at >= 1000);
        if (due < 0) continue;
        const kept = cellsOf(desk.onDisk());
        const found = states.findLastIndex(({ cells }) => cells === kept);
        expect(found, `after ${step * 20} ms`).toBeGreaterThanOrEqual(due);
      }
      expect(desk.mostGoing).toBe(1);
    },
  );

  it('is dropped when it is saved or undone, and kept no more', async () => {
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    desk.session.undo();
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.disk.size).toBe(0);
    desk.paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.disk.size).toBe(1);
    desk.session.saved(desk.session.project, FILE);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(desk.disk.size).toBe(0);
  });

  it('that goes on while it is saved is kept with the version that was saved', async () => {
    desk.session.standsIn(FILE);
    desk.start();
    desk.paint(0);
    const saved = desk.session.project;
    desk.paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.kept()?.file?.stamp).toBe('first');
    desk.session.saved(saved, { ...FILE, stamp: 'second' });
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.kept()?.file?.stamp).toBe('second');
    expect(cellsOf(desk.onDisk())).toBe(cellsOf(desk.session.project));
  });

  it('of the project before is dropped when another is put on the table, which is kept under its own name', async () => {
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    const before = desk.kept()?.work;
    desk.session.replace(sampleProject(), null, true);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.disk.size).toBe(0);
    desk.paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.kept()?.work).not.toBe(before);
  });

  it('that is put on the table unsaved, as a picture is, is kept at once', async () => {
    desk.start();
    desk.session.replace({ ...sampleProject(), name: 'Read in' }, null, false);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.kept()?.name).toBe('Read in');
  });

  it('is gone when it was let go, though a pass was under way', async () => {
    desk.answersAfter = 300;
    const keeper = desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(250);
    const gone = keeper.letGo();
    await vi.advanceTimersByTimeAsync(1000);
    await gone;
    await vi.advanceTimersByTimeAsync(5000);
    expect(desk.disk.size).toBe(0);
    desk.paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.disk.size).toBe(1);
  });
});

describe('work that was taken from where it was kept', () => {
  it('goes on under its name, each edition higher', async () => {
    desk.session = new Session(sampleProject(), false);
    desk.start({ work: 'work-taken', edition: 7 });
    await vi.advanceTimersByTimeAsync(5000);
    expect(desk.disk.size).toBe(0);
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.kept()).toMatchObject({ work: 'work-taken', edition: 8 });
    desk.session.saved(desk.session.project, FILE);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.disk.size).toBe(0);
  });

  it('is adopted when it is put on the table later', async () => {
    const keeper = desk.start();
    desk.session.replace(sampleProject(), null, false);
    keeper.adopt({ work: 'work-taken', edition: 2 });
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect([...desk.disk.keys()]).toEqual(['work-taken']);
  });
});

describe('work whose place has changed', () => {
  it('is kept there, though nothing of it changed', async () => {
    const keeper = desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    desk.disk.clear();
    const again = keeper.keepAgain();
    await vi.advanceTimersByTimeAsync(100);
    await again;
    expect(cellsOf(desk.onDisk())).toBe(cellsOf(desk.session.project));
    desk.session.undo();
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.disk.size).toBe(0);
  });
});

describe('work that could not be kept', () => {
  it('is said once, and tried again without another change', async () => {
    desk.start();
    desk.isDown = true;
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.session.notice).toMatchObject({ kind: 'problem', problem: { code: 'host-unreachable' } });
    desk.session.notify(null);
    await vi.advanceTimersByTimeAsync(5000);
    expect(desk.session.notice).toBeNull();
    desk.isDown = false;
    await vi.advanceTimersByTimeAsync(2000);
    expect(cellsOf(desk.onDisk())).toBe(cellsOf(desk.session.project));
  });

  it('and was saved meanwhile is dropped in the end', async () => {
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    desk.isDown = true;
    desk.session.saved(desk.session.project, FILE);
    await vi.advanceTimersByTimeAsync(3000);
    expect(desk.disk.size).toBe(1);
    // Nothing is at stake, and that the host is away is said elsewhere.
    expect(desk.session.notice).toBeNull();
    // What is drawn then is at stake again.
    desk.paint(1);
    await vi.advanceTimersByTimeAsync(3000);
    expect(desk.session.notice).toMatchObject({ kind: 'problem', problem: { code: 'host-unreachable' } });
    desk.session.undo();
    desk.isDown = false;
    await vi.advanceTimersByTimeAsync(3000);
    expect(desk.disk.size).toBe(0);
  });
});
