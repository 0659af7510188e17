/**
 * No row that was said to be counted is lost: not where an operation on files
 * fails, at the first, the second, … that counting asks for, and not where the
 * program is killed.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Services } from '@shared/host/index.ts';
import { journalFromText } from '@shared/journal/index.ts';
import { followJournal } from '@shared/knitting/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { createServices, nodeFiles, type FileOperations } from '../../src-main/services/index.ts';
import { chanceOf } from '../kills/chance.ts';
import { testEnvironment } from '../unit/services/test-environment.ts';
import { failing, type Fault } from './failing-files.ts';
import { counted, tallPiece } from './tall-piece.ts';

const root = resolve(import.meta.dirname, '../..');

/** More operations than counting a row asks for. */
const MOST_OPERATIONS = 80;

let folder: string;
beforeEach(async () => (folder = await mkdtemp(join(tmpdir(), 'walewright-counted-'))));
afterEach(() => rm(folder, { recursive: true, force: true }));

const { of } = tallPiece();
const begin = (services: Services) => services['knitting.begin']({ begun: tallPiece(), isAnew: false });
const count = (services: Services, reading: number) =>
  services['knitting.append']({ of, after: reading, events: [counted(reading)] });

/** How many rows are counted, as a run that starts now finds them. */
async function found(): Promise<number> {
  const read = await createServices(testEnvironment(folder))['knitting.read']({ of });
  const journal = journalFromText(read?.text ?? '');
  if (!journal) throw new Error('The journal is gone');
  expect(journal.rest.kind).not.toBe('damaged');
  return followJournal(journal).place.reading;
}

/** Services over files that work until `fault` is armed for the `nth` operation from then on. */
function faulty(fault: Fault, nth: number, lasts: 'once' | 'for good') {
  let current: FileOperations = nodeFiles;
  const files = new Proxy(nodeFiles, { get: (_, key: keyof FileOperations) => current[key] });
  const services = createServices(testEnvironment(folder, { files }));
  const made = failing(nodeFiles, fault, nth, lasts);
  return { services, asked: made.asked, arm: () => (current = made.files) };
}

describe('counting while operations fail', () => {
  it.each<[string, Fault, 'once' | 'for good', readonly string[]]>([
    [
      'with an error of the device, once',
      { kind: 'error', code: 'EIO' },
      'once',
      ['file-not-written', 'file-not-readable'],
    ],
    ['with a full disk', { kind: 'error', code: 'ENOSPC' }, 'for good', ['disk-full', 'file-not-readable']],
    [
      'on a disk that was made read-only',
      { kind: 'error', code: 'EROFS' },
      'for good',
      ['folder-not-writable', 'file-not-readable'],
    ],
    ['with the end of the program', { kind: 'crash' }, 'for good', ['unexpected']],
    ['with writes that take a part', { kind: 'short' }, 'for good', []],
  ])('%s, loses no row and counts none that was not done', async (_, fault, lasts, codes) => {
    let failures = 0;
    for (let nth = 1; nth <= MOST_OPERATIONS; nth++) {
      await rm(join(folder, '.data'), { recursive: true, force: true });
      const { services, asked, arm } = faulty(fault, nth, lasts);
      await begin(services);
      await count(services, 0);
      arm();
      const problem = await count(services, 1).then(
        () => null,
        (error: unknown) => problemOf(error),
      );
      if (problem) {
        failures++;
        expect(codes).toContain(problem.code);
      }
      expect(problem ? [1, 2] : [2]).toContain(await found());
      // A run that starts afterwards is sent the same row once more, and goes on.
      const next = createServices(testEnvironment(folder));
      expect((await count(next, 1)).isKept).toBe(true);
      expect((await count(next, 2)).isKept).toBe(true);
      expect(await found()).toBe(3);
      if (asked.length < nth) {
        if (fault.kind !== 'short') expect(failures).toBeGreaterThanOrEqual(5);
        return;
      }
    }
    throw new Error('Counting never passed');
  });
});

describe('killing the program while it counts', () => {
  it.each([1, 2, 3])('loses no row that was said to be counted: kill %i', async (kill) => {
    const knitter = spawn(process.execPath, ['--import', 'tsx', 'tests/faults/endless-knitter.ts', folder], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const ended = once(knitter, 'exit');
    const wanted = 1 + Math.floor(chanceOf(kill)() * 40);
    let said = 0;
    for await (const line of createInterface(knitter.stdout)) {
      said = Number(line);
      if (said === wanted) knitter.kill('SIGKILL');
    }
    await ended;
    expect(said).toBeGreaterThanOrEqual(wanted);
    expect([said, said + 1]).toContain(await found());
    const next = createServices(testEnvironment(folder));
    const reading = await found();
    expect((await count(next, reading)).isKept).toBe(true);
    expect(await found()).toBe(reading + 1);
  });
});
