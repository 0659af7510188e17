import { createHash } from 'node:crypto';
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

/**
 * Lets the page say what each script and style sheet is, as its SHA-256: its
 * own in their elements, all that may be loaded later in an import map. What
 * answers on the host's port later may be another program; what it sends is
 * then not run.
 */
function integrity(): Plugin {
  return {
    name: 'integrity',
    writeBundle: {
      order: 'pre',
      sequential: true,
      async handler({ dir = '' }, bundle) {
        const digests = new Map<string, string>();
        for (const name of Object.keys(bundle).filter((file) => /\.(?:css|js)$/.test(file))) {
          const digest = createHash('sha256').update(await readFile(join(dir, name)));
          digests.set(`./${name}`, `sha256-${digest.digest('base64')}`);
        }
        const page = join(dir, 'index.html');
        const text = (await readFile(page, 'utf8')).replace(/(?<= (?:src|href)="(\.\/[^"]*)")/g, (_, file: string) => {
          const digest = digests.get(file);
          if (digest === undefined)
            throw new Error(`The page loads ${file}, which is none of its scripts or style sheets`);
          return ` integrity="${digest}"`;
        });
        // A script that could not be had is asked for anew twice, under addresses of their own (ui/load-part.ts).
        const scripts = [...digests]
          .filter(([file]) => file.endsWith('.js'))
          .flatMap(([file, digest]) => ['', '?again=1', '?again=2'].map((anew) => [file + anew, digest] as const));
        const map = `<script type="importmap">${JSON.stringify({ integrity: Object.fromEntries(scripts) })}</script>`;
        await writeFile(page, text.replace('<script', `${map}\n    <script`));
      },
    },
  };
}

/** Puts each file of the page beside itself as Brotli (`.br`) and gzip (`.gz`), for the browser host to send. */
function compressed(): Plugin {
  return {
    name: 'compressed',
    writeBundle: {
      order: 'post',
      sequential: true,
      async handler({ dir = '' }, bundle) {
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
    },
  };
}

/**
 * Parts of the PDF library for what no sheet has (a compressed web font, an
 * encrypted file, text that is broken into lines, a picture), each as a module
 * that loads the part when it is first used: at the start of a command they
 * would take longer than all that is used. So it is with its tables of the
 * characters of all scripts, which are unpacked when they are first asked, and
 * by the platform: in JavaScript that takes ten times as long.
 */
const LATE: { readonly [name: string]: string } = {
  'brotli/decompress.js': 'export default (...given) => require("brotli/decompress.js")(...given);',
  '@noble/ciphers/aes': `
    export const cbc = (...given) => require("@noble/ciphers/aes").cbc(...given);
    export const ecb = (...given) => require("@noble/ciphers/aes").ecb(...given);`,
  linebreak: 'export default function (...given) { return new (require("linebreak"))(...given); }',
  'png-js': 'export default function (...given) { return new (require("png-js"))(...given); }',
  'unicode-trie': `
    const Trie = require("unicode-trie/index.js");
    module.exports = class {
      constructor(packed) { this.packed = packed; }
      get(codePoint) { return (this.trie ??= new Trie(this.packed)).get(codePoint); }
    };`,
  'tiny-inflate': `
    const { inflateRawSync } = require("node:zlib");
    module.exports = (packed, into) => {
      const bytes = inflateRawSync(packed);
      into.set(bytes);
      return into.slice(0, bytes.length);
    };`,
};

function latePdfParts(): Plugin {
  const PREFIX = '\0late:';
  return {
    name: 'late-pdf-parts',
    enforce: 'pre',
    resolveId(name, importer = '') {
      if (!Object.hasOwn(LATE, name)) return null;
      if (importer.startsWith(PREFIX)) return { id: name, external: true };
      return /node_modules\/(?:pdfkit|fontkit|unicode-[a-z]+)\//.test(importer) ? `${PREFIX}${name}` : null;
    },
    load: (id) => (id.startsWith(PREFIX) ? (LATE[id.slice(PREFIX.length)] ?? null) : null),
  };
}

/** An icon as its library's module has it: element by element. */
type IconNode = readonly [name: string, attributes: { readonly [name: string]: string | number }];

/**
 * Writes each icon out as markup. The library puts an icon together from its
 * parts wherever one is shown, in ten steps each; made so, the sixty icons of
 * the first window are a quarter of what its start takes. An icon is given its
 * size and is never read aloud: what it means stands beside it in words.
 */
function iconsWrittenOut(): Plugin {
  return {
    name: 'icons-written-out',
    enforce: 'pre',
    transform(code, id) {
      const [, name] = /@lucide\/svelte\/dist\/icons\/([a-z0-9-]+)\.svelte$/.exec(id) ?? [];
      if (name === undefined) return null;
      const [, data] = /const iconData = (\{.*\});$/m.exec(code) ?? [];
      if (data === undefined) throw new Error(`The icon ${name} is not written as it was in its library`);
      const { size, node } = JSON.parse(data) as { readonly size: number; readonly node: readonly IconNode[] };
      const parts = node.map(([element, attributes]) => {
        const written = Object.entries(attributes).filter(([attribute]) => attribute !== 'key');
        return `<${element} ${written.map(([attribute, value]) => `${attribute}="${value}"`).join(' ')} />`;
      });
      return `<script lang="ts">const { size = ${size} } = $props();</script>
<svg class="icon" width={size} height={size} viewBox="0 0 ${size} ${size}" fill="none" stroke="currentColor"
  stroke-width="2" stroke-linecap="round" stroke-linejoin="round" aria-hidden="true">${parts.join('')}</svg>`;
    },
  };
}

/** One build makes the Electron shell, the browser host, the launcher, the command line and the renderer. */
export default defineConfig({
  main: {
    resolve: { alias },
    plugins: [latePdfParts()],
    build: {
      outDir: 'out/main',
      // In one file with what it needs it is loaded in half the time.
      externalizeDeps: { exclude: ['pdfkit'] },
      rollupOptions: {
        input: {
          electron: resolve('src-main/electron/main.ts'),
          'browser-host': resolve('src-main/browser-host/main.ts'),
          cli: resolve('src-main/cli/main.ts'),
          'picture-thread': resolve('src-main/services/pictures/thread.ts'),
          'export-thread': resolve('src-main/services/export/thread.ts'),
          launcher: resolve('src-main/launcher/main.ts'),
        },
        // What is shared is pure: of a folder's index only what is used is loaded.
        treeshake: { moduleSideEffects: (id) => !id.includes('/src-shared/') },
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
    plugins: [iconsWrittenOut(), svelte(), integrity(), compressed()],
    build: {
      outDir: 'out/renderer',
      minify: true,
      // All styles come with the page: browsers let a page say what a script is that is loaded later, but not a style sheet.
      cssCodeSplit: false,
      modulePreload: false,
      rollupOptions: {
        input: resolve('src-renderer/index.html'),
        // What is shared is pure: of a folder's index only what is used comes with the page, the rest with what asks for it.
        treeshake: { moduleSideEffects: (id) => !id.includes('/src-shared/') },
        // All that the window needs at once, in one file: thirty small ones take a fifth more, since none helps to
        // compress the others and each has a head.
        output: { codeSplitting: { groups: [{ name: 'window', tags: ['$initial'] }] } },
      },
    },
  },
});
