/** The launcher as a process: what it prints, what it opens and how it ends. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmod, mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { existsSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { runElectron } from '../../../src-main/launcher/run-electron.ts';
import { ask } from '../host/asking.ts';
import { callAs, comeIn } from '../host/calling.ts';

const root = resolve(import.meta.dirname, '../../..');
const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/\?visit=[\w-]{12}#[\w-]{43}/;

let folder: string;
const started: ChildProcess[] = [];
beforeEach(async () => void (folder = await mkdtemp(join(tmpdir(), 'walewright-launcher-'))));
afterEach(async () => {
  for (const child of started.splice(0)) if (child.exitCode === null) child.kill('SIGKILL');
  await rm(folder, { recursive: true, force: true });
});

interface Started {
  /** Resolves with what matched, as soon as it was printed. */
  printed(pattern: RegExp): Promise<string>;
  readonly text: () => string;
  readonly ended: Promise<number | null>;
  readonly child: ChildProcess;
}

/** No display, unless one is given. */
function launch(given: readonly string[], variables: Record<string, string> = {}): Started {
  const { DISPLAY: _x, WAYLAND_DISPLAY: _wayland, ...inherited } = process.env;
  const child = spawn(process.execPath, ['--import', 'tsx', 'src-main/launcher/main.ts', ...given], {
    cwd: root,
    env: { ...inherited, WALEWRIGHT_DATA: join(folder, 'data'), ...variables },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  started.push(child);
  let text = '';
  const listeners = new Set<() => void>();
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding('utf8').on('data', (chunk: string) => {
      text += chunk;
      for (const listener of listeners) listener();
    });
  }
  const ended = once(child, 'close').then(([code]) => code as number | null);
  return {
    child,
    ended,
    text: () => text,
    printed: (pattern) =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          const found = pattern.exec(text);
          if (found) resolve(found[0]);
        };
        listeners.add(look);
        look();
        void ended.then((code) => reject(new Error(`It ended with ${code}: ${text}`)));
      }),
  };
}

/** The page must be built for the host to serve it. */
const isBuilt = existsSync(join(root, 'out', 'renderer', 'index.html'));

describe.skipIf(!isBuilt)('starting without a display', () => {
  it('says why in one line, serves at the printed address, and ends on Ctrl-C', async () => {
    const first = launch([]);
    const address = await first.printed(ADDRESS);
    expect(first.text().split('\n')[0]).toBe(
      'There is no display here for a window of its own, so Walewright serves a browser.',
    );
    const { status, body } = await ask(new URL(address).origin, {});
    expect([status, body.includes('<!doctype html>')]).toEqual([200, true]);
    expect(await callAs(await comeIn(address), 'host.describe')).toMatchObject({ ok: true });

    const second = launch([]);
    const other = await second.printed(ADDRESS);
    expect(new URL(other).port).not.toBe(new URL(address).port);

    first.child.kill('SIGINT');
    second.child.kill('SIGTERM');
    expect([await first.ended, await second.ended]).toEqual([0, 0]);
    expect(await readdir(join(folder, 'data', 'running'))).toEqual([]);
  });

  it('opens the file that is named', async () => {
    const start = launch(['--shell', 'browser', 'sleeve.walewright']);
    const address = await start.printed(ADDRESS);
    const described = await callAs(await comeIn(address), 'host.describe');
    expect(described).toMatchObject({ value: { openAtStart: join(root, 'sleeve.walewright') } });
    start.child.kill('SIGINT');
    expect(await start.ended).toBe(0);
  });
});

describe.skipIf(!isBuilt || process.platform === 'win32')('starting with a display', () => {
  /** A browser that notes what it was given, copies the page it was to open, and is closed at once, with `code`. */
  async function fakeBrowser(name: string, code: number): Promise<string> {
    const bin = join(folder, 'bin');
    await mkdir(bin, { recursive: true });
    const script = `#!/bin/sh
printf '%s\\n' "$@" > ${join(folder, name)}.txt
for given in "$@"; do case "$given" in *file://*) /bin/cp "\${given#*file://}" ${join(folder, name)}.html;; esac; done
exit ${code}
`;
    await writeFile(join(bin, name), script);
    await chmod(join(bin, name), 0o755);
    return bin;
  }

  it('opens a window of its own by a page that holds the key, and ends when it is closed', async () => {
    const bin = await fakeBrowser('chromium', 0);
    const start = launch(['--shell', 'browser'], { DISPLAY: ':99', PATH: bin });
    expect(await start.ended).toBe(0);
    const given = (await readFile(join(folder, 'chromium.txt'), 'utf8')).split('\n');
    const [printed] = ADDRESS.exec(start.text()) as unknown as [string];
    const opened = given.find((text) => text.startsWith('--app='))?.slice('--app='.length) as string;
    expect(fileURLToPath(opened).startsWith(join(folder, 'data', 'enter'))).toBe(true);
    expect(existsSync(fileURLToPath(opened))).toBe(false);
    const [address] = ADDRESS.exec(await readFile(join(folder, 'chromium.html'), 'utf8')) as unknown as [string];
    expect(new URL(address).origin).toBe(new URL(printed).origin);
    expect(address).not.toBe(printed);
    // What every user of the machine can read in the list of processes.
    expect(given.join(' ')).not.toContain('#');
    expect(given.join(' ')).not.toContain(new URL(address).hash.slice(1));
    const profile = given.find((text) => text.startsWith('--user-data-dir='))?.split('=')[1] as string;
    expect(profile.startsWith(join(folder, 'data'))).toBe(true);
    expect(existsSync(profile)).toBe(false);
    expect(given.includes('--no-sandbox')).toBe(process.getuid?.() === 0 && process.platform === 'linux');
    expect(start.text()).toContain('The window was closed.');
  });

  it('closes the window when the program is ended', async () => {
    const bin = join(folder, 'bin');
    await mkdir(bin, { recursive: true });
    const isOpen = join(folder, 'open');
    // A window that stays until it is told to close, and notes that it was.
    const script = `#!/bin/sh\ntrap '/bin/rm ${isOpen}; exit 0' TERM\n: > ${isOpen}\nwhile :; do /bin/sleep 0.1; done\n`;
    await writeFile(join(bin, 'chromium'), script);
    await chmod(join(bin, 'chromium'), 0o755);
    const start = launch(['--shell', 'browser'], { DISPLAY: ':99', PATH: bin });
    await vi.waitUntil(() => existsSync(isOpen), { timeout: 30_000 });
    start.child.kill('SIGTERM');
    expect(await start.ended).toBe(0);
    expect(existsSync(isOpen)).toBe(false);
    expect(await readdir(join(folder, 'data', 'windows'))).toEqual([]);
  });

  it('closes the window before its host, so that nothing is drawn that no host hears of', async () => {
    const bin = join(folder, 'bin');
    await mkdir(bin, { recursive: true });
    const [isOpen, heard] = [join(folder, 'open'), join(folder, 'heard')];
    // A window that asks for its page once more when it is told to close.
    await writeFile(
      join(folder, 'ask.mjs'),
      `import { readFileSync, writeFileSync } from 'node:fs';
const [address] = /http:[^"]+/.exec(readFileSync(new URL(process.argv[2]), 'utf8'));
process.on('SIGTERM', async () => {
  writeFileSync(${JSON.stringify(heard)}, await fetch(new URL('/', address)).then(({ status }) => String(status), String));
  process.exit(0);
});
setInterval(() => undefined, 1000);
writeFileSync(${JSON.stringify(isOpen)}, '');`,
    );
    const script = `#!/bin/sh\nexec ${process.execPath} ${join(folder, 'ask.mjs')} "\${1#--app=}"\n`;
    await writeFile(join(bin, 'chromium'), script);
    await chmod(join(bin, 'chromium'), 0o755);
    const start = launch(['--shell', 'browser'], { DISPLAY: ':99', PATH: bin });
    await vi.waitUntil(() => existsSync(isOpen), { timeout: 30_000 });
    start.child.kill('SIGTERM');
    expect(await start.ended).toBe(0);
    expect(await readFile(heard, 'utf8')).toBe('200');
  });

  it.skipIf(process.platform === 'darwin')('ends though what opens the default browser goes on', async () => {
    const bin = await fakeBrowser('chromium', 1);
    const isOpen = join(folder, 'open');
    await writeFile(join(bin, 'xdg-open'), `#!/bin/sh\necho $$ > ${isOpen}\nexec /bin/sleep 600\n`);
    await chmod(join(bin, 'xdg-open'), 0o755);
    const start = launch(['--shell', 'browser'], { DISPLAY: ':99', PATH: bin });
    const exit = once(start.child, 'exit');
    await vi.waitUntil(() => existsSync(isOpen) && readFileSync(isOpen, 'utf8').endsWith('\n'), { timeout: 30_000 });
    start.child.kill('SIGTERM');
    try {
      expect(await exit).toEqual([0, null]);
    } finally {
      process.kill(Number(readFileSync(isOpen, 'utf8')));
    }
  });

  it.skipIf(process.platform === 'darwin')('asks for the default browser where no window stays open', async () => {
    await fakeBrowser('chromium', 1);
    const bin = await fakeBrowser('xdg-open', 4);
    const start = launch(['--shell', 'browser'], { DISPLAY: ':99', PATH: bin });
    await start.printed(/Open that address in a browser/);
    const [printed] = ADDRESS.exec(start.text()) as unknown as [string];
    expect(await readFile(join(folder, 'xdg-open.txt'), 'utf8')).toMatch(/^file:\/\/\S+\.html\n$/);
    // The host goes on: the person has the address.
    expect(await callAs(await comeIn(printed), 'host.describe')).toMatchObject({ ok: true });
    start.child.kill('SIGINT');
    expect(await start.ended).toBe(0);
  });
});

describe('a start that cannot be', () => {
  it.each([
    [['--shell', 'electron'], 'Electron needs a display'],
    [['--shell', 'teapot'], '"teapot" is not a value of --shell'],
  ])('%j is refused in words, with status 1', async (given, sentence) => {
    const start = launch(given);
    expect(await start.ended).toBe(1);
    expect(start.text()).toContain(sentence);
  });
});

describe('Electron that was started', () => {
  it.each([
    ['process.exit(0)', null],
    ['process.exit(7)', 'it ended with 7'],
    ['process.kill(process.pid, "SIGABRT")', 'it was ended by SIGABRT'],
  ])('and does %s is told as %s', async (script, how) => {
    expect(await runElectron(process.execPath, ['-e', script])).toBe(how);
  });

  it('is never run as plain Node', async () => {
    process.env['ELECTRON_RUN_AS_NODE'] = '1';
    const script = 'process.exit(process.env.ELECTRON_RUN_AS_NODE ? 1 : 0)';
    expect(await runElectron(process.execPath, ['-e', script])).toBeNull();
    delete process.env['ELECTRON_RUN_AS_NODE'];
  });

  it('and cannot be run at all is told as the platform tells', async () => {
    expect(await runElectron(join(folder, 'nothing'), [])).toContain('ENOENT');
  });
});
