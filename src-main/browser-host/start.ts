/** The host for a browser: the page and the services on a loopback port. */
import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { Params, Result, Services } from '@shared/host/index.ts';
import { CALL_PATH, VISIT } from '@shared/host/sealed/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import {
  builtPage,
  createServices,
  pageFolder,
  thisMachine,
  type MachineOptions,
  type Shell,
} from '../services/index.ts';
import { Admission } from './admission.ts';
import { refuse, sendPage } from './answer.ts';
import { Entries } from './entries.ts';
import { ENTRY_PAGE_MS, removeOldEntryPages, writeEntryPage } from './entry-page.ts';
import { refusalOfHost } from './guard.ts';
import { lastPorts, listenOnOneOf, notePort } from './ports.ts';
import { sealedCalls } from './sealed-calls.ts';
import { serve, type Handle } from './serving.ts';
import { storageKey } from './storage-key.ts';

/** Answers what is no call; the request has named our host. */
export type ServePage = (request: IncomingMessage, response: ServerResponse, path: string) => void | Promise<void>;

export type WindowState = Params<'window.setState'>;

export interface BrowserHostOptions extends MachineOptions {
  /** A project to open, absolute. */
  readonly openAtStart?: string | null;
  /** Where the built page lies; by default where our build puts it. */
  readonly pageFolder?: string;
  /** Serves the page in place of the built one, given the server before it listens. */
  readonly servePage?: (server: Server) => Promise<ServePage>;
  /** How long entry pages are there; a minute. */
  readonly entryPageMs?: number;
  /** Told what each window says of itself; windows have names of no meaning. */
  readonly onWindowState?: (window: string, state: WindowState) => void;
  /** Told when the key of an address was used a second time. Says so on the console by default. */
  readonly onUsedTwice?: () => void;
}

export interface BrowserHost {
  /** `http://127.0.0.1:PORT`; gives the page to anybody, and lets nobody in. */
  readonly origin: string;
  /** A new address that lets one window in, good until it is used: for the person's eyes. */
  newAddress(): Promise<string>;
  /** A new page, as a file, that lets one window in within a minute: for command lines, which others can read. */
  newEntryPage(): Promise<string>;
  /** What the person set on this machine. */
  settings(): Promise<Result<'settings.read'>>;
  /** Cuts off what has not all come, lets running calls end, and stops. */
  close(): Promise<void>;
}

const LOOPBACK = '127.0.0.1';

/** Rejects if the page has not been built or no port can be had. */
export async function startBrowserHost(options: BrowserHostOptions = {}): Promise<BrowserHost> {
  const { entryPageMs = ENTRY_PAGE_MS, onUsedTwice = () => console.error(terminalWords.launcher.usedTwice) } = options;
  const server = createServer();
  const servePage = options.servePage
    ? await options.servePage(server)
    : await serveBuiltPage(options.pageFolder ?? pageFolder());
  const { environment, leave } = await thisMachine(browserShell(options.openAtStart ?? null), options);
  const { dataFolder, now } = environment;
  const services = createServices(environment);
  await removeOldEntryPages(dataFolder, now().getTime());
  const entries = new Entries();
  const calls = await sealedCalls({
    storageKey: await storageKey(environment),
    entries,
    admission: new Admission(),
    onUsedTwice,
    servicesFor: (window): Services => ({
      ...services,
      'window.setState': async (state) => {
        options.onWindowState?.(window, state);
        return services['window.setState'](state);
      },
    }),
  });
  const portsBefore = await lastPorts(dataFolder);
  const port = await listenOnOneOf(server, LOOPBACK, portsBefore);
  // From here to where requests are handled nothing is waited for, or one that comes first would never be answered.
  const authority = `${LOOPBACK}:${port}`;
  const origin = `http://${authority}`;
  // Each differs before `#` too: what another program at our address has left in a browser, or in a tab, knows none.
  const addressWith = (entryKey: string): string =>
    `${origin}/?${VISIT}=${randomBytes(9).toString('base64url')}#${entryKey}`;

  const handle: Handle = async (request, response, whenWhole) => {
    const wrongHost = refusalOfHost(request, authority);
    if (wrongHost) return refuse(response, wrongHost);
    const path = pathOf(request, origin);
    if (path === null) return refuse(response, { status: 400, detail: 'its address cannot be read' });
    const isCall = path.startsWith(CALL_PATH);
    if (isCall && request.method === 'POST') {
      return calls.answer(authority, path.slice(CALL_PATH.length), request, response, whenWhole);
    }
    const isRead = request.method === 'GET' || request.method === 'HEAD';
    if (isCall || !isRead) return refuse(response, { status: 405, detail: 'it asks in another way' });
    whenWhole();
    return servePage(request, response, path);
  };
  const stopServing = serve(server, handle);
  await notePort(environment, port, portsBefore);
  const removals = new Set<Promise<void>>();

  return {
    origin,
    settings: () => services['settings.read']({}),
    newAddress: async () => addressWith((await entries.add()).key),
    async newEntryPage() {
      let remove = async (): Promise<void> => undefined;
      const { key: entryKey, takeBack } = await entries.add(() => {
        clearTimeout(timer);
        const removal = remove().finally(() => removals.delete(removal));
        removals.add(removal);
      });
      const timer = setTimeout(takeBack, entryPageMs);
      timer.unref();
      try {
        const page = await writeEntryPage(dataFolder, addressWith(entryKey));
        remove = page.remove;
        return page.file;
      } catch (error) {
        takeBack();
        throw error;
      }
    },
    async close() {
      entries.clear();
      await stopServing();
      await Promise.all(removals);
      await leave();
    },
  };
}

async function serveBuiltPage(folder: string): Promise<ServePage> {
  const page = await builtPage(folder).catch(() => {
    throw new Error(terminalWords.launcher.notBuilt(folder));
  });
  return async ({ headers }, response, path) => {
    const accepted = headers['accept-encoding'];
    // Node joins what comes twice.
    sendPage(response, await page.answer(path, typeof accepted === 'string' ? accepted : ''));
  };
}

/** The path that is asked for, or null. */
function pathOf(request: IncomingMessage, origin: string): string | null {
  const target = request.url ?? '/';
  // Only the plain form: an absolute address could name another host.
  return target.startsWith('/') && URL.canParse(origin + target) ? new URL(origin + target).pathname : null;
}

/** A browser has no dialogs to lend and guards its own window. */
function browserShell(openAtStart: string | null): Shell {
  return {
    kind: 'browser',
    openAtStart,
    isNamed: (path) => path === openAtStart,
    dialogs: null,
    print: null,
    setWindowState: () => undefined,
    noteDocument: () => undefined,
    noteProblem: ({ code }) => console.error(`walewright: ${code}`),
  };
}
