import { readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'electron-vite';
import type { Plugin } from 'vite';

const alias = { '@shared': resolve('src-shared') };

/** Files of the page that become smaller; pictures and woff2 are compressed already. */
const COMPRESSIBLE = /\.(?:css|html|js|json|svg|ttf|wasm)$/;

/** Puts each file of the page beside itself as Brotli (`.br`) and gzip (`.gz`), for the browser host to send. */
function compressed(): Plugin {
  return {
    name: 'compressed',
    async writeBundle({ dir = '' }, bundle) {
      await Promise.all(
        Object.keys(bundle)
          .filter((name) => COMPRESSIBLE.test(name))
          .map(async (name) => {
            const file = join(dir, name);
            const bytes = await readFile(file);
            const size = { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
            await writeFile(`${file}.br`, await promisify(brotliCompress)(bytes, { params: size }));
            await writeFile(`${file}.gz`, await promisify(gzip)(bytes, { level: constants.Z_BEST_COMPRESSION }));
          }),
      );
    },
  };
}

/**
 * All that the window needs at once, in one file: thirty small ones take a
 * fifth more, since none helps to compress the others and each has a head.
 */
function startInOne(): Plugin {
  const atOnce = new Set<string>();
  return {
    name: 'start-in-one',
    buildEnd() {
      const left = [...this.getModuleIds()].filter((id) => this.getModuleInfo(id)?.isEntry);
      for (let id = left.pop(); id !== undefined; id = left.pop()) {
        if (atOnce.has(id)) continue;
        atOnce.add(id);
        left.push(...(this.getModuleInfo(id)?.importedIds ?? []));
      }
    },
    outputOptions: (options) => ({
      ...options,
      codeSplitting: { groups: [{ name: 'window', test: (id: string) => atOnce.has(id) }] },
    }),
  };
}

/** One build makes the Electron shell, the browser host, the launcher, the command line and the renderer. */
export default defineConfig({
  main: {
    resolve: { alias },
    build: {
      outDir: 'out/main',
      rollupOptions: {
        input: {
          electron: resolve('src-main/electron/main.ts'),
          'browser-host': resolve('src-main/browser-host/main.ts'),
          cli: resolve('src-main/cli/main.ts'),
          'picture-thread': resolve('src-main/services/pictures/thread.ts'),
          'export-thread': resolve('src-main/services/export/thread.ts'),
          launcher: resolve('src-main/launcher/main.ts'),
        },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  preload: {
    resolve: { alias },
    build: {
      outDir: 'out/preload',
      // A sandboxed preload can require nothing but Electron, so all else is bundled in.
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: resolve('src-main/electron/preload.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'src-renderer',
    resolve: { alias },
    plugins: [svelte(), startInOne(), compressed()],
    build: {
      outDir: 'out/renderer',
      minify: true,
      rollupOptions: { input: resolve('src-renderer/index.html') },
    },
  },
});
