/** The command that prints: which dialog it asks, and what lies for the printer meanwhile. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { localDay } from '@shared/day/index.ts';
import type { Host } from '@shared/host/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { sampleProject } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { Printing } from '../../../src-renderer/sheet/printing.ts';
import { sheetOf } from '../../../src-renderer/worker/jobs/sheet-of.ts';
import { Today } from '../../../src-renderer/sheet/today.ts';
import { garment } from '../../garment.ts';

const laid = vi.hoisted(() => ({ pages: [] as number[], isLaid: false }));
vi.mock('../../../src-renderer/sheet/printed-pages.ts', async (original) => ({
  ...(await original<object>()),
  lettersLoaded: async () => undefined,
  layPages: (pages: readonly unknown[]) => {
    laid.pages.push(pages.length);
    laid.isLaid = true;
    return () => (laid.isLaid = false);
  },
}));

const browserPrint = vi.fn();
beforeEach(() => {
  laid.pages.length = 0;
  browserPrint.mockReset();
  vi.stubGlobal('window', { print: browserPrint });
});
afterEach(() => vi.unstubAllGlobals());

/** Printing of the sample; the platform's dialog answers so. */
function printingWith(
  hasPrintDialog: boolean,
  answer: Outcome<{ isPrinted: boolean }> = { ok: true, value: { isPrinted: true } },
) {
  const session = new Session(sampleProject(), true);
  const asked: unknown[] = [];
  const host = {
    call: async (method: string, params: unknown) => {
      asked.push([method, params, laid.isLaid]);
      return answer;
    },
  } as unknown as Host;
  const printing = new Printing({ session, host, hasPrintDialog, today: new Today(() => new Date(2026, 10, 26)) });
  return { session, asked, printing };
}

it('in a browser asks the browser, which tells before and after', async () => {
  const { printing, asked } = printingWith(false);
  browserPrint.mockImplementation(() => {
    printing.before();
    expect(laid.isLaid).toBe(true);
    printing.after();
  });
  await printing.print();
  expect(browserPrint).toHaveBeenCalledOnce();
  expect([laid.isLaid, asked]).toEqual([false, []]);
});

it('asks the platform where it has a dialog, with the pages laid out once, and takes them away', async () => {
  const { printing, asked, session } = printingWith(true);
  session.look({ paper: 'letter' });
  await printing.print();
  expect(asked).toEqual([['window.print', { paper: 'letter' }, true]]);
  expect(laid.pages).toHaveLength(1);
  expect(laid.pages[0]).toBeGreaterThan(1);
  expect([laid.isLaid, browserPrint.mock.calls]).toEqual([false, []]);
  expect(session.announced).toBe(words.sheetBench.print.printed);
});

it('says nothing when the person gave up, and what kept the printer from it', async () => {
  const givenUp = printingWith(true, { ok: true, value: { isPrinted: false } });
  await givenUp.printing.print();
  expect([givenUp.session.announced, givenUp.session.notice]).toEqual(['', null]);
  const problem = { code: 'not-printed', where: null, facts: { detail: 'Print job failed' } } as const;
  const failed = printingWith(true, { ok: false, problem });
  await failed.printing.print();
  expect(failed.session.notice).toEqual({ kind: 'problem', problem });
  expect(laid.isLaid).toBe(false);
});

it('asks once at a time', async () => {
  const { printing, asked } = printingWith(true);
  await Promise.all([printing.print(), printing.print()]);
  expect(asked).toHaveLength(1);
  await printing.print();
  expect(asked).toHaveLength(2);
});

it('prints the pages of all pieces where the bench shows them', async () => {
  const { printing, session } = printingWith(true);
  session.replace(garment(), null, true);
  await printing.print();
  session.look({ scope: { pieces: 'all', sizes: 'all' } });
  await printing.print();
  const parts = sheetOf(session.current, { paper: 'a4', date: localDay(new Date(2026, 10, 26)) }, session.view.scope);
  const [one = 0, all = 0] = laid.pages;
  expect(parts.ok && parts.value.flatMap((part) => part()).length).toBe(all);
  expect(all).toBeGreaterThan(4 * one - 4);
});
