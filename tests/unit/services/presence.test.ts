/** Telling runs that are going on from those that have ended. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { announcePresence, nodeFiles } from '../../../src-main/services/index.ts';

let folder: string;
beforeEach(async () => void (folder = await mkdtemp(join(tmpdir(), 'walewright-presence-'))));
afterEach(() => rm(folder, { recursive: true, force: true }));

const announce = () => announcePresence(nodeFiles, async () => undefined, folder);

describe('a run', () => {
  it('is seen by another while it goes on, and not after it has ended', async () => {
    const [first, second] = [await announce(), await announce()];
    expect(first.instance).not.toBe(second.instance);
    expect(await second.isRunning(first.instance)).toBe(true);
    await first.close();
    expect(await second.isRunning(first.instance)).toBe(false);
    await second.close();
  });

  it('that left only its note is seen to have ended', async () => {
    const run = await announce();
    const gone = createServer();
    const port = await portOf(gone);
    await new Promise((resolve) => gone.close(resolve));
    await writeFile(join(folder, 'running', 'crashed'), String(port));
    expect(await run.isRunning('crashed')).toBe(false);
    await run.close();
  });

  it('whose port somebody else has now is seen to have ended', async () => {
    const run = await announce();
    const stranger = createServer((socket) => socket.end('HTTP/1.1 400 Bad Request\r\n\r\n'));
    await writeFile(join(folder, 'running', 'crashed'), String(await portOf(stranger)));
    expect(await run.isRunning('crashed')).toBe(false);
    await new Promise((resolve) => stranger.close(resolve));
    await run.close();
  });

  it.each(['', 'x', '0', '70000', '-1'])('with the note %j is seen to have ended', async (note) => {
    const run = await announce();
    await writeFile(join(folder, 'running', 'damaged'), note);
    expect(await run.isRunning('damaged')).toBe(false);
    await run.close();
  });
});

function portOf(server: ReturnType<typeof createServer>): Promise<number> {
  return new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve((server.address() as AddressInfo).port)));
}
