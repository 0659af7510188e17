/** The browser host by itself: prints its address and serves until it is ended. */
import { resolve } from 'node:path';
import { ownTerminal, printAddresses, serveUntilStopped, startBrowserHost } from './index.ts';

async function main(file: string | undefined): Promise<void> {
  const host = await startBrowserHost({ openAtStart: file === undefined ? null : resolve(file) });
  const stopped = serveUntilStopped(host);
  const stopPrinting = await printAddresses(host, ownTerminal());
  await stopped;
  stopPrinting();
}

void main(process.argv[2]);
