/** The browser host by itself: prints its address and serves until it is ended. */
import { resolve } from 'node:path';
import { words } from '@shared/words/index.ts';
import { serveUntilStopped, startBrowserHost } from './index.ts';

async function main(file: string | undefined): Promise<void> {
  const host = await startBrowserHost({ openAtStart: file === undefined ? null : resolve(file) });
  console.log(words.launcher.address(host.address));
  await serveUntilStopped(host);
}

void main(process.argv[2]);
