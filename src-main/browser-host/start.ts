/**
 * The host for a browser: the page and the services on a loopback port.
 *
 * The port is any that is free, so a second start never meets the first.
 */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { finished } from 'node:stream/promises';
import { words } from '@shared/words/index.ts';
import {
  builtPage,
  createServices,
  dispatch,
  pageFolder,
  thisMachine,
  type MachineOptions,
  type Shell,
} from '../services/index.ts';
import { refuse, sendOutcome, sendPage } from './answer.ts';
import { bodyText, MOST_BODY_BYTES } from './body.ts';
import { cookieName, refusalOf, refusalOfHost } from './guard.ts';
import { makeKeys } from './keys.ts';

/** Answers what is neither a call nor the way in; the request has been let in. */
export type ServePage = (request: IncomingMessage, response: ServerResponse, path: string) => void | Promise<void>;

export interface BrowserHostOptions extends MachineOptions {
  /** A project to open, absolute. */
  readonly openAtStart?: string | null;
  /** Where the built page lies; by default where our build puts it. */
  readonly pageFolder?: string;
  /** Serves the page in place of the built one, given the server before it listens. */
  readonly servePage?: (server: Server) => Promise<ServePage>;
  readonly mostBodyBytes?: number;
}

export interface BrowserHost {
  /** Opens the program as often as it is used: for the person's eyes. */
  readonly address: string;
  /** `http://127.0.0.1:PORT` */
  readonly origin: string;
  /** An address that opens the program once: for command lines, which others can read. */
  addressForOnce(): string;
  /** Lets running calls end, then stops. */
  close(): Promise<void>;
}

const LOOPBACK = '127.0.0.1';
const CALL = '/call/';

/** Rejects if the page has not been built or no port can be had. */
export async function startBrowserHost(options: BrowserHostOptions = {}): Promise<BrowserHost> {
  const mostBodyBytes = options.mostBodyBytes ?? MOST_BODY_BYTES;
  const keys = makeKeys();
  const server = createServer();
  const servePage = options.servePage
    ? await options.servePage(server)
    : await serveBuiltPage(options.pageFolder ?? pageFolder());
  const { environment, leave } = await thisMachine(browserShell(options.openAtStart ?? null), options);
  const services = createServices(environment);

  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, LOOPBACK, resolve);
  });
  const { port } = server.address() as AddressInfo;
  const authority = `${LOOPBACK}:${port}`;
  const origin = `http://${authority}`;
  const addressWith = (key: string): string => `${origin}/?key=${key}`;

  /** A good key becomes a cookie and leaves the address, so that no history or screen keeps it. */
  function letIn(url: URL, key: string, response: ServerResponse): void {
    const cookie = keys.admit(key);
    if (cookie === null) return refuse(response, false, { status: 403, detail: 'its key is wrong or used up' });
    url.searchParams.delete('key');
    response.writeHead(303, {
      location: url.pathname + url.search,
      'set-cookie': `${cookieName(port)}=${cookie}; HttpOnly; SameSite=Strict; Path=/`,
      'cache-control': 'no-store',
      'referrer-policy': 'no-referrer',
    });
    response.end();
  }

  async function call(method: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
    const text = await bodyText(request, mostBodyBytes);
    if (text === null) {
      return refuse(response, true, { status: 413, detail: `it has more than ${mostBodyBytes} bytes` });
    }
    let params: unknown;
    try {
      params = JSON.parse(text);
    } catch {
      return refuse(response, true, { status: 400, detail: 'it is not JSON' });
    }
    const outcome = await dispatch(services, method, params);
    const isUnknown = !outcome.ok && outcome.problem.code === 'request-invalid';
    sendOutcome(response, isUnknown ? 400 : 200, outcome);
  }

  async function handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const url = addressOf(request, origin);
    const isCall = url?.pathname.startsWith(CALL) ?? false;
    if (url === null) return refuse(response, false, { status: 400, detail: 'its address cannot be read' });
    const key = url.searchParams.get('key');
    if (request.method === 'GET' && url.pathname === '/' && key !== null) {
      const refusal = refusalOfHost(request, authority);
      return refusal ? refuse(response, false, refusal) : letIn(url, key, response);
    }
    const refusal = refusalOf(request, authority, port, keys);
    if (refusal) return refuse(response, isCall, refusal);
    if (isCall && request.method === 'POST') return call(url.pathname.slice(CALL.length), request, response);
    const isRead = request.method === 'GET' || request.method === 'HEAD';
    if (isCall || !isRead) return refuse(response, isCall, { status: 405, detail: 'it asks in another way' });
    return servePage(request, response, url.pathname);
  }

  const running = new Set<Promise<void>>();
  server.on('request', (request, response) => {
    const job = handle(request, response)
      .catch(() => {
        // The browser went away in the middle, or the page's file did.
        if (!response.headersSent) response.writeHead(500);
        response.end();
      })
      .then(() => finished(response))
      .catch(() => undefined);
    running.add(job);
    void job.then(() => running.delete(job));
  });

  return {
    address: addressWith(keys.lasting),
    origin,
    addressForOnce: () => addressWith(keys.once()),
    async close() {
      const closed = new Promise((resolve) => server.close(resolve));
      await Promise.allSettled(running);
      server.closeAllConnections();
      await closed;
      await leave();
    },
  };
}

async function serveBuiltPage(folder: string): Promise<ServePage> {
  const page = await builtPage(folder).catch(() => {
    throw new Error(words.launcher.notBuilt(folder));
  });
  return async (_request, response, path) => sendPage(response, await page.answer(path));
}

function addressOf(request: IncomingMessage, origin: string): URL | null {
  const target = request.url ?? '/';
  // Only the plain form: an absolute address could name another host.
  return target.startsWith('/') && URL.canParse(origin + target) ? new URL(origin + target) : null;
}

/** A browser has no dialogs to lend and guards its own window. */
function browserShell(openAtStart: string | null): Shell {
  return {
    kind: 'browser',
    openAtStart,
    dialogs: null,
    setWindowState: () => undefined,
    noteDocument: () => undefined,
    noteProblem: ({ code }) => console.error(`walewright: ${code}`),
  };
}
