/** What the person reads who started the host. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { expect, it, vi } from 'vitest';
import { printAddresses, startBrowserHost } from '../../../src-main/browser-host/index.ts';
import { comeIn } from './calling.ts';

const ADDRESS = /^Walewright is at (http:\/\/127\.0\.0\.1:\d+\/\?visit=[\w-]{12}#[\w-]{43})$/;

it('is an address that opens one window, and another one for every Enter', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'walewright-terminal-'));
  await mkdir(join(folder, 'page'));
  await writeFile(join(folder, 'page', 'index.html'), '');
  const host = await startBrowserHost({ pageFolder: join(folder, 'page'), dataFolder: join(folder, 'data') });
  const lines: string[] = [];
  const input = new PassThrough();
  const stop = await printAddresses(host, { say: (line) => lines.push(line), input });
  expect(lines[1]).toContain('Enter prints another');

  input.write('\n');
  await vi.waitUntil(() => lines.length === 3);
  input.write('\n');
  await vi.waitUntil(() => lines.length === 4);
  const addresses = lines.flatMap((line) => ADDRESS.exec(line)?.[1] ?? []);
  expect(new Set(addresses).size).toBe(3);
  for (const address of addresses) expect((await comeIn(address)).origin).toBe(host.origin);

  stop();
  await host.close();
  await rm(folder, { recursive: true, force: true });
});
