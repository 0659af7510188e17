/**
 * The page as it was built, file by file.
 *
 * What may be asked for is listed once at the start, so no path, however
 * written, leads out of the folder.
 */
import { readdir, readFile } from 'node:fs/promises';
import { extname, join, relative, sep } from 'node:path';
import { GUARD_HEADERS, headersOfPage } from './policy.ts';

export interface PageAnswer {
  readonly status: 200 | 404;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array<ArrayBuffer>;
}

export interface Page {
  /**
   * The answer for the path of an address, such as `/` or `/assets/index-1a2b.js`,
   * compressed as `accepted` allows: the header Accept-Encoding, nothing by default.
   */
  answer(path: string, accepted?: string): Promise<PageAnswer>;
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

/** How the build has compressed a file, the smaller first. */
const ENCODINGS = [
  { name: 'br', ending: '.br' },
  { name: 'gzip', ending: '.gz' },
] as const;

/** Rejects with the platform's error if there is no such folder. */
export async function builtPage(folder: string): Promise<Page> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const fileAt = new Map<string, string>();
  for (const entry of entries) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    fileAt.set(`/${relative(folder, file).split(sep).join('/')}`, file);
  }
  const index = fileAt.get('/index.html');
  const ofPage = headersOfPage(index === undefined ? '' : await readFile(index, 'utf8'));
  return {
    async answer(path, accepted = '') {
      const asked = path === '/' ? '/index.html' : path;
      const file = ENCODINGS.some(({ ending }) => asked.endsWith(ending)) ? undefined : fileAt.get(asked);
      const guards = asked === '/index.html' ? ofPage : GUARD_HEADERS;
      if (file === undefined) return { status: 404, headers: { ...guards, ...caching(asked) }, body: new Uint8Array() };
      const type = TYPES[extname(file)] ?? 'application/octet-stream';
      const headers = { ...guards, ...caching(asked), 'content-type': type, vary: 'accept-encoding' };
      for (const { name, ending } of ENCODINGS) {
        const smaller = fileAt.get(asked + ending);
        if (smaller === undefined || !accepts(accepted, name)) continue;
        return {
          status: 200,
          headers: { ...headers, 'content-encoding': name },
          body: new Uint8Array(await readFile(smaller)),
        };
      }
      return { status: 200, headers, body: new Uint8Array(await readFile(file)) };
    },
  };
}

/**
 * Nothing is kept: it is on the same machine, and what a browser has kept for
 * this address may be of another program that had the port before. The page
 * takes that away.
 */
function caching(path: string): Readonly<Record<string, string>> {
  const none = { 'cache-control': 'no-store' };
  return path === '/index.html' ? { ...none, 'clear-site-data': '"cache"' } : none;
}

/** True if the header Accept-Encoding names the encoding and does not weigh it 0 (RFC 9110, 12.5.3). */
function accepts(accepted: string, encoding: string): boolean {
  return accepted
    .toLowerCase()
    .split(',')
    .map((part) => part.split(';').map((piece) => piece.trim()))
    .some(([name, weight = 'q=1']) => name === encoding && !/^q=0(?:\.0*)?$/.test(weight));
}
