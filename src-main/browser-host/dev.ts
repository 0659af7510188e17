/** The browser host for people who work on the page: Vite serves it from source and reloads what changed. */
import type { Server } from 'node:http';
import { join, resolve } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { createServer } from 'vite';
import { CONTENT_SECURITY_POLICY, GUARD_HEADERS, programFolder } from '../services/index.ts';
import { ownTerminal, printAddresses, serveUntilStopped, startBrowserHost, type ServePage } from './index.ts';

/** Vite puts styles into the page from scripts, serves workers as files, and talks back over a web socket. */
const DEVELOPMENT_POLICY = CONTENT_SECURITY_POLICY.replace("style-src 'self'", "style-src 'self' 'unsafe-inline'")
  .replace('worker-src blob:', "worker-src 'self' blob:")
  .replace("connect-src 'self'", "connect-src 'self' ws://127.0.0.1:*");

/** The source of the page is no secret; calls are sealed here as everywhere. */
async function serveFromSource(server: Server): Promise<ServePage> {
  const root = programFolder();
  const vite = await createServer({
    configFile: false,
    root: join(root, 'src-renderer'),
    cacheDir: join(root, 'node_modules', '.vite'),
    resolve: { alias: { '@shared': join(root, 'src-shared') } },
    plugins: [svelte()],
    server: { middlewareMode: true, hmr: { server }, fs: { allow: [root] } },
  });
  server.on('close', () => void vite.close());
  return (request, response) => {
    for (const [name, value] of Object.entries(GUARD_HEADERS)) response.setHeader(name, value);
    response.setHeader('content-security-policy', DEVELOPMENT_POLICY);
    vite.middlewares(request, response);
  };
}

async function main(file: string | undefined): Promise<void> {
  const openAtStart = file === undefined ? null : resolve(file);
  const host = await startBrowserHost({ openAtStart, servePage: serveFromSource });
  const stopped = serveUntilStopped(host);
  const stopPrinting = await printAddresses(host, ownTerminal());
  await stopped;
  stopPrinting();
}

void main(process.argv[2]);
