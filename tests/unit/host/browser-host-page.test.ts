/** The page as the browser host gives it, to anybody. */
import { rm, writeFile } from 'node:fs/promises';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { brotliCompressSync, brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { ask } from './asking.ts';
import { makeHostFolder, PAGE, startIn } from './host-in-folder.ts';

let folder: string;
let host: BrowserHost;
beforeEach(async () => {
  folder = await makeHostFolder();
  host = await startIn(folder);
});
afterEach(async () => {
  await host.close();
  await rm(folder, { recursive: true, force: true });
});

const start = (options = {}) => startIn(folder, options);

const get = (path: string, headers: Record<string, string> = {}) => ask(host.origin, { path, headers });

describe('the page', () => {
  it('comes with its files, each with its type, to anybody, and holds no key', async () => {
    const page = await get('/');
    expect(page.headers['set-cookie']).toBeUndefined();
    expect([page.status, page.body, page.headers['content-type']]).toEqual([200, PAGE, 'text/html; charset=utf-8']);
    const script = await get('/assets/index-1a2b.js?v');
    expect([script.status, script.headers['content-type']]).toEqual([200, 'text/javascript; charset=utf-8']);
  });

  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%5c..%5csecret.txt',
    '/assets/%2e%2e%2f%2e%2e%2fsecret.txt',
    '/assets',
    '/assets/',
    '/index.html%00',
    '/etc/passwd',
    '//etc/passwd',
  ])('gives no file outside it: %s', async (path) => {
    const { status, body } = await get(path);
    expect(status).toBe(404);
    expect(body).toBe('');
  });

  it.each(['/', '/assets/index-1a2b.js', '/nothing'])('is guarded by its headers: %s', async (path) => {
    const { headers } = await get(path);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'referrer-policy': 'no-referrer',
    });
    const policy = headers['content-security-policy'] as string;
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(policy).not.toContain('*');
  });

  it.each([
    ['br', 'br', brotliDecompressSync],
    ['gzip, deflate, br', 'br', brotliDecompressSync],
    ['GZIP', 'gzip', gunzipSync],
    ['gzip;q=1.0, br;q=0', 'gzip', gunzipSync],
    ['deflate, brotli', undefined, Buffer.from],
    ['br;q=0, gzip; q=0.000', undefined, Buffer.from],
    ['', undefined, Buffer.from],
  ])('is sent as a browser takes it that accepts %j: %j', async (accepted, encoding, unpacked) => {
    for (const [ending, pack] of [
      ['br', brotliCompressSync],
      ['gz', gzipSync],
    ] as const) {
      await writeFile(join(folder, 'page', 'assets', `packed.js.${ending}`), pack('let packed;'));
    }
    await writeFile(join(folder, 'page', 'assets', 'packed.js'), 'let packed;');
    await host.close();
    host = await start();
    const { headers, bytes } = await get('/assets/packed.js', { 'accept-encoding': accepted });
    expect(headers).toMatchObject({ 'content-type': 'text/javascript; charset=utf-8', vary: 'accept-encoding' });
    expect(headers['content-encoding']).toBe(encoding);
    expect(unpacked(bytes).toString()).toBe('let packed;');
    expect((await get('/assets/packed.js.br')).status).toBe(404);
  });

  it('is kept by no browser, and takes away what others had it keep', async () => {
    for (const path of ['/', '/assets/index-1a2b.js', '/nowhere']) {
      expect((await get(path)).headers['cache-control']).toBe('no-store');
    }
    // Not "storage": that holds unsaved work.
    for (const path of ['/', '/index.html', '/?visit=0123456789ab']) {
      expect((await get(path)).headers['clear-site-data']).toBe('"cache"');
    }
    expect((await get('/assets/index-1a2b.js')).headers).not.toHaveProperty('clear-site-data');
  });

  it('may run what it names, and no other text in it', async () => {
    const map = '{"integrity":{"./assets/index-1a2b.js":"sha256-AAAA"}}';
    await writeFile(join(folder, 'page', 'index.html'), `<script type="importmap">${map}</script><script>1</script>`);
    await host.close();
    host = await start();
    const { headers } = await get('/');
    const digest = createHash('sha256').update(map).digest('base64');
    expect(headers['content-security-policy']).toContain(`script-src 'self' 'sha256-${digest}';`);
    expect(headers['content-security-policy']).toContain('worker-src blob:;');
    expect(headers['integrity-policy']).toBe('blocked-destinations=(script)');
    expect(headers['permissions-policy']).toContain('camera=()');
  });

  it('that was never built stops the start', async () => {
    await expect(start({ pageFolder: join(folder, 'nowhere') })).rejects.toThrow('npm run build');
  });
});
