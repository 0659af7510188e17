/** Writing files from the Sheet bench: how far it is, and giving up. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Host } from '@shared/host/index.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { SheetViewModel } from '../../../src-renderer/sheet/view-model.ts';
import { garment } from '../../garment.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** The bench with a host that ends a call of writing when it is told to. */
function writing() {
  const session = new Session(garment(), true);
  const calls: [method: string, params: { run?: string; scope?: unknown }][] = [];
  let end: (value: unknown) => void = () => undefined;
  const host = {
    call: (method: string, params: { run?: string }) => {
      calls.push([method, params]);
      if (method === 'exports.howFar') return Promise.resolve({ ok: true, value: { made: 3, of: 14 } });
      if (method === 'exports.stop') return Promise.resolve({ ok: true, value: {} });
      return new Promise((resolve) => (end = (value) => resolve({ ok: true, value })));
    },
  } as unknown as Host;
  const asking = { folder: async () => '/home/knitter' } as never;
  const viewModel = new SheetViewModel(session, host, asking);
  return { session, viewModel, calls, end: (value: unknown) => end(value) };
}
const methods = (calls: readonly (readonly [string, unknown])[]) => calls.map(([method]) => method);

it('asks for the pieces and sizes that the bench shows', async () => {
  const { session, viewModel, calls } = writing();
  session.look({ scope: { pieces: 'all', sizes: 'this' } });
  void viewModel.write(['sheet-pdf']);
  await vi.advanceTimersByTimeAsync(0);
  expect(calls[0]).toMatchObject(['exports.write', { scope: { pieces: 'all', sizes: 'this' } }]);
  // Another project is looked at piece by piece again.
  session.replace(garment(), null, true);
  expect(session.view.scope).toEqual({ pieces: 'this', sizes: 'this' });
});

it('shows how far a call is that takes its time, and asks no more once it has ended', async () => {
  const { viewModel, calls, end } = writing();
  const done = viewModel.write(['rows-csv']);
  await vi.advanceTimersByTimeAsync(100);
  expect(methods(calls)).toEqual(['exports.write']);
  expect(viewModel.writing).toEqual({ kind: 'going-on', far: null });
  await vi.advanceTimersByTimeAsync(900);
  expect(viewModel.writing).toEqual({ kind: 'going-on', far: { made: 3, of: 14 } });
  expect(calls.slice(1).every(([, { run }]) => run === calls[0]?.[1].run)).toBe(true);
  end({ kind: 'written', folder: '/home/knitter', files: [] });
  await done;
  const asked = calls.length;
  await vi.advanceTimersByTimeAsync(2000);
  expect([viewModel.writing.kind, calls.length]).toEqual(['done', asked]);
});

it('gives up when told to, says so, and can write again', async () => {
  const { session, viewModel, calls, end } = writing();
  viewModel.stop();
  expect(calls).toEqual([]);
  const given = viewModel.write(['rows-csv']);
  await vi.advanceTimersByTimeAsync(0);
  viewModel.stop();
  expect(calls[1]).toEqual(['exports.stop', { run: calls[0]?.[1].run }]);
  // Said again, should the host have heard it before it began.
  await vi.advanceTimersByTimeAsync(500);
  expect(methods(calls).filter((method) => method === 'exports.stop')).toHaveLength(2);
  end({ kind: 'stopped' });
  await given;
  expect([viewModel.writing, session.announced]).toEqual([{ kind: 'none' }, 'Cancelled: nothing was exported.']);
  void viewModel.write(['rows-csv']);
  await vi.advanceTimersByTimeAsync(500);
  expect(viewModel.writing.kind).toBe('going-on');
  expect(methods(calls).filter((method) => method === 'exports.stop')).toHaveLength(2);
});
