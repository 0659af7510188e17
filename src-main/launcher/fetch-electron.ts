/** Running Electron's own installer. */
import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { terminalWords } from '@shared/words/terminal.ts';
import type { ElectronPackage } from './electron-package.ts';
import { SignsOfLife } from './signs-of-life.ts';

export interface FetchOptions {
  /** Where the download lies until it is whole; something that may be deleted. */
  readonly workFolder: string;
  /** Given up after so long without a word or a byte. */
  readonly patienceMs: number;
  /** How often to look how much has come. */
  readonly lookEveryMs: number;
  /** Told how much has come, in MB, at every ten of them. */
  readonly progress: (megabytes: number) => void;
}

export const FETCH_PATIENCE_MS = 20_000;

/**
 * Resolves with null when the installer has done its work, else with what
 * stood in its way, in a few words.
 *
 * The installer says nothing while it downloads. What it has received shows in
 * its temporary folder, which is therefore one of ours, and after that in the
 * package as it unpacks.
 */
export async function fetchElectron({ folder }: ElectronPackage, options: FetchOptions): Promise<string | null> {
  await mkdir(options.workFolder, { recursive: true });
  const work = await mkdtemp(join(options.workFolder, 'electron-'));
  try {
    return await runInstaller(folder, work, options);
  } finally {
    await rm(work, { recursive: true, force: true }).catch(() => undefined);
  }
}

function runInstaller(
  folder: string,
  work: string,
  { patienceMs, lookEveryMs, progress }: FetchOptions,
): Promise<string | null> {
  const installer = spawn(process.execPath, [join(folder, 'install.js')], {
    cwd: folder,
    env: { ...process.env, TMPDIR: work, TEMP: work, TMP: work },
    stdio: ['ignore', 'pipe', 'pipe'],
  });

  const signs = new SignsOfLife(patienceMs, Date.now());
  let said = '';
  let told = 0;
  let isGivenUp = false;
  const hear = (text: string): void => {
    signs.heard(Date.now());
    said = (said + text).slice(-10_000);
  };
  for (const stream of [installer.stdout, installer.stderr]) stream.setEncoding('utf8').on('data', hear);

  const look = setInterval(async () => {
    // In this order what is moved into the package meanwhile is not counted twice.
    const bytes = (await sizeOf(join(folder, 'dist'))) + (await sizeOf(work));
    signs.seen(bytes, Date.now());
    if (tens(bytes) > told) {
      told = tens(bytes);
      progress(told * 10);
    }
    if (!signs.isSilent(Date.now())) return;
    isGivenUp = true;
    installer.kill('SIGKILL');
  }, lookEveryMs);

  return new Promise((resolve) => {
    installer.on('error', (error) => finish(error.message));
    installer.on('close', (code) => {
      if (code === 0) finish(null);
      else finish(isGivenUp ? terminalWords.launcher.silent(patienceMs / 1000) : reasonIn(said));
    });
    function finish(reason: string | null): void {
      clearInterval(look);
      resolve(reason);
    }
  });
}

/** Whole tens of megabytes. */
const tens = (bytes: number): number => Math.floor(bytes / 1e7);

/** The message of the first error in a printed stack: `fetch failed`. */
function reasonIn(said: string): string {
  const line = said.split('\n').find((text) => /^\w*Error\b/.test(text)) ?? said.trim().split('\n').at(-1) ?? '';
  return line.replace(/^\w*Error(?: \[\w+\])?: /, '').trim() || terminalWords.launcher.saidNothing;
}

/** Bytes in a folder and all below it; what goes away meanwhile counts nothing. */
async function sizeOf(folder: string): Promise<number> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const sizes = entries.map(async (entry) => {
    if (!entry.isFile()) return 0;
    return stat(join(entry.parentPath, entry.name)).then(
      ({ size }) => size,
      () => 0,
    );
  });
  return (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
}
