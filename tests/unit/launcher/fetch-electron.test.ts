/** Running the installer of an Electron package, here a made-up one. */
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { electronBinary } from '../../../src-main/launcher/electron-package.ts';
import { fetchElectron } from '../../../src-main/launcher/fetch-electron.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-electron-'));
  await mkdir(join(folder, 'electron'));
  await writeFile(join(folder, 'electron', 'package.json'), '{}');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

async function fetchWith(installer: string, patienceMs = 30_000): Promise<{ obstacle: string | null; told: number[] }> {
  await writeFile(join(folder, 'electron', 'install.js'), installer);
  const told: number[] = [];
  const obstacle = await fetchElectron(
    { folder: join(folder, 'electron'), version: '45.0.0' },
    { workFolder: join(folder, 'work'), patienceMs, lookEveryMs: 10, progress: (megabytes) => told.push(megabytes) },
  );
  return { obstacle, told };
}

const FETCH_FAILED = `
  console.error('TypeError: fetch failed\\n    at node:internal/deps/undici/undici:13510:13');
  process.exit(1);`;

const FETCHES = `
  const fs = require('fs'), os = require('os'), path = require('path');
  const download = path.join(os.tmpdir(), 'electron.zip');
  fs.writeFileSync(download, Buffer.alloc(25_000_000));
  setTimeout(() => {
    fs.mkdirSync('dist');
    fs.renameSync(download, 'dist/electron');
    fs.writeFileSync('path.txt', 'electron');
  }, 300);`;

/** Says nothing for long, but receives a byte now and then. */
const TRICKLES = `
  const fs = require('fs'), os = require('os'), path = require('path');
  let left = 60;
  const timer = setInterval(() => {
    fs.appendFileSync(path.join(os.tmpdir(), 'electron.zip'), 'x');
    if ((left -= 1) === 0) clearInterval(timer);
  }, 100);`;

describe("Electron's installer", () => {
  it('brings the binary, and says how much has come', async () => {
    const electron = { folder: join(folder, 'electron'), version: '45.0.0' };
    expect(electronBinary(electron)).toBeNull();
    const { obstacle, told } = await fetchWith(FETCHES);
    expect(obstacle).toBeNull();
    expect(told.at(-1)).toBe(20);
    expect(electronBinary(electron)).toBe(join(folder, 'electron', 'dist', 'electron'));
    expect(await readdir(join(folder, 'work'))).toEqual([]);
  });

  it.each([
    ['that there is no network', FETCH_FAILED, 'fetch failed'],
    ['something of its own', "process.stderr.write('no room\\n'); process.exit(3);", 'no room'],
    ['nothing', 'process.exit(1);', 'its installer did not say why'],
  ])('that says %s is told in a few words', async (_case, installer, obstacle) => {
    expect((await fetchWith(installer)).obstacle).toBe(obstacle);
  });

  it('that gives no sign is given up', async () => {
    expect((await fetchWith('setInterval(() => {}, 1000);', 500)).obstacle).toBe('no answer for 0.5 s');
  });

  it('that is slow, but receives, is waited for', async () => {
    expect((await fetchWith(TRICKLES, 4000)).obstacle).toBeNull();
  });

  it('is missing where the package is broken', async () => {
    await rm(join(folder, 'electron'), { recursive: true });
    await mkdir(join(folder, 'electron'));
    const obstacle = await fetchElectron(
      { folder: join(folder, 'electron'), version: '45.0.0' },
      { workFolder: join(folder, 'work'), patienceMs: 30_000, lookEveryMs: 10, progress: () => undefined },
    );
    expect(obstacle).toContain('Cannot find module');
  });
});
