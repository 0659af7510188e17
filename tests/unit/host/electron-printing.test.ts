/** The platform's print dialog, with Electron itself made up. */
import type { BrowserWindow } from 'electron';
import { describe, expect, it } from 'vitest';
import { problemOf } from '@shared/problem/index.ts';
import { createServices } from '../../../src-main/services/index.ts';
import { platformPrinting } from '../../../src-main/electron/printing.ts';
import { silentShell, testEnvironment } from '../services/test-environment.ts';

/** A window whose dialog is answered so. */
function windowThat(answer: readonly [isPrinted: boolean, reason: string] | Error) {
  const asked: unknown[] = [];
  const webContents = {
    print(options: unknown, answered: (isPrinted: boolean, reason: string) => void): void {
      asked.push(options);
      if (answer instanceof Error) throw answer;
      answered(...answer);
    },
  };
  return { asked, browser: { webContents } as unknown as BrowserWindow };
}

function servicesWith(browser: BrowserWindow | null) {
  const shell = { ...silentShell, print: platformPrinting(() => browser) };
  return createServices(testEnvironment('/nowhere', { shell }));
}

describe('printing in Electron', () => {
  it.each([
    ['a4', 'A4'],
    ['letter', 'Letter'],
  ] as const)('on %s asks with the dialog, on that paper and without margins of its own', async (paper, pageSize) => {
    const { asked, browser } = windowThat([true, '']);
    expect(await servicesWith(browser)['window.print']({ paper })).toEqual({ isPrinted: true });
    expect(asked).toEqual([{ pageSize, margins: { marginType: 'none' }, printBackground: true }]);
    // Printing unasked is an option of Electron's.
    expect(asked[0]).not.toHaveProperty('silent');
  });

  // Electron's words for it: the list of failure reasons at `webContents.print` in its documentation.
  it('that the person gives up is no failure', async () => {
    const { browser } = windowThat([false, 'Print job canceled']);
    expect(await servicesWith(browser)['window.print']({ paper: 'a4' })).toEqual({ isPrinted: false });
  });

  it.each([
    [[false, 'Print job failed'], 'not-printed', 'Print job failed'],
    [[false, 'Invalid printer settings'], 'not-printed', 'Invalid printer settings'],
    [new Error('No printer'), 'unexpected', 'No printer'],
  ] as const)('that fails (%s) is told', async (answer, code, detail) => {
    const { browser } = windowThat(answer);
    const failure = await servicesWith(browser)
      ['window.print']({ paper: 'a4' })
      .then(() => null, problemOf);
    expect(failure).toMatchObject({ code, facts: { detail } });
  });

  it('after the window has gone prints nothing', async () => {
    expect(await servicesWith(null)['window.print']({ paper: 'a4' })).toEqual({ isPrinted: false });
  });

  it('is said to be there, and in a browser not to be', async () => {
    expect(await servicesWith(null)['host.describe']({})).toMatchObject({ hasPrintDialog: true });
    const inBrowser = createServices(testEnvironment('/nowhere'));
    expect(await inBrowser['host.describe']({})).toMatchObject({ hasPrintDialog: false });
    expect(await inBrowser['window.print']({ paper: 'a4' })).toEqual({ isPrinted: false });
  });
});
