/** What changes after work was kept whole: written behind it, or all of it anew. */
import { describe, expect, it, vi } from 'vitest';
import { changeOf, sampleProject, setPiece, setProject } from '@shared/project/index.ts';
import { deskInEachTest, FILE, type Desk } from './desk.ts';

let desk: Desk;
deskInEachTest((own) => (desk = own));

describe('what changes after work was kept', () => {
  const rename = (name: string): void => desk.session.change(changeOf('rename-project', setProject({ name })));
  const isKeptAsItIs = (): void => expect(desk.onDisk()).toEqual(desk.session.project);

  it('is kept behind it: done, taken back and done again, and of whatever kind', async () => {
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    const steps = [
      () => desk.paint(1),
      () => rename('Cuff'),
      () => desk.session.change(changeOf('piece-hem', ...setPiece(desk.session.current, { hemRows: 12 }))),
      () => desk.session.undo(),
      () => desk.session.redo(),
      () => {
        desk.paint(2, 'given up');
        desk.paint(3, 'given up');
        desk.session.giveUp('given up');
        desk.paint(4);
        desk.session.undo();
        desk.session.undo();
        desk.session.redo();
      },
    ];
    for (const step of steps) {
      step();
      await vi.advanceTimersByTimeAsync(1000);
      isKeptAsItIs();
    }
    expect(desk.asked).toEqual(['keep', ...steps.map(() => 'append')]);
    expect(desk.kept()).toMatchObject({ name: 'Cuff', edition: 1 + steps.length });
  });

  it('is kept with all of the work where the host has not what it follows', async () => {
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    desk.disk.clear();
    desk.paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    desk.paint(2);
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    expect(desk.asked).toEqual(['keep', 'append', 'keep', 'append']);
  });

  it('is kept with all of the work after a time in which nothing could be, however much of it was taken', async () => {
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    desk.isDown = true;
    desk.paint(1);
    await vi.advanceTimersByTimeAsync(3000);
    desk.paint(2);
    desk.isDown = false;
    await vi.advanceTimersByTimeAsync(2000);
    isKeptAsItIs();
    expect(desk.asked).toEqual(['keep', 'keep']);
  });

  it('is kept anew once the work was saved', async () => {
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    desk.paint(1);
    desk.session.saved(desk.session.project, FILE);
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.disk.size).toBe(0);
    desk.paint(2);
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    expect(desk.asked).toEqual(['keep', 'keep']);
  });

  it('in another project is kept as that', async () => {
    desk.start();
    desk.paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    desk.paint(1);
    desk.session.replace({ ...sampleProject(), name: 'Read in' }, null, false);
    rename('Other');
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    expect(desk.asked).toEqual(['keep', 'keep']);
  });
});
