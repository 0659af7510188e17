/** Keeping unsaved work aside while it is made. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Method, Params } from '@shared/host/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { patchOfColour } from '@shared/grid/index.ts';
import {
  applyEdits,
  changeOf,
  editsFromText,
  layingChange,
  paintCells,
  projectFromText,
  projectToText,
  sampleProject,
  setPiece,
  setProject,
  type Project,
} from '@shared/project/index.ts';
import { hostPlace, Keeper, layKept, type WorkToKeep } from '../../../src-renderer/recovery/index.ts';
import { MotifViewModel } from '../../../src-renderer/motif/view-model.ts';
import { hold, lift, moveLifted, selectAll } from '../../../src-renderer/motif/lifted-selection.ts';
import { Session } from '../../../src-renderer/session/session.ts';

const FILE = { path: '/home/knitter/sleeve.walewright', name: 'sleeve.walewright', stamp: 'first' };
const unreachable: Outcome<never> = { ok: false, problem: { code: 'host-unreachable', where: null, facts: {} } };

let session: Session;
/** What reached the disk, by the work's id, and when (ms on the test's clock). */
let disk: Map<string, { readonly work: WorkToKeep; readonly at: number }>;
/** What the host was asked, of the methods that keep. */
let asked: ('keep' | 'append')[];
let isDown: boolean;
/** How long the host takes to answer, ms. */
let answersAfter: number;
let going: number;
let mostGoing: number;

beforeEach(() => {
  vi.useFakeTimers({ now: new Date('2026-01-02T03:04:05.678Z') });
  session = new Session(sampleProject(), true);
  disk = new Map();
  asked = [];
  isDown = false;
  answersAfter = 20;
  going = 0;
  mostGoing = 0;
});
afterEach(() => vi.useRealTimers());

let ids = 0;
function start(taken: { work: string; edition: number } | null = null): Keeper {
  const call = async (method: Method, params: unknown): Promise<Outcome<never>> => {
    mostGoing = Math.max(mostGoing, ++going);
    await new Promise((resolve) => setTimeout(resolve, answersAfter));
    going--;
    if (isDown) return unreachable;
    const work = params as WorkToKeep;
    if (method === 'recovery.append') {
      asked.push('append');
      return { ok: true, value: { isKept: append(params as Params<'recovery.append'>) } as never };
    }
    if (method === 'recovery.keep') asked.push('keep');
    if (method === 'recovery.keep') disk.set(work.work, { work, at: Date.now() });
    if (method === 'recovery.drop') disk.delete(work.work);
    return { ok: true, value: {} as never };
  };
  return new Keeper({
    session,
    place: hostPlace({ call: call as never }),
    identity: { window: 'window-1', browser: 'browser-1' },
    taken,
    newId: () => `work-${ids++}`,
  });
}
/** As a host does: what changed goes behind the edition before, and nowhere else. */
function append({ edits, ...facts }: Params<'recovery.append'>): boolean {
  const before = disk.get(facts.work)?.work;
  if (before?.edition !== facts.edition - 1) return false;
  const after = applyEdits(projectFromText(before.text), editsFromText(edits) ?? []);
  disk.set(facts.work, { work: { ...before, ...facts, name: after.name, text: projectToText(after) }, at: Date.now() });
  return true;
}
const kept = (): WorkToKeep | undefined => [...disk.values()].at(-1)?.work;
const onDisk = (): Project | null => (kept() ? projectFromText(kept()?.text ?? '') : null);

/** Gives the other of two yarns to one cell. */
function paint(cell: number, gesture: string | null = null): void {
  const { motif } = session;
  const patch = patchOfColour(motif.grid, [cell], motif.grid.cells[cell] === 0 ? 1 : 0);
  session.change(changeOf('draw', paintCells(motif.id, patch)), gesture);
}
const cellsOf = (project: Project | null): string => (project?.motifs[0]?.grid.cells ?? []).join('');

describe('unsaved work', () => {
  it('is on the disk within a second, with its file, the version it began from, and the time', async () => {
    session.standsIn(FILE);
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(cellsOf(onDisk())).toBe(cellsOf(session.project));
    expect(kept()).toMatchObject({
      window: 'window-1',
      browser: 'browser-1',
      name: session.project.name,
      file: { path: FILE.path, stamp: 'first' },
    });
    expect(Date.parse(kept()?.keptAt ?? '')).toBeGreaterThanOrEqual(Date.parse('2026-01-02T03:04:05.678Z'));
  });

  it.each([20, 150, 300])(
    'is never more than 1 s behind a hand that does not rest, if keeping takes %i ms',
    async (ms) => {
      answersAfter = ms;
      start();
      /** What the drawing was, every 20 ms of one stroke of 30 s. */
      const states: { readonly at: number; readonly cells: string }[] = [];
      for (let step = 0; step < 1500; step++) {
        // A Gray code: one cell a step, and no drawing comes twice.
        paint(31 - Math.clz32((step + 1) & -(step + 1)), 'one stroke');
        states.push({ at: Date.now(), cells: cellsOf(session.project) });
        await vi.advanceTimersByTimeAsync(20);
        const due = states.findLastIndex(({ at }) => Date.now() - at >= 1000);
        if (due < 0) continue;
        const found = states.findLastIndex(({ cells }) => cells === cellsOf(onDisk()));
        expect(found, `after ${step * 20} ms`).toBeGreaterThanOrEqual(due);
      }
      expect(mostGoing).toBe(1);
    },
  );

  it('is dropped when it is saved or undone, and kept no more', async () => {
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    session.undo();
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.size).toBe(0);
    paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.size).toBe(1);
    session.saved(session.project, FILE);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(disk.size).toBe(0);
  });

  it('that goes on while it is saved is kept with the version that was saved', async () => {
    session.standsIn(FILE);
    start();
    paint(0);
    const saved = session.project;
    paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(kept()?.file?.stamp).toBe('first');
    session.saved(saved, { ...FILE, stamp: 'second' });
    await vi.advanceTimersByTimeAsync(1000);
    expect(kept()?.file?.stamp).toBe('second');
    expect(cellsOf(onDisk())).toBe(cellsOf(session.project));
  });

  it('of the project before is dropped when another is put on the table, which is kept under its own name', async () => {
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    const before = kept()?.work;
    session.replace(sampleProject(), null, true);
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.size).toBe(0);
    paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(kept()?.work).not.toBe(before);
  });

  it('that is put on the table unsaved, as a picture is, is kept at once', async () => {
    start();
    session.replace({ ...sampleProject(), name: 'Read in' }, null, false);
    await vi.advanceTimersByTimeAsync(1000);
    expect(kept()?.name).toBe('Read in');
  });

  it('is gone when it was let go, though a pass was under way', async () => {
    answersAfter = 300;
    const keeper = start();
    paint(0);
    await vi.advanceTimersByTimeAsync(250);
    const gone = keeper.letGo();
    await vi.advanceTimersByTimeAsync(1000);
    await gone;
    await vi.advanceTimersByTimeAsync(5000);
    expect(disk.size).toBe(0);
    paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.size).toBe(1);
  });
});

describe('cells in hand', () => {
  /** What the next window has on the table, and after one step back. */
  function restored(): { readonly laid: string; readonly undone: string } {
    const next = new Session(onDisk() as Project, false);
    layKept(next, kept()?.laying ?? null);
    const laid = cellsOf(next.project);
    next.undo();
    return { laid, undone: cellsOf(next.project) };
  }
  let viewModel: MotifViewModel;
  beforeEach(() => void (viewModel = new MotifViewModel(session)));

  it('that are lifted and moved are kept where they are, and what was there before with them', async () => {
    session.standsIn(FILE);
    start();
    const before = cellsOf(session.project);
    selectAll(session, viewModel);
    lift(session, viewModel);
    await vi.advanceTimersByTimeAsync(1000);
    // Lifted, and where they were: nothing is to be kept.
    expect(disk.size).toBe(0);
    // Half of them over the edge, over others, and the hand goes on.
    for (let step = 0; step < 7; step++) {
      moveLifted(viewModel, 1, 0);
      await vi.advanceTimersByTimeAsync(100);
    }
    await vi.advanceTimersByTimeAsync(900);
    expect(cellsOf(onDisk())).toBe(before);
    const { laid, undone } = restored();
    expect(undone).toBe(before);
    session.lay();
    expect(laid).toBe(cellsOf(session.project));
    expect(laid).not.toBe(before);
    await vi.advanceTimersByTimeAsync(1000);
    expect(kept()?.laying).toBeNull();
    expect(cellsOf(onDisk())).toBe(laid);
  });

  it('that are pasted are kept, and no more once they are given up', async () => {
    start();
    const cells = { width: 2, height: 1, cells: Uint8Array.from([1, 1]) };
    hold(session, viewModel, { name: 'paste', cells, at: { column: 0, row: 0 } });
    moveLifted(viewModel, 0, 17);
    await vi.advanceTimersByTimeAsync(1000);
    expect(restored().laid).not.toBe(cellsOf(session.project));
    viewModel.look({ lifted: null });
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.size).toBe(0);
  });

  it('that do not fit what is kept with them are left out', () => {
    const { project } = session;
    const { id, grid } = session.motif;
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

describe('what changes after work was kept', () => {
  const rename = (name: string): void => session.change(changeOf('rename-project', setProject({ name })));
  const isKeptAsItIs = (): void => expect(onDisk()).toEqual(session.project);

  it('is kept behind it: done, taken back and done again, and of whatever kind', async () => {
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    const steps = [
      () => paint(1),
      () => rename('Cuff'),
      () => session.change(changeOf('piece-hem', ...setPiece(session.current, { hemRows: 12 }))),
      () => session.undo(),
      () => session.redo(),
      () => {
        paint(2, 'given up');
        paint(3, 'given up');
        session.giveUp('given up');
        paint(4);
        session.undo();
        session.undo();
        session.redo();
      },
    ];
    for (const step of steps) {
      step();
      await vi.advanceTimersByTimeAsync(1000);
      isKeptAsItIs();
    }
    expect(asked).toEqual(['keep', ...steps.map(() => 'append')]);
    expect(kept()).toMatchObject({ name: 'Cuff', edition: 1 + steps.length });
  });

  it('is kept with all of the work where the host has not what it follows', async () => {
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    disk.clear();
    paint(1);
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    paint(2);
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    expect(asked).toEqual(['keep', 'append', 'keep', 'append']);
  });

  it('is kept with all of the work after a time in which nothing could be, however much of it was taken', async () => {
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    isDown = true;
    paint(1);
    await vi.advanceTimersByTimeAsync(3000);
    paint(2);
    isDown = false;
    await vi.advanceTimersByTimeAsync(2000);
    isKeptAsItIs();
    expect(asked).toEqual(['keep', 'keep']);
  });

  it('is kept anew once the work was saved', async () => {
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    paint(1);
    session.saved(session.project, FILE);
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.size).toBe(0);
    paint(2);
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    expect(asked).toEqual(['keep', 'keep']);
  });

  it('in another project is kept as that', async () => {
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    paint(1);
    session.replace({ ...sampleProject(), name: 'Read in' }, null, false);
    rename('Other');
    await vi.advanceTimersByTimeAsync(1000);
    isKeptAsItIs();
    expect(asked).toEqual(['keep', 'keep']);
  });
});

describe('work that was taken from where it was kept', () => {
  it('goes on under its name, each edition higher', async () => {
    session = new Session(sampleProject(), false);
    start({ work: 'work-taken', edition: 7 });
    await vi.advanceTimersByTimeAsync(5000);
    expect(disk.size).toBe(0);
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(kept()).toMatchObject({ work: 'work-taken', edition: 8 });
    session.saved(session.project, FILE);
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.size).toBe(0);
  });

  it('is adopted when it is put on the table later', async () => {
    const keeper = start();
    session.replace(sampleProject(), null, false);
    keeper.adopt({ work: 'work-taken', edition: 2 });
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect([...disk.keys()]).toEqual(['work-taken']);
  });
});

describe('work whose place has changed', () => {
  it('is kept there, though nothing of it changed', async () => {
    const keeper = start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    disk.clear();
    const again = keeper.keepAgain();
    await vi.advanceTimersByTimeAsync(100);
    await again;
    expect(cellsOf(onDisk())).toBe(cellsOf(session.project));
    session.undo();
    await vi.advanceTimersByTimeAsync(1000);
    expect(disk.size).toBe(0);
  });
});

describe('work that could not be kept', () => {
  it('is said once, and tried again without another change', async () => {
    start();
    isDown = true;
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(session.notice).toMatchObject({ kind: 'problem', problem: { code: 'host-unreachable' } });
    session.notify(null);
    await vi.advanceTimersByTimeAsync(5000);
    expect(session.notice).toBeNull();
    isDown = false;
    await vi.advanceTimersByTimeAsync(2000);
    expect(cellsOf(onDisk())).toBe(cellsOf(session.project));
  });

  it('and was saved meanwhile is dropped in the end', async () => {
    start();
    paint(0);
    await vi.advanceTimersByTimeAsync(1000);
    isDown = true;
    session.saved(session.project, FILE);
    await vi.advanceTimersByTimeAsync(3000);
    expect(disk.size).toBe(1);
    // Nothing is at stake, and that the host is away is said elsewhere.
    expect(session.notice).toBeNull();
    // What is drawn then is at stake again.
    paint(1);
    await vi.advanceTimersByTimeAsync(3000);
    expect(session.notice).toMatchObject({ kind: 'problem', problem: { code: 'host-unreachable' } });
    session.undo();
    isDown = false;
    await vi.advanceTimersByTimeAsync(3000);
    expect(disk.size).toBe(0);
  });
});
