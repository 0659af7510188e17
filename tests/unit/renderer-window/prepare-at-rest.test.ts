/** The sheet is laid out ahead while the hand rests on another bench, and at no other time. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Host } from '@shared/host/index.ts';
import { changeOf, setProject, type ProjectAt } from '@shared/project/index.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { prepareAtRest } from '../../../src-renderer/window/prepare-at-rest.ts';
import type { SheetPreview } from '../../../src-renderer/sheet/preview.ts';
import { SheetViewModel } from '../../../src-renderer/sheet/view-model.ts';
import { garment } from '../../garment.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const LONG = 10_000;

/** A window on its Motif bench; `worker` is how its script comes. */
function resting(worker: () => Promise<unknown> = async () => undefined) {
  const session = new Session(garment(), true);
  session.look({ bench: 'motif' });
  const viewModel = new SheetViewModel(session, {} as Host, {} as never);
  const asked: unknown[] = [];
  let closed = 0;
  class Preview {
    show(...of: unknown[]): void {
      asked.push(of);
    }
    close(): void {
      closed++;
    }
  }
  const prepared: ProjectAt[] = [];
  async function piece() {
    return {
      *prepareFound(project: ProjectAt): Generator<null, void, void> {
        prepared.push(project);
        yield null;
      },
    };
  }
  const preview = async () => ({ SheetPreview: Preview as unknown as new () => SheetPreview });
  const stop = prepareAtRest(session, viewModel, { preview, benches: async () => undefined, piece, worker });
  return { session, viewModel, asked, prepared, stop, closed: () => closed };
}
const rename = (session: Session, name: string): void =>
  session.change(changeOf('rename-project', setProject({ name })));

it('asks for what the bench will show, once the hand rests', async () => {
  const { session, viewModel, asked } = resting();
  await vi.advanceTimersByTimeAsync(500);
  expect(asked).toEqual([]);
  await vi.advanceTimersByTimeAsync(LONG);
  expect(asked).toEqual([[session.current, viewModel.options, session.view.scope]]);
});

it('has what is found on the piece worked out, where there is no worker too', async () => {
  const { session, prepared } = resting(() => Promise.reject(new Error('away')));
  await vi.advanceTimersByTimeAsync(500);
  expect(prepared).toEqual([]);
  await vi.advanceTimersByTimeAsync(LONG);
  expect(prepared).toEqual([session.current]);
});

it('begins anew after each change, and gives up what was asked before', async () => {
  const { session, asked, closed } = resting();
  await vi.advanceTimersByTimeAsync(LONG);
  for (const name of ['one', 'two', 'three']) {
    rename(session, name);
    await vi.advanceTimersByTimeAsync(500);
  }
  expect([asked.length, closed()]).toEqual([1, 3]);
  await vi.advanceTimersByTimeAsync(LONG);
  expect(asked.slice(1)).toEqual([[session.current, expect.anything(), expect.anything()]]);
});

it.each(['sheet', 'knit'] as const)('asks for nothing on the bench %s', async (bench) => {
  const { session, asked, closed } = resting();
  session.look({ bench });
  await vi.advanceTimersByTimeAsync(LONG);
  rename(session, 'other');
  await vi.advanceTimersByTimeAsync(LONG);
  expect([asked, closed()]).toEqual([[], 0]);
});

it('leaves it where there is no worker, and where the window is left meanwhile', async () => {
  const away = resting(() => Promise.reject(new Error('away')));
  const left = resting();
  left.stop();
  let come: (script: unknown) => void = () => undefined;
  const slow = resting(() => new Promise((resolve) => (come = resolve)));
  await vi.advanceTimersByTimeAsync(LONG);
  slow.session.look({ bench: 'sheet' });
  come(undefined);
  await vi.advanceTimersByTimeAsync(LONG);
  expect([away.asked, left.asked, slow.asked]).toEqual([[], [], []]);
  expect(slow.viewModel.preview).toBe(null);
});
