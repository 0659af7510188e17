import { resolve } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'electron-vite';

const alias = { '@shared': resolve('src-shared') };

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
    plugins: [svelte()],
    build: {
      outDir: 'out/renderer',
      minify: true,
      rollupOptions: { input: resolve('src-renderer/index.html') },
    },
  },
});
