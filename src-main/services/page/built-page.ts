/**
 * The page as it was built, file by file.
 *
 * What may be asked for is listed once at the start, so no path, however
 * written, leads out of the folder.
 */
import { readdir, readFile } from 'node:fs/promises';
import { extname, join, relative, sep } from 'node:path';
import { GUARD_HEADERS } from './policy.ts';

export interface PageAnswer {
  readonly status: 200 | 404;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array<ArrayBuffer>;
}

export interface Page {
  /** The answer for the path of an address, such as `/` or `/assets/index-1a2b.js`. */
  answer(path: string): Promise<PageAnswer>;
}

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.map': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** Rejects with the platform's error if there is no such folder. */
export async function builtPage(folder: string): Promise<Page> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const fileAt = new Map<string, string>();
  for (const entry of entries) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    fileAt.set(`/${relative(folder, file).split(sep).join('/')}`, file);
  }
  return {
    async answer(path) {
      const file = fileAt.get(path === '/' ? '/index.html' : path);
      if (file === undefined) return { status: 404, headers: GUARD_HEADERS, body: new Uint8Array() };
      const type = TYPES[extname(file)] ?? 'application/octet-stream';
      // The build puts a hash of the content into every name but the page's own.
      const isNamedByContent = path.startsWith('/assets/');
      const caching = isNamedByContent ? 'private, max-age=31536000, immutable' : 'no-store';
      return {
        status: 200,
        headers: { ...GUARD_HEADERS, 'content-type': type, 'cache-control': caching },
        body: new Uint8Array(await readFile(file)),
      };
    },
  };
}
