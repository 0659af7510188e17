/** A page of a test's own, with parts of the window in it, built and served without a host. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { build, preview, type InlineConfig } from 'vite';

/** Builds `page/NAME.html`, serves it while `work` looks at its address, and takes it away. */
export async function withOwnPage(name: string, work: (address: string) => Promise<void>): Promise<void> {
  const outDir = mkdtempSync(join(tmpdir(), 'walewright-own-page-'));
  const root = resolve(import.meta.dirname, 'page');
  const config: InlineConfig = {
    configFile: false,
    root,
    logLevel: 'error',
    plugins: [svelte({ configFile: false })],
    resolve: { alias: { '@shared': resolve(import.meta.dirname, '../../src-shared') } },
    build: { outDir, emptyOutDir: true, minify: false, rollupOptions: { input: resolve(root, `${name}.html`) } },
    preview: { host: '127.0.0.1', port: 0 },
  };
  await build(config);
  const server = await preview(config);
  try {
    await work(`${server.resolvedUrls?.local[0] ?? ''}${name}.html`);
  } finally {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
}
