/** Another user of the same machine. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { callAs, comeIn } from '../unit/host/calling.ts';
import { expect } from './app.ts';
import { test } from './hosts.ts';

const isRoot = process.getuid?.() === 0;
/** `nobody`, by the number that Linux gives it. */
const NOBODY = 65_534;

test.describe(isRoot ? 'another user' : 'another user (skipped: only root can become one)', () => {
  test.skip(!isRoot, 'only root can become another user');

  /** What a program of that user prints. */
  function asNobody(script: string, ...given: readonly string[]): string {
    const { stdout, stderr, status } = spawnSync(process.execPath, ['-e', script, '--', ...given], {
      uid: NOBODY,
      gid: NOBODY,
      cwd: '/',
      encoding: 'utf8',
    });
    if (status !== 0) throw new Error(stderr);
    return stdout;
  }

  test('reads in the list of processes where the key lies, and cannot read it there', async ({ page, folder }) => {
    // All folders above are open, so that nothing but our own guard stands before the key.
    const [data, bin, isOpen] = [join(folder, 'data'), join(folder, 'bin'), join(folder, 'open')];
    mkdirSync(bin);
    for (const open of [folder, data, bin]) chmodSync(open, 0o755);
    const script = `#!/bin/sh\n: > ${isOpen}\ntrap 'exit 0' TERM\nwhile :; do /bin/sleep 0.1; done\n`;
    writeFileSync(join(bin, 'chromium'), script, { mode: 0o755 });
    const launcher = spawn(
      process.execPath,
      [resolve(import.meta.dirname, '../../out/main/launcher.cjs'), '--shell', 'browser'],
      { env: { ...process.env, WALEWRIGHT_DATA: data, DISPLAY: ':99', PATH: bin }, stdio: 'ignore' },
    );
    const ended = once(launcher, 'close');
    try {
      await expect.poll(() => existsSync(isOpen)).toBe(true);
      const processes = asNobody(`
        const fs = require('node:fs');
        for (const pid of fs.readdirSync('/proc').filter((name) => /^\\d+$/.test(name))) {
          try { console.log(fs.readFileSync('/proc/' + pid + '/cmdline', 'utf8').split('\\0').join(' ')); } catch {}
        }`);
      const ours = processes.split('\n').find((line) => line.includes(bin) && line.includes('--app=')) ?? '';
      expect(ours).toContain(pathToFileURL(join(data, 'enter')).href);
      expect(ours).not.toContain('#');
      const [page1 = ''] = readdirSync(join(data, 'enter'));
      const tried = asNobody(
        `
        const fs = require('node:fs');
        const [folder, ...files] = process.argv.slice(1);
        const code = (work) => { try { work(); return 'read'; } catch (error) { return error.code; } };
        console.log(JSON.stringify([code(() => fs.readdirSync(folder)), ...files.map((file) => code(() => fs.readFileSync(file)))]));`,
        join(data, 'enter'),
        join(data, 'enter', page1),
        join(data, 'storage-key'),
      );
      expect(JSON.parse(tried)).toEqual(['EACCES', 'EACCES', 'EACCES']);

      // The person's own browser can; the page is gone with that.
      await page.goto(pathToFileURL(join(data, 'enter', page1)).href, { waitUntil: 'commit' });
      await page.getByRole('button', { name: 'Commands' }).waitFor();
      expect(page.url()).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
      await expect.poll(() => readdirSync(join(data, 'enter'))).toEqual([]);
    } finally {
      launcher.kill('SIGTERM');
      await ended;
    }
  });

  test('reaches the port, and gets the page without a key', async ({ run }) => {
    const host = await run();
    const answered = asNobody(
      `
      const [origin] = process.argv.slice(1);
      (async () => {
        const page = await fetch(origin);
        const call = await fetch(origin + '/call/host.describe', { method: 'POST', headers: { origin }, body: '{}' });
        console.log(JSON.stringify([page.status, call.status, page.headers.get('set-cookie')]));
      })();`,
      host.origin,
    );
    expect(JSON.parse(answered)).toEqual([200, 403, null]);
    expect(await callAs(await comeIn(await host.newAddress()), 'host.describe')).toMatchObject({ ok: true });
  });
});
