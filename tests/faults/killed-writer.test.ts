/** A real process, killed while it writes. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { chanceOf } from '../kills/chance.ts';
import { contentOf } from './two-contents.ts';

const root = resolve(import.meta.dirname, '../..');
/** Each is a test of its own: on a busy machine it is the start of the writer that takes the time. */
const KILLS = [1, 2, 3, 4, 5, 6];

let folder: string;
beforeEach(async () => void (folder = await mkdtemp(join(tmpdir(), 'walewright-killed-'))));
afterEach(() => rm(folder, { recursive: true, force: true }));

async function startWriter(document: string): Promise<{ kill: () => Promise<void> }> {
  const writer = spawn(process.execPath, ['--import', 'tsx', 'tests/faults/endless-writer.ts', document], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(writer, 'exit');
  await Promise.race([
    once(writer.stdout, 'data'),
    ended.then(() => Promise.reject(new Error('The writer ended before it wrote'))),
  ]);
  return {
    async kill() {
      writer.kill('SIGKILL');
      await ended;
    },
  };
}

describe('killing the program while it saves', () => {
  it.each(KILLS)('leaves the document as it was or as it should be, whole: kill %i', async (kill) => {
    const document = join(folder, 'skerry.walewright');
    const allowed = [contentOf(0), contentOf(1)].map((bytes) => Buffer.from(bytes));
    await writeFile(document, contentOf(0));
    const writer = await startWriter(document);
    const ms = chanceOf(kill)() * 60;
    await setTimeout(ms);
    await writer.kill();
    const found = await readFile(document);
    expect(
      allowed.some((bytes) => bytes.equals(found)),
      `killed after ${ms} ms: ${found.length} bytes`,
    ).toBe(true);
  });
});
