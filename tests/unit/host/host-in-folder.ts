/** A browser host with a folder and a page of its own. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { startBrowserHost, type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { comeIn, type Caller } from './calling.ts';

export const PAGE = '<!doctype html><title>Walewright</title>';

/** A new folder with a page of two files, and beside it a file that is nobody's business. */
export async function makeHostFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'walewright-host-'));
  await mkdir(join(folder, 'page', 'assets'), { recursive: true });
  await writeFile(join(folder, 'page', 'index.html'), PAGE);
  await writeFile(join(folder, 'page', 'assets', 'index-1a2b.js'), 'export {};');
  await writeFile(join(folder, 'secret.txt'), 'secret');
  return folder;
}

/** Starts a host in such a folder; `options` come before what the folder gives. */
export function startIn(
  folder: string,
  options: Partial<Parameters<typeof startBrowserHost>[0]> = {},
): Promise<BrowserHost> {
  return startBrowserHost({
    pageFolder: join(folder, 'page'),
    dataFolder: join(folder, 'data'),
    homeFolder: folder,
    ...options,
  });
}

/** What a test has of its own. */
export interface OwnHost {
  readonly folder: string;
  readonly host: BrowserHost;
  /** A window that is in. */
  readonly caller: Caller;
}

/** Starts a host in a folder before each test of a file, lets a window in, and hands them over; takes them away behind it. */
export function hostForEachTest(take: (own: OwnHost) => void): void {
  let own: OwnHost;
  beforeEach(async () => {
    const folder = await makeHostFolder();
    const host = await startIn(folder);
    own = { folder, host, caller: await comeIn(await host.newAddress()) };
    take(own);
  });
  afterEach(async () => {
    await own.host.close();
    await rm(own.folder, { recursive: true, force: true });
  });
}
