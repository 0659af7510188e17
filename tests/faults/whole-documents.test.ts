/**
 * A document is the old bytes or the new ones, whole, whatever fails.
 *
 * The method is SQLite's ("How SQLite Is Tested", anomaly testing): fail at the
 * first operation on files, at the second, …, until the write passes, and look
 * at the document after each.
 */
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ProblemError, type Problem } from '@shared/problem/index.ts';
import { nodeFiles, type FileOperations } from '../../src-main/services/index.ts';
import { processesHere, writeChecked, writeWhole } from '../../src-main/services/files/index.ts';
import { failing, type Fault } from './failing-files.ts';
import { ForgetfulDisk, LUCK } from './forgetful-disk.ts';

/** More operations than a write asks for; reaching it means that it never passes. */
const MOST_OPERATIONS = 200;

const OLD = new TextEncoder().encode('{"name":"old"}\n'.repeat(100));
const NEW = new TextEncoder().encode('{"name":"new, and of another length"}\n'.repeat(130));

let folder: string;
let document: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-faults-'));
  document = join(folder, 'skerry.walewright');
  await writeFile(document, OLD);
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const noWait = async (): Promise<void> => undefined;

type Write = (files: FileOperations, path: string) => Promise<void>;

const checked: Write = (files, path) =>
  writeChecked({ files, wait: noWait, processes: processesHere }, path, NEW, () => undefined);

const WRITERS: readonly { readonly writer: string; readonly write: Write }[] = [
  { writer: 'what is not asked about', write: (files, path) => writeWhole(files, noWait, path, NEW) },
  { writer: 'what is asked about under a lock', write: checked },
];

/** Null if it passes. */
async function tried(write: Write, files: FileOperations): Promise<unknown> {
  return write(files, document).then(
    () => null,
    (thrown: unknown) => thrown,
  );
}

async function holds(): Promise<'nothing' | 'old' | 'new' | 'something else'> {
  const bytes = await readFile(document).catch(() => null);
  if (bytes === null) return 'nothing';
  return bytes.equals(OLD) ? 'old' : bytes.equals(NEW) ? 'new' : 'something else';
}

/** Tries a fresh write with the fault at the 1st, 2nd, … operation until there are not so many. */
async function atEachOperation(
  write: Write,
  before: 'old' | 'nothing',
  fault: Fault,
  lasts: 'once' | 'for good',
  check: (thrown: unknown, operation: string) => Promise<void>,
): Promise<number> {
  for (let nth = 1; nth <= MOST_OPERATIONS; nth += 1) {
    if (before === 'old') await writeFile(document, OLD);
    else await rm(document, { force: true });
    const { files, asked } = failing(nodeFiles, fault, nth, lasts);
    const thrown = await tried(write, files);
    if (asked.length < nth) {
      expect(thrown).toBeNull();
      return nth - 1;
    }
    await check(thrown, asked[nth - 1] as string);
  }
  throw new Error('The write never passed');
}

function problemIn(thrown: unknown): Problem {
  if (thrown instanceof ProblemError) return thrown.problem;
  throw thrown;
}

describe.each(WRITERS)('writing over $writer while operations fail', ({ write }) => {
  it.each([
    { code: 'EIO', lasts: 'once' },
    { code: 'EIO', lasts: 'for good' },
    { code: 'ENOSPC', lasts: 'once' },
    { code: 'ENOSPC', lasts: 'for good' },
    { code: 'EACCES', lasts: 'for good' },
  ] as const)('with $code $lasts, at any of them, leaves it whole and says so', async ({ code, lasts }) => {
    let failures = 0;
    const operations = await atEachOperation(
      write,
      'old',
      { kind: 'error', code },
      lasts,
      async (thrown, operation) => {
        if (thrown === null) {
          // Only what comes after the rename may fail in silence: the document is the new one then.
          expect(await holds(), operation).toBe('new');
          return;
        }
        failures += 1;
        expect(await holds(), operation).toBe('old');
        const problem = problemIn(thrown);
        expect(problem.where).toBe(document);
        // What cannot be asked of the old file is said of reading it.
        if (code === 'ENOSPC') expect(['disk-full', 'file-not-readable']).toContain(problem.code);
        if (code === 'ENOSPC' && operation === 'write') expect(problem.code).toBe('disk-full');
      },
    );
    // Asking what is there, opening aside, writing, permissions, flushing, closing, renaming.
    expect(failures).toBeGreaterThanOrEqual(7);
    expect(operations).toBeGreaterThan(failures);
  });

  it('leaves nothing aside when a failure passes', async () => {
    await atEachOperation(write, 'old', { kind: 'error', code: 'EIO' }, 'once', async () => {
      expect(await readdir(folder)).toEqual(['skerry.walewright']);
    });
  });

  it('leaves it whole when the program ends at any of them', async () => {
    const seen = new Set<string>();
    await atEachOperation(write, 'old', { kind: 'crash' }, 'for good', async (thrown, operation) => {
      const now = await holds();
      expect(now, operation).toMatch(/^(old|new)$/);
      if (thrown === null) expect(now, operation).toBe('new');
      seen.add(now);
    });
    expect([...seen].sort()).toEqual(['new', 'old']);
  });

  it('writes every byte when any one of the writes is taken short', async () => {
    await atEachOperation(write, 'old', { kind: 'short' }, 'once', async (thrown, operation) => {
      expect(thrown, operation).toBeNull();
      expect(await holds(), operation).toBe('new');
    });
  });

  it('writes every byte when the disk takes them one by one', async () => {
    const { files, asked } = failing(nodeFiles, { kind: 'short' }, 1, 'for good');
    expect(await tried(write, files)).toBeNull();
    expect(await holds()).toBe('new');
    expect(asked.filter((name) => name === 'write')).toHaveLength(NEW.length);
  });

  it('gives up on a disk that takes no bytes and never says why', async () => {
    const files: FileOperations = {
      ...nodeFiles,
      async open(path, how, mode) {
        const file = await nodeFiles.open(path, how, mode);
        return { ...file, write: async () => 0 };
      },
    };
    expect(problemIn(await tried(write, files)).code).toBe('file-not-written');
    expect(await holds()).toBe('old');
    expect(await readdir(folder)).toEqual(['skerry.walewright']);
  });
});

describe('renaming while a scanner holds the file', () => {
  it.each(['EPERM', 'EBUSY'])('tries again after %s and gets through', async (code) => {
    let left = 3;
    const waits: number[] = [];
    const files: FileOperations = {
      ...nodeFiles,
      rename: async (from, to) => {
        if ((left -= 1) >= 0) throw Object.assign(new Error(code), { code });
        await nodeFiles.rename(from, to);
      },
    };
    await writeWhole(files, async (ms) => void waits.push(ms), document, NEW);
    expect(await holds()).toBe('new');
    expect(waits).toHaveLength(3);
  });

  it('gives up within about a second, keeps the old document and says so', async () => {
    const waits: number[] = [];
    const files: FileOperations = {
      ...nodeFiles,
      rename: async () => {
        throw Object.assign(new Error('EBUSY: resource busy or locked'), { code: 'EBUSY' });
      },
    };
    const thrown = await writeWhole(files, async (ms) => void waits.push(ms), document, NEW).catch((e: unknown) => e);
    expect(problemIn(thrown)).toMatchObject({ code: 'file-not-written', where: document });
    expect(waits.reduce((sum, ms) => sum + ms, 0)).toBe(1000);
    expect(await holds()).toBe('old');
    expect(await readdir(folder)).toEqual(['skerry.walewright']);
  });
});

describe('writing a document that is not there yet while operations fail', () => {
  it.each([
    { code: 'EIO', lasts: 'once' },
    { code: 'EIO', lasts: 'for good' },
    { code: 'ENOSPC', lasts: 'for good' },
  ] as const)('with $code $lasts, at any of them, makes it whole or not at all', async ({ code, lasts }) => {
    let failures = 0;
    await atEachOperation(checked, 'nothing', { kind: 'error', code }, lasts, async (thrown, operation) => {
      if (thrown !== null) failures += 1;
      expect(await holds(), operation).toBe(thrown === null ? 'new' : 'nothing');
      if (lasts === 'once') {
        expect(await readdir(folder), operation).toEqual(thrown === null ? ['skerry.walewright'] : []);
      }
    });
    // Asking what is there, opening aside, writing, flushing, closing, locking, linking.
    expect(failures).toBeGreaterThanOrEqual(7);
  });

  it('makes it whole or not at all when the program ends at any of them, and the next write clears up', async () => {
    const seen = new Set<string>();
    await atEachOperation(checked, 'nothing', { kind: 'crash' }, 'for good', async (_thrown, operation) => {
      const now = await holds();
      expect(now, operation).toMatch(/^(nothing|new)$/);
      seen.add(now);
      expect(await tried(checked, nodeFiles), operation).toBeNull();
      expect(await readdir(folder), operation).toEqual(['skerry.walewright']);
    });
    expect([...seen].sort()).toEqual(['new', 'nothing']);
  });

  it.each(['EPERM', 'ENOTSUP', 'ENOSYS'])('is made where the file system has no links (%s)', async (code) => {
    await rm(document);
    const files: FileOperations = {
      ...nodeFiles,
      link: async () => Promise.reject(Object.assign(new Error(code), { code })),
    };
    expect(await tried(checked, files)).toBeNull();
    expect(await holds()).toBe('new');
    expect(await readdir(folder)).toEqual(['skerry.walewright']);
  });
});

describe.each(WRITERS)('cutting the power on $writer', ({ write }) => {
  const path = '/home/knitter/skerry.walewright';

  it.each(LUCK)('at any operation leaves the document whole when %s', async (luck) => {
    const seen = new Set<string>();
    for (let nth = 1; ; nth += 1) {
      const disk = new ForgetfulDisk();
      disk.put(path, OLD);
      const { files, asked } = failing(disk, { kind: 'crash' }, nth, 'for good');
      const ended = await write(files, path).then(
        () => 'written',
        () => 'cut off',
      );
      const found = disk.afterPowerCut(luck).get(path);
      const now = found && Buffer.compare(found, OLD) === 0 ? 'old' : 'new';
      expect(found && (Buffer.compare(found, OLD) === 0 || Buffer.compare(found, NEW) === 0), asked.at(-1)).toBe(true);
      seen.add(now);
      // Whatever was left lying about, a lock too, stops no write after the next start.
      const later = disk.startedAgain(luck);
      await write(later, path);
      expect(later.afterPowerCut('nothing stays').get(path)).toEqual(NEW);
      if (asked.length >= nth) continue;
      // Said to be written, it stays written.
      expect([ended, now]).toEqual(['written', 'new']);
      break;
    }
    expect([...seen].sort()).toEqual(['new', 'old']);
  });
});
