/** Both ends of Electron's bridge, with Electron itself made up. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { BrowserWindow } from 'electron';
import { createServices } from '../../../src-main/services/index.ts';
import { testEnvironment } from '../services/test-environment.ts';

type Handler = (...given: unknown[]) => unknown;

const made = vi.hoisted(() => ({
  exposed: {} as Record<string, Record<string, Handler>>,
  invoked: [] as unknown[][],
  listeners: new Map<string, Handler>(),
  handlers: new Map<string, Handler>(),
}));

vi.mock('electron', () => ({
  contextBridge: {
    exposeInMainWorld: (name: string, api: Record<string, Handler>) => (made.exposed[name] = api),
  },
  ipcRenderer: {
    invoke: async (...given: unknown[]) => made.invoked.push(given),
    on: (channel: string, listener: Handler) => made.listeners.set(channel, listener),
    off: (channel: string, listener: Handler) =>
      made.listeners.get(channel) === listener && made.listeners.delete(channel),
  },
  ipcMain: { handle: (channel: string, handler: Handler) => made.handlers.set(channel, handler) },
  protocol: {},
}));

describe('the preload script', () => {
  beforeEach(async () => {
    vi.resetModules();
    made.listeners.clear();
    await import('../../../src-main/electron/preload.ts');
  });

  it('gives the page one bridge of two functions', () => {
    expect(Object.keys(made.exposed)).toEqual(['walewrightBridge']);
    expect(Object.keys(made.exposed['walewrightBridge'] ?? {}).sort()).toEqual(['call', 'listen']);
  });

  it('sends calls on one channel, whatever their name', async () => {
    await made.exposed['walewrightBridge']?.['call']?.('any.name', { a: 1 });
    expect(made.invoked.at(-1)).toEqual(['walewright:call', 'any.name', { a: 1 }]);
  });

  it("hands on what the shell says, never Electron's own event", () => {
    const heard: unknown[][] = [];
    const stop = made.exposed['walewrightBridge']?.['listen']?.((...given: unknown[]) => heard.push(given)) as Handler;
    made.listeners.get('walewright:event')?.({ sender: 'ipcRenderer' }, { kind: 'closing' });
    expect(heard).toEqual([[{ kind: 'closing' }]]);
    stop();
    expect(made.listeners.size).toBe(0);
  });
});

describe('a call to the main process', () => {
  const mainFrame = { url: 'walewright://page/' };
  const work = { window: 'this-window', work: 'this-work' };
  const window = { webContents: { mainFrame } } as unknown as BrowserWindow;

  async function call(senderFrame: unknown, method: unknown = 'recovery.drop'): Promise<unknown> {
    const { answerCalls } = await import('../../../src-main/electron/calls.ts');
    answerCalls(createServices(testEnvironment('/nowhere')), () => window);
    return made.handlers.get('walewright:call')?.({ senderFrame }, method, work);
  }

  it('from our page is answered', async () => {
    expect(await call(mainFrame)).toEqual({ ok: true, value: {} });
  });

  it.each([
    ['a frame inside it', { url: 'walewright://page/' }],
    ['a frame that is gone', null],
  ])('from %s is refused', async (_case, frame) => {
    expect(await call(frame)).toMatchObject({ ok: false, problem: { code: 'request-refused' } });
  });

  it.each(['https://evil.example/', 'file:///etc/passwd', 'walewright://page.evil.example/', 'about:blank'])(
    'from our window is refused once it shows %s',
    async (url) => {
      const shown = { ...mainFrame, url };
      const elsewhere = { webContents: { mainFrame: shown } } as unknown as BrowserWindow;
      const { answerCalls } = await import('../../../src-main/electron/calls.ts');
      answerCalls(createServices(testEnvironment('/nowhere')), () => elsewhere);
      const answer = await made.handlers.get('walewright:call')?.({ senderFrame: shown }, 'recovery.drop', work);
      expect(answer).toMatchObject({ ok: false, problem: { code: 'request-refused' } });
    },
  );

  it.each([undefined, null, 1, ['recovery.drop'], {}])('named %j is refused', async (method) => {
    expect(await call(mainFrame, method ?? 0)).toMatchObject({ ok: false, problem: { code: 'request-refused' } });
  });
});
