/** Two processes that save the same document at the same moment: one is told "saved", the other that it was too late. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { problemOf } from '@shared/problem/index.ts';
import { nodeFiles } from '../../src-main/services/index.ts';
import { clearLeftovers, processesHere, writeChecked, type Processes } from '../../src-main/services/files/index.ts';
import { lock } from '../../src-main/services/files/lock.ts';

const root = resolve(import.meta.dirname, '../..');
const ROUNDS = 60;

class Rival {
  readonly #process: ChildProcess;
  readonly #lines: AsyncIterator<string>;

  constructor(name: string) {
    this.#process = spawn(process.execPath, ['--import', 'tsx', 'tests/faults/rival-writer.ts', name], {
      cwd: root,
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    const { stdout } = this.#process;
    if (!stdout) throw new Error('No output');
    this.#lines = createInterface(stdout)[Symbol.asyncIterator]();
  }

  async answer(): Promise<string> {
    const { value, done } = await this.#lines.next();
    if (done === true) throw new Error('The rival ended');
    return value;
  }

  tell(path: string, over: string | null): void {
    this.#process.stdin?.write(`${JSON.stringify({ path, over })}\n`);
  }

  async kill(): Promise<void> {
    if (this.#process.exitCode !== null) return;
    const ended = once(this.#process, 'exit');
    this.#process.kill('SIGKILL');
    await ended;
  }
}

let folder: string;
beforeEach(async () => void (folder = await mkdtemp(join(tmpdir(), 'walewright-rivals-'))));
afterEach(() => rm(folder, { recursive: true, force: true }));

describe('two processes that save at once', () => {
  let rivals: readonly [Rival, Rival];
  beforeAll(async () => {
    rivals = [new Rival('one'), new Rival('two')];
    await Promise.all(rivals.map((rival) => rival.answer()));
  });
  afterAll(() => Promise.all(rivals.map((rival) => rival.kill())));

  it.each([
    { what: 'over the version that both have read', before: 'as both have read it' },
    { what: 'a document that is not there yet', before: null },
  ])('$what: one is told "saved", and its words stand', async ({ before }) => {
    for (let round = 0; round < ROUNDS; round += 1) {
      const path = join(folder, `${round}.walewright`);
      if (before !== null) await writeFile(path, before);
      for (const rival of rivals) rival.tell(path, before);
      const answers = await Promise.all(rivals.map((rival) => rival.answer()));
      expect([...answers].sort(), `round ${round}`).toEqual(['file-changed-elsewhere', 'saved']);
      const winner = answers[0] === 'saved' ? 'one' : 'two';
      expect((await readFile(path, 'utf8')).startsWith(`written by ${winner}\n`), `round ${round}`).toBe(true);
    }
    expect((await readdir(folder)).filter((name) => name.startsWith('.'))).toEqual([]);
  });
});

describe('the lock of a process', () => {
  const wait = async (): Promise<void> => undefined;
  const NEW = new TextEncoder().encode('new\n');
  const path = (): string => join(folder, 'skerry.walewright');
  const write = (processes: Processes) =>
    writeChecked({ files: nodeFiles, wait, processes }, path(), NEW, () => undefined);

  /** Where this program's lock of the document stands, found while one is held. */
  async function placeOfLock(): Promise<string> {
    let found: string | undefined;
    const files: typeof nodeFiles = {
      ...nodeFiles,
      link: async (from, to) => {
        found = (await readdir(folder)).find((name) => name.endsWith('.lock'));
        await nodeFiles.link(from, to);
      },
    };
    await writeChecked({ files, wait, processes: processesHere }, path(), NEW, () => undefined);
    return join(folder, found ?? '');
  }

  async function leaveLock(holder: string): Promise<string> {
    const place = await placeOfLock();
    await mkdir(join(place, holder), { recursive: true });
    return place;
  }

  /** The name of a piece of work whose process has ended. */
  async function endedWriter(): Promise<string> {
    const own = processesHere.begin();
    processesHere.end(own);
    const child = spawn(process.execPath, ['-e', ''], { stdio: 'ignore' });
    await once(child, 'exit');
    return own.replace(/^(\w+-\w+)-\d+-/, `$1-${child.pid}-`);
  }

  it('that has ended is taken away at once, and the document is written', async () => {
    await leaveLock(await endedWriter());
    const waits: number[] = [];
    const disk = { files: nodeFiles, wait: async (ms: number) => void waits.push(ms), processes: processesHere };
    await writeChecked(disk, path(), NEW, () => undefined);
    expect(waits.reduce((sum, ms) => sum + ms, 0)).toBeLessThan(100);
    expect(await readdir(folder)).toEqual(['skerry.walewright']);
  });

  it('that is running is waited for, and then said to be in the way', async () => {
    const name = processesHere.begin();
    const place = await leaveLock(name);
    const problem = await write(processesHere).then(() => null, problemOf);
    expect(problem).toMatchObject({ code: 'file-busy', where: path() });
    expect(await readdir(place)).toEqual([name]);
    processesHere.end(name);
    await write(processesHere);
    expect((await readdir(folder)).filter((entry) => entry.startsWith('.'))).toEqual([]);
  });

  it('is not held any more when somebody took it away, whatever stands there then', async () => {
    const held = await lock({ files: nodeFiles, wait, processes: processesHere }, path());
    expect(await held.isHeld()).toBe(true);
    for (const name of await readdir(folder)) await rm(join(folder, name), { recursive: true });
    expect(await held.isHeld()).toBe(false);
    await held.release();
  });

  it('on another machine is taken away when it was waited for in vain', async () => {
    await leaveLock('00000000-00000000-1-1-0123456789abcdef');
    await write(processesHere);
    expect(await readdir(folder)).toEqual(['skerry.walewright']);
  });

  it('and what it wrote aside are cleared away once it has ended, and not before', async () => {
    const running = processesHere.begin();
    const ended = await endedWriter();
    for (const name of [running, ended]) await writeFile(join(folder, `.walewright-${name}.tmp`), 'half');
    await mkdir(join(folder, `.walewright-${ended.replace(/\w$/, 'z')}.tmp`));
    await clearLeftovers(nodeFiles, processesHere, folder);
    const names = await readdir(folder);
    expect(names).toContain(`.walewright-${running}.tmp`);
    expect(names).not.toContain(`.walewright-${ended}.tmp`);
    processesHere.end(running);
    await clearLeftovers(nodeFiles, processesHere, folder);
    expect(await readdir(folder)).toHaveLength(1);
  });
});
