/** Telling runs that are going on from those that have ended. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { appendFile, mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { announcePresence, nodeFiles, type OwnPresence } from '../../../src-main/services/index.ts';
import { processesHere, writeChecked } from '../../../src-main/services/files/index.ts';

const root = resolve(import.meta.dirname, '../../..');
let folder: string;
let runs: OwnPresence[];
let processes: ChildProcess[];
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-presence-'));
  runs = [];
  processes = [];
});
afterEach(async () => {
  for (const run of runs) await run.close().catch(() => undefined);
  for (const one of processes) one.kill('SIGKILL');
  await rm(folder, { recursive: true, force: true });
});

async function announce(into = folder): Promise<OwnPresence> {
  const run = await announcePresence(into);
  runs.push(run);
  return run;
}
const running = (): string => join(folder, 'running');

/** A run in a process of its own. */
async function elsewhere(
  how: 'idle' | 'busy',
): Promise<{ name: string; signal: (name: NodeJS.Signals) => boolean; kill: () => Promise<void> }> {
  const run = spawn(process.execPath, ['--import', 'tsx', 'tests/unit/services/present-run.ts', folder, how], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  processes.push(run);
  const ended = once(run, 'exit');
  const [name] = (await once(run.stdout, 'data')) as [Buffer];
  return {
    name: name.toString().trim(),
    signal: (signal) => run.kill(signal),
    async kill() {
      run.kill('SIGKILL');
      await ended;
    },
  };
}

describe('a run', () => {
  it('is seen by another while it goes on, and not after it has ended', async () => {
    const [first, second] = [await announce(), await announce()];
    expect(first.instance).not.toBe(second.instance);
    expect(await second.isRunning(first.instance)).toBe(true);
    await first.close();
    expect(await second.isRunning(first.instance)).toBe(false);
  });

  it('that is too busy to answer goes on, until it is killed', async () => {
    const here = await announce();
    const busy = await elsewhere('busy');
    expect(await here.isRunning(busy.name)).toBe(true);
    await busy.kill();
    expect(await here.isRunning(busy.name)).toBe(false);
  });

  it.skipIf(process.platform === 'win32')('that is stopped goes on (not on Windows, which stops none)', async () => {
    const here = await announce();
    const stopped = await elsewhere('idle');
    stopped.signal('SIGSTOP');
    expect(await here.isRunning(stopped.name)).toBe(true);
    await stopped.kill();
    expect(await here.isRunning(stopped.name)).toBe(false);
  });

  it('that nobody ever announced is not going on', async () => {
    expect(await (await announce()).isRunning('nobody')).toBe(false);
  });

  it.each(['', 'x', '4711', '/etc/passwd', '/nowhere/else.lock'])('with the note %j has ended', async (note) => {
    const run = await announce();
    await writeFile(join(running(), 'damaged'), note);
    expect(await run.isRunning('damaged')).toBe(false);
  });

  it('whose note cannot be read is not taken for dead', async () => {
    const run = await announce();
    await mkdir(join(running(), 'unreadable'));
    expect(await run.isRunning('unreadable')).toBe(true);
  });

  it('holds its lock elsewhere where the path of its folder is too long for one', async () => {
    const deep = join(folder, 'a'.repeat(60), 'b'.repeat(60));
    const [first, second] = [await announce(deep), await announce(deep)];
    expect(await second.isRunning(first.instance)).toBe(true);
    const lock = await readFile(join(deep, 'running', first.instance), 'utf8');
    expect(lock.startsWith(tmpdir())).toBe(true);
    await first.close();
    expect(await second.isRunning(first.instance)).toBe(false);
    expect(existsSync(dirname(lock))).toBe(false);
  });

  it('leaves nothing when it ends', async () => {
    await (await announce()).close();
    expect(await readdir(running())).toEqual([]);
  });
});

describe('the next start', () => {
  it('takes away what killed runs left, and nothing of a run that goes on', async () => {
    const [killed, busy] = [await elsewhere('idle'), await elsewhere('busy')];
    const mine = join(folder, 'saved');
    await mkdir(mine);
    const [dead, living, document] = ['.walewright-00.tmp', '.walewright-01.tmp', 'sleeve.walewright'].map((name) =>
      join(mine, name),
    ) as [string, string, string];
    for (const path of [dead, living, document]) await writeFile(path, 'x');
    // A line that names a document must take nothing away, and one that broke off neither.
    const note =
      [dead, document].map((path) => `${JSON.stringify(path)}\n`).join('') + JSON.stringify(living).slice(0, -1);
    await appendFile(join(running(), `${killed.name}.writing`), note);
    await appendFile(join(running(), `${busy.name}.writing`), `${JSON.stringify(living)}\n`);
    await killed.kill();
    const here = await announce();
    expect((await readdir(mine)).sort()).toEqual(['.walewright-01.tmp', 'sleeve.walewright']);
    const owners = new Set((await readdir(running())).map((name) => name.split('.')[0]));
    expect(owners).toEqual(new Set([busy.name, here.instance]));
  });

  it('takes away the lock beside a document that a killed run was writing', async () => {
    const killed = await elsewhere('idle');
    const [writer, holder] = [processesHere.begin(), processesHere.begin()];
    const aside = join(folder, `.walewright-${writer}.tmp`);
    await appendFile(join(running(), `${killed.name}.writing`), `${JSON.stringify(aside)}\n`);
    await writeFile(aside, 'half');
    await mkdir(join(folder, '.walewright-0123456789abcdef.lock', holder), { recursive: true });
    for (const name of [writer, holder]) processesHere.end(name);
    await killed.kill();
    await announce();
    expect((await readdir(folder)).filter((name) => name.startsWith('.walewright-'))).toEqual([]);
  });

  it('takes away what was left before a note was written, once that is no start any more', async () => {
    await mkdir(running(), { recursive: true });
    const anHourAgo = new Date(Date.now() - 3_600_000);
    for (const name of ['old.starting', 'old.writing', 'fresh.starting', 'fresh.writing']) {
      await writeFile(join(running(), name), '');
      if (name.startsWith('old')) await utimes(join(running(), name), anHourAgo, anHourAgo);
    }
    const here = await announce();
    const left = (await readdir(running())).filter((name) => !name.startsWith(here.instance));
    expect(left.sort()).toEqual(['fresh.starting', 'fresh.writing']);
  });
});

describe('what is written aside', () => {
  const noted = async (run: OwnPresence): Promise<string> =>
    readFile(join(running(), `${run.instance}.writing`), 'utf8');

  it('is noted before it is begun, until it is moved or gone', async () => {
    const run = await announce();
    const seen: string[] = [];
    const files = run.unfinished.watch({
      ...nodeFiles,
      async open(path, how, mode) {
        seen.push(await noted(run));
        return nodeFiles.open(path, how, mode);
      },
    });
    const [one, two] = [join(folder, '.walewright-aa.tmp'), join(folder, '.walewright-bb.tmp')];
    await (await files.open(one, 'new')).close();
    await (await files.open(two, 'new')).close();
    expect(seen).toEqual([`${JSON.stringify(one)}\n`, `${JSON.stringify(one)}\n${JSON.stringify(two)}\n`]);
    await files.rename(one, join(folder, 'document'));
    await files.unlink(two);
    expect(await noted(run)).toBe('');
  });

  it.each(['new', 'over another'])('for a document (%s) is noted until its lock is gone too', async (what) => {
    const run = await announce();
    const path = join(folder, 'sleeve.walewright');
    if (what !== 'new') await writeFile(path, 'old');
    const seen: string[] = [];
    const files = run.unfinished.watch({
      ...nodeFiles,
      async removeFolder(place) {
        seen.push(await noted(run));
        return nodeFiles.removeFolder(place);
      },
    });
    const disk = { files, wait: async () => undefined, processes: processesHere };
    await writeChecked(disk, path, new Uint8Array(3), () => undefined);
    // The holder's name in the lock, and the lock itself.
    expect(seen).toHaveLength(2);
    for (const note of seen) expect(note).toContain('.walewright-');
    expect(await noted(run)).toBe('');
  });

  it('is not noted any more once another process has its lock, or it could not be locked', async () => {
    const run = await announce();
    const [path, stands] = [join(folder, 'sleeve.walewright'), join(folder, 'stands')];
    const others = (place: string): string => join(place, 'of-another');
    let isFree = true;
    const files = run.unfinished.watch({
      ...nodeFiles,
      async makeFolder(place, mode) {
        if (isFree) return nodeFiles.makeFolder(place, mode);
        throw Object.assign(new Error('no room'), { code: 'ENOSPC' });
      },
      async removeFolder(place) {
        await nodeFiles.removeFolder(place);
        // The moment between a lock that is let go and its folder's end.
        const lock = dirname(place);
        if (lock.endsWith('.lock')) await nodeFiles.makeFolder(others(lock));
      },
    });
    const disk = { files, wait: async () => undefined, processes: processesHere };
    await writeChecked(disk, path, new Uint8Array(3), () => undefined);
    expect(await noted(run)).toBe('');
    isFree = false;
    await expect(writeChecked(disk, stands, new Uint8Array(3), () => undefined)).rejects.toThrow();
    expect(await noted(run)).toBe('');
  });

  it('is not noted any more when it could not be begun', async () => {
    const run = await announce();
    const files = run.unfinished.watch(nodeFiles);
    await expect(files.open(join(folder, 'nowhere', '.walewright-aa.tmp'), 'new')).rejects.toThrow('ENOENT');
    expect(await noted(run)).toBe('');
  });
});

describe.skipIf(process.platform === 'win32')('a lock (not on Windows, whose pipes have no paths)', () => {
  it('that somebody listens on is held, whoever it is: what cannot be told apart is not taken', async () => {
    const run = await announce();
    const path = join(running(), 'taken.lock');
    const stranger = createServer();
    await new Promise<void>((done) => stranger.listen(path, done));
    await writeFile(join(running(), 'taken'), path);
    expect(await run.isRunning('taken')).toBe(true);
    await new Promise((done) => stranger.close(done));
    expect(await run.isRunning('taken')).toBe(false);
  });
});
