/**
 * Which runs of the program are going on.
 *
 * A process number says little: after a power cut the next start may give it
 * to something else, and kept work would never be offered again. So each run
 * listens on a port of its own, notes it in the data folder, and answers with
 * its name. When it ends, however it ends, the port is silent or belongs to
 * somebody who does not know the name.
 */
import { randomUUID } from 'node:crypto';
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';
import { join } from 'node:path';
import type { Presence } from '../environment.ts';
import { readWhole, writeWhole, type FileOperations, type Wait } from '../files/index.ts';

const LOOPBACK = '127.0.0.1';
const PATIENCE_MS = 3000;

export interface OwnPresence extends Presence {
  /** Ends the presence; the run must keep no more work after that. */
  close(): Promise<void>;
}

export async function announcePresence(files: FileOperations, wait: Wait, dataFolder: string): Promise<OwnPresence> {
  const instance = randomUUID();
  const folder = join(dataFolder, 'running');
  const noteOf = (name: string): string => join(folder, name);

  const server = createServer((socket) => {
    socket.on('error', () => undefined);
    socket.end(instance);
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, LOOPBACK, resolve);
  });
  server.unref();
  const { port } = server.address() as AddressInfo;
  await files.makeFolder(folder);
  await writeWhole(files, wait, noteOf(instance), new TextEncoder().encode(String(port)));

  return {
    instance,
    async isRunning(other) {
      const bytes = await readWhole(files, noteOf(other), 100).catch(() => null);
      if (bytes === null) return false;
      const isThere = (await nameAt(Number(new TextDecoder().decode(bytes)))) === other;
      if (!isThere) await files.unlink(noteOf(other)).catch(() => undefined);
      return isThere;
    },
    async close() {
      await new Promise((resolve) => server.close(resolve));
      await files.unlink(noteOf(instance)).catch(() => undefined);
    },
  };
}

/** What answers on the port, or null. */
function nameAt(port: number): Promise<string | null> {
  if (!Number.isInteger(port) || port < 1 || port > 65_535) return Promise.resolve(null);
  return new Promise((resolve) => {
    const socket: Socket = connect(port, LOOPBACK);
    let name = '';
    const finish = (answer: string | null): void => {
      socket.destroy();
      resolve(answer);
    };
    socket.setTimeout(PATIENCE_MS, () => finish(null));
    socket.setEncoding('utf8');
    socket.on('data', (text: string) => {
      name += text;
      if (name.length > 100) finish(null);
    });
    socket.on('end', () => finish(name));
    socket.on('error', () => finish(null));
  });
}
