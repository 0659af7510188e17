/** The window around the page: what happens when the page ends, hangs or is asked, with Electron itself made up. */
import type { EventEmitter } from 'node:events';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { START_WINDOW } from '@shared/host/index.ts';
import { isPermitted, pageRights } from '../../../src-main/electron/page-rights.ts';
import { watchPage, type PageActs } from '../../../src-main/electron/page-watch.ts';
import { words } from '@shared/words/index.ts';

interface Box {
  readonly options: { readonly message: string; readonly buttons: readonly string[]; readonly signal?: AbortSignal };
  readonly press: (button: string) => void;
}

const made = vi.hoisted(() => ({
  boxes: [] as unknown[],
  windows: [] as unknown[],
  isPackaged: false,
}));

vi.mock('electron', async () => {
  const { EventEmitter: Emitter } = await import('node:events');
  class Contents extends Emitter {
    sent: unknown[] = [];
    isHung = false;
    send(_channel: string, event: unknown): void {
      this.sent.push(event);
    }
    executeJavaScript(): Promise<unknown> {
      return this.isHung ? new Promise(() => undefined) : Promise.resolve(0);
    }
  }
  class BrowserWindow extends Emitter {
    webContents = new Contents();
    loaded: string[] = [];
    isGone = false;
    constructor(readonly options: unknown) {
      super();
      made.windows.push(this);
    }
    async loadURL(url: string): Promise<void> {
      this.loaded.push(url);
    }
    isDestroyed(): boolean {
      return this.isGone;
    }
    destroy(): void {
      this.isGone = true;
      this.emit('closed');
    }
    setTitle(): void {}
    setDocumentEdited(): void {}
    setRepresentedFilename(): void {}
  }
  return {
    app: {
      get isPackaged() {
        return made.isPackaged;
      },
    },
    BrowserWindow,
    nativeTheme: { shouldUseDarkColors: false },
    protocol: {},
    dialog: {
      showMessageBox: (_owner: unknown, options: Box['options']) =>
        new Promise((answer) => {
          options.signal?.addEventListener('abort', () => answer({ response: 0 }));
          made.boxes.push({
            options,
            press: (button: string) => answer({ response: options.buttons.indexOf(button) }),
          } satisfies Box);
        }),
    },
  };
});

type MadeWindow = EventEmitter & {
  webContents: EventEmitter & { isHung: boolean; sent: unknown[] };
  loaded: string[];
  isGone: boolean;
  options: { webPreferences: Record<string, unknown> };
};

const boxes = (): Box[] => made.boxes as Box[];
const { ended, hanging } = words.windowTrouble;
/** All that is waiting to happen has happened. */
const settled = async (): Promise<void> => {
  for (let turn = 0; turn < 10; turn++) await Promise.resolve();
};
const gone = (window: MadeWindow, reason: string): boolean =>
  window.webContents.emit('render-process-gone', {}, { reason, exitCode: 1 });

async function open() {
  const { openWindow } = await import('../../../src-main/electron/window.ts');
  const main = openWindow(START_WINDOW);
  return { main, window: made.windows.at(-1) as MadeWindow };
}
/** Someone presses the window's own button to close it; true if it may. */
function pressClose(window: MadeWindow): boolean {
  let isPrevented = false;
  window.emit('close', { preventDefault: () => (isPrevented = true) });
  return !isPrevented;
}
const UNSAVED = { title: 'Sleeve', isUnsaved: true, path: null };

describe('a page that ends', () => {
  beforeEach(() => void made.boxes.splice(0));

  it('is said to have ended, and loaded again', async () => {
    const { window } = await open();
    gone(window, 'crashed');
    await settled();
    expect(boxes()).toMatchObject([{ options: { message: ended.title, detail: ended.detail(false) } }]);
    expect(window.loaded).toHaveLength(1);
    boxes()[0]?.press(ended.reload);
    await settled();
    expect(window.loaded).toEqual([window.loaded[0], window.loaded[0]]);
    // Ended again, it is said again: nothing is loaded round and round.
    gone(window, 'oom');
    await settled();
    expect(boxes()[1]).toMatchObject({ options: { detail: ended.detail(true) } });
    expect(window.loaded).toHaveLength(2);
  });

  it('can be closed instead, unsaved work or not', async () => {
    const { main, window } = await open();
    main.setState(UNSAVED);
    gone(window, 'killed');
    await settled();
    expect(pressClose(window)).toBe(true);
    boxes()[0]?.press(ended.close);
    await settled();
    expect([window.isGone, window.loaded.length]).toEqual([true, 1]);
  });

  it('is asked about once, and not at all when it ends with its window', async () => {
    const { window } = await open();
    gone(window, 'clean-exit');
    await settled();
    expect(boxes()).toHaveLength(0);
    gone(window, 'crashed');
    gone(window, 'crashed');
    await settled();
    expect(boxes()).toHaveLength(1);
  });
});

describe('a page that does not answer', () => {
  beforeEach(() => void made.boxes.splice(0));

  it('can be waited for, and is asked about again', async () => {
    const { window } = await open();
    window.webContents.emit('unresponsive');
    await settled();
    expect(boxes()).toMatchObject([{ options: { message: hanging.title } }]);
    boxes()[0]?.press(hanging.wait);
    await settled();
    expect(window.isGone).toBe(false);
    window.webContents.emit('unresponsive');
    await settled();
    expect(boxes()).toHaveLength(2);
  });

  it('can be closed with unsaved work, though it cannot be asked to save', async () => {
    const { main, window } = await open();
    main.setState(UNSAVED);
    window.webContents.emit('unresponsive');
    await settled();
    boxes()[0]?.press(hanging.close);
    await settled();
    expect(window.isGone).toBe(true);
  });

  it('that answers again takes the box away, whatever was on it', async () => {
    const { window } = await open();
    window.webContents.emit('unresponsive');
    await settled();
    window.webContents.emit('responsive');
    await settled();
    expect(boxes()[0]?.options.signal?.aborted).toBe(true);
    expect(window.isGone).toBe(false);
  });

  it('is found out when the window is to close and nothing is heard of it', async () => {
    vi.useFakeTimers();
    try {
      const { main, window } = await open();
      main.setState(UNSAVED);
      // One that answers is left to ask the person.
      expect(pressClose(window)).toBe(false);
      await vi.advanceTimersByTimeAsync(60_000);
      expect([window.webContents.sent, boxes().length]).toEqual([[{ kind: 'closing' }], 0]);
      window.webContents.isHung = true;
      expect(pressClose(window)).toBe(false);
      await vi.advanceTimersByTimeAsync(60_000);
      expect(boxes()).toMatchObject([{ options: { message: hanging.title } }]);
      boxes()[0]?.press(hanging.close);
      await vi.advanceTimersByTimeAsync(0);
      expect(window.isGone).toBe(true);
    } finally {
      vi.useRealTimers();
    }
  });

  it('and then ends is only said to have ended', async () => {
    const { window } = await open();
    window.webContents.emit('unresponsive');
    await settled();
    gone(window, 'crashed');
    await settled();
    expect(boxes()[0]?.options.signal?.aborted).toBe(true);
    boxes()[1]?.press(ended.reload);
    await settled();
    expect([window.isGone, window.loaded.length]).toEqual([false, 2]);
  });
});

describe('what the page is allowed', () => {
  it.each([false, true])('has developer tools only where it is not packaged (packaged: %s)', async (isPackaged) => {
    made.isPackaged = isPackaged;
    const { window } = await open();
    made.isPackaged = false;
    expect(window.options.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webSecurity: true,
      devTools: !isPackaged,
    });
    expect(pageRights(isPackaged).devTools).toBe(!isPackaged);
  });

  it('may keep the screen awake, and nothing else of all that a page can ask for', () => {
    expect(isPermitted('screen-wake-lock')).toBe(true);
    for (const permission of ['media', 'geolocation', 'notifications', 'clipboard-read', 'system-wake-lock', 'unknown'])
      expect(isPermitted(permission), permission).toBe(false);
  });
});

describe('the watch', () => {
  it('does nothing more to a window that it has closed', async () => {
    const done: string[] = [];
    const acts: PageActs = {
      askEnded: async () => 'reload',
      askHanging: async () => 'close',
      isAnswering: async () => false,
      reload: () => void done.push('reload'),
      close: () => void done.push('close'),
    };
    const watch = watchPage(acts);
    await watch.wasAsked();
    await watch.ended('killed');
    await watch.hangs();
    expect(done).toEqual(['close']);
  });
});
