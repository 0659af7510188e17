/** Files that let a browser in, and the file that opens what windows keep: for their user alone, and not for long. */
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { isSecret } from '@shared/host/sealed/index.ts';
import { startBrowserHost, type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { storageKey as keyFor } from '../../../src-main/browser-host/storage-key.ts';
import { nodeFiles } from '../../../src-main/services/index.ts';
import { comeIn, join as joinHost } from './calling.ts';

let folder: string;
let data: string;
const hosts: BrowserHost[] = [];
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-entry-'));
  data = join(folder, 'data');
  await mkdir(join(folder, 'page'));
  await writeFile(join(folder, 'page', 'index.html'), '');
});
afterEach(async () => {
  for (const host of hosts.splice(0)) await host.close();
  await rm(folder, { recursive: true, force: true });
});

async function start(options = {}): Promise<BrowserHost> {
  const host = await startBrowserHost({
    pageFolder: join(folder, 'page'),
    dataFolder: data,
    homeFolder: folder,
    ...options,
  });
  hosts.push(host);
  return host;
}

const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/\?visit=[\w-]{12}#[\w-]{43}/;
const addressIn = async (file: string): Promise<string> => ADDRESS.exec(await readFile(file, 'utf8'))?.[0] ?? '';
const modeOf = async (path: string): Promise<number> => (await stat(path)).mode & 0o777;
const isThere = (file: string): Promise<boolean> =>
  stat(file).then(
    () => true,
    () => false,
  );

describe('an entry page', () => {
  it('replaces itself by an address that lets one window in', async () => {
    const host = await start();
    const file = await host.newEntryPage();
    expect(file).toMatch(/[\\/]data[\\/]enter[\\/][\da-f-]{36}\.html$/);
    expect(await readFile(file, 'utf8')).toContain(`location.replace("${await addressIn(file)}")`);
    expect((await comeIn(await addressIn(file))).origin).toBe(host.origin);
  });

  it.skipIf(process.platform === 'win32')('is for its user alone, whatever the folder was before', async () => {
    await mkdir(join(data, 'enter'), { recursive: true, mode: 0o777 });
    await chmod(join(data, 'enter'), 0o777);
    const file = await (await start()).newEntryPage();
    expect([await modeOf(dirname(file)), await modeOf(file)]).toEqual([0o700, 0o600]);
  });

  it('is written into no folder that a link leads to', async () => {
    await mkdir(data);
    await mkdir(join(folder, 'elsewhere'));
    await symlink(join(folder, 'elsewhere'), join(data, 'enter'), 'junction');
    const host = await start();
    await expect(host.newEntryPage()).rejects.toMatchObject({ problem: { code: 'folder-not-writable' } });
    expect(await readdir(join(folder, 'elsewhere'))).toEqual([]);
  });

  it('is gone when it was used', async () => {
    const host = await start();
    const file = await host.newEntryPage();
    await comeIn(await addressIn(file));
    await vi.waitUntil(async () => !(await isThere(file)));
  });

  it('is gone after its time, and its key opens nothing any more; an address that was printed still does', async () => {
    const host = await start({ entryPageMs: 50 });
    const printed = await host.newAddress();
    const file = await host.newEntryPage();
    const address = await addressIn(file);
    await vi.waitUntil(async () => !(await isThere(file)));
    expect((await joinHost(host.origin, 'enter', new URL(address).hash.slice(1))).answer.status).toBe(403);
    expect((await comeIn(printed)).origin).toBe(host.origin);
  });

  it('is gone when the host ends, and what a killed one left goes at the next start', async () => {
    const host = await start();
    const file = await host.newEntryPage();
    await host.close();
    hosts.pop();
    expect(await isThere(file)).toBe(false);

    const [old, young] = [join(data, 'enter', 'old.html'), join(data, 'enter', 'young.html')];
    for (const left of [old, young]) await writeFile(left, '');
    await utimes(old, new Date(), new Date(Date.now() - 120_000));
    await start();
    expect([await isThere(old), await isThere(young)]).toEqual([false, true]);
  });
});

describe('the storage key', () => {
  const storageKey = (): Promise<string> =>
    keyFor({ files: nodeFiles, wait: (ms) => setTimeout(ms), dataFolder: data });

  it('stays the same from run to run, in a file for its user alone', async () => {
    await mkdir(data);
    const key = await storageKey();
    expect(isSecret(key)).toBe(true);
    await chmod(join(data, 'storage-key'), 0o644);
    expect(await storageKey()).toBe(key);
    if (process.platform !== 'win32') expect(await modeOf(join(data, 'storage-key'))).toBe(0o600);
    expect((await comeIn(await (await start()).newAddress())).storageKey).toBe(key);
  });

  it('is one for all that start at once, with nothing left aside', async () => {
    await mkdir(data);
    const keys = await Promise.all(Array.from({ length: 8 }, () => storageKey()));
    expect(new Set(keys).size).toBe(1);
    expect(await readdir(data)).toEqual(['storage-key']);
  });

  it('is one for all that start at once where the one before cannot be read', async () => {
    await mkdir(data);
    await writeFile(join(data, 'storage-key'), 'half a ke');
    const keys = await Promise.all(Array.from({ length: 8 }, storageKey));
    expect(new Set(keys).size).toBe(1);
    expect((await readdir(data)).sort()).toEqual(['storage-key', 'storage-key.unreadable']);
    expect(await readFile(join(data, 'storage-key.unreadable'), 'utf8')).toBe('half a ke');
  });

  it('that cannot be read is put aside, not away', async () => {
    await mkdir(data);
    await writeFile(join(data, 'storage-key'), 'half a ke');
    expect(isSecret(await storageKey())).toBe(true);
    expect(await readFile(join(data, 'storage-key.unreadable'), 'utf8')).toBe('half a ke');
  });
});
