/** A browser host with a folder and a page of its own. */
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startBrowserHost, type BrowserHost } from '../../../src-main/browser-host/index.ts';

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
