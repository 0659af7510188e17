/** What the host takes of memory while large files come at once: measured in a process of its own. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { ask } from './asking.ts';
import { comeIn, openedAnswer, sealedRequest } from './calling.ts';

const LARGE = 59_000_000;
/**
 * The most that the host's process may take, all told, in MB. Four at once took 1,150 where nothing bounded them;
 * one after the other they take 470 to 600, as the garbage of the one before is still there or not.
 */
const MOST_MB = 800;

/**
 * Sealing and writing 236 MB takes some seconds alone, and beside other tests up to two minutes where memory that is
 * touched for the first time is dear; nothing is judged by it.
 */
const AT_MOST_MS = 600_000;

it(
  'takes four files of 59 MB at once within its bound of memory',
  async () => {
    const folder = await mkdtemp(join(tmpdir(), 'walewright-memory-'));
    await mkdir(join(folder, 'page'));
    await writeFile(join(folder, 'page', 'index.html'), '');
    const host = spawn(process.execPath, ['--import', 'tsx', join(import.meta.dirname, 'host-alone.ts'), folder], {
      cwd: resolve(import.meta.dirname, '../../..'),
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });
    const ended = once(host, 'exit');
    try {
      const [{ address }] = (await once(host, 'message')) as [{ address: string }];
      const caller = await comeIn(address);
      const project = projectToText(sampleProject());
      // JSON may end in blanks.
      const text = project + ' '.repeat(LARGE - project.length);
      const calls = [];
      for (let index = 0; index < 4; index++) {
        const head = caller.head('documents.write');
        const path = join(folder, `${index}.walewright`);
        const request = await sealedRequest(caller.origin, caller.keys, head, {
          path,
          text,
          expect: { kind: 'nothing' },
        });
        calls.push({ head, path, request });
      }
      const answers = await Promise.all(calls.map(({ request }) => ask(caller.origin, request)));
      for (const [index, { head, path }] of calls.entries()) {
        const answer = answers[index];
        expect(answer && (await openedAnswer(caller.keys, head, answer))).toMatchObject({ ok: true });
        expect((await stat(path)).size).toBe(LARGE);
      }
      const message = once(host, 'message');
      host.send('peak');
      const [{ peakMb }] = (await message) as [{ peakMb: number }];
      expect(peakMb).toBeGreaterThan(LARGE / 1e6);
      expect(peakMb).toBeLessThan(MOST_MB);
    } finally {
      host.disconnect();
      await ended;
      await rm(folder, { recursive: true, force: true });
    }
  },
  AT_MOST_MS,
);
