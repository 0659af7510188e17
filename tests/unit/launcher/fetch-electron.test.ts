/** Running the installer of an Electron package, here a made-up one. */
import { writeFileSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { electronBinary } from '../../../src-main/launcher/electron-package.ts';
import { fetchElectron } from '../../../src-main/launcher/fetch-electron.ts';
import { SignsOfLife } from '../../../src-main/launcher/signs-of-life.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-electron-'));
  await mkdir(join(folder, 'electron'));
  await writeFile(join(folder, 'electron', 'package.json'), '{}');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

async function fetchWith(
  installer: string,
  patienceMs = 30_000,
): Promise<{ obstacle: string | null; loaded: number[] }> {
  await writeFile(join(folder, 'electron', 'install.js'), installer);
  const loaded: number[] = [];
  const progress = (megabytes: number): void => {
    loaded.push(megabytes);
    writeFileSync(join(folder, 'electron', 'told'), '');
  };
  const obstacle = await fetchElectron(
    { folder: join(folder, 'electron'), version: '45.0.0' },
    { workFolder: join(folder, 'work'), patienceMs, lookEveryMs: 10, progress },
  );
  return { obstacle, loaded };
}

const FETCH_FAILED = `
  console.error('TypeError: fetch failed\\n    at node:internal/deps/undici/undici:13510:13');
  process.exit(1);`;

/** Goes on from the download once somebody has been told of it. */
const FETCHES = `
  const fs = require('fs'), os = require('os'), path = require('path');
  const download = path.join(os.tmpdir(), 'electron.zip');
  fs.writeFileSync(download, Buffer.alloc(25_000_000));
  const look = setInterval(() => {
    if (!fs.existsSync('told')) return;
    clearInterval(look);
    fs.mkdirSync('dist');
    fs.renameSync(download, 'dist/electron');
    fs.writeFileSync('path.txt', 'electron');
  }, 10);`;

describe("Electron's installer", () => {
  it('brings the binary, and says how much has come', async () => {
    const electron = { folder: join(folder, 'electron'), version: '45.0.0' };
    expect(electronBinary(electron)).toBeNull();
    const { obstacle, loaded } = await fetchWith(FETCHES);
    expect(obstacle).toBeNull();
    expect(loaded.at(-1)).toBe(20);
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

  it('that is slow, but says or receives something, is waited for', () => {
    const signs = new SignsOfLife(100, 0);
    expect([signs.isSilent(99), signs.isSilent(100)]).toEqual([false, true]);
    signs.seen(1, 90);
    expect([signs.isSilent(189), signs.isSilent(190)]).toEqual([false, true]);
    // No more has come.
    signs.seen(1, 150);
    expect(signs.isSilent(190)).toBe(true);
    signs.heard(180);
    expect([signs.isSilent(279), signs.isSilent(280)]).toEqual([false, true]);
    // What was received is unpacked: the folder for downloads grows smaller.
    signs.seen(0, 270);
    expect(signs.isSilent(369)).toBe(false);
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
