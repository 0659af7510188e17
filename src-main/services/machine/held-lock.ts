/**
 * A lock that the system itself lets go when its holder ends.
 *
 * Node has no file locks on all platforms, so a listening socket on this
 * machine stands in for one: a Unix socket, on Windows a named pipe. The kernel
 * takes connections to it for as long as the holder lives, whether or not the
 * holder finds time to answer, even while it is stopped; the moment it is
 * killed the kernel refuses them. So a busy program is never taken for a dead
 * one, and no waiting is needed. A port would do the same but could be had by
 * somebody else later; a path in the user's own folder cannot.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { connect, createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { failureCode } from '../files/index.ts';

export interface HeldLock {
  /** Where others look: a path, or the name of a pipe. */
  readonly address: string;
  release(): Promise<void>;
}

const PIPES = '\\\\.\\pipe\\';

/** The shortest `sun_path` of the platforms: macOS has 104 bytes with the closing zero, Linux 108 (unix(4), unix(7)). */
const MOST_ADDRESS_BYTES = 103;

/** Only Windows makes one wait for a pipe: it then exists, so its holder lives. */
const PATIENCE_MS = 2000;

/** The folder of a lock whose own place cannot hold a socket. */
const ELSEWHERE = 'walewright-lock-';

/**
 * Holds a lock in `folder` under `name`. Where the path is too long or the file
 * system has no sockets it stands in a fresh folder for temporary files, for
 * this user alone. Rejects if it can stand nowhere.
 */
export async function holdLock(folder: string, name: string, platform = process.platform): Promise<HeldLock> {
  if (platform === 'win32') return held(`${PIPES}walewright-${name}`);
  const address = join(folder, `${name}.lock`);
  if (Buffer.byteLength(address) <= MOST_ADDRESS_BYTES) {
    try {
      return await held(address);
    } catch {
      // Some mounted file systems know no sockets.
    }
  }
  return held(join(await mkdtemp(join(tmpdir(), ELSEWHERE)), 'lock'));
}

/** True if somebody holds the lock, or if that cannot be told: only what is surely free may be taken. */
export function isHeld(address: string): Promise<boolean> {
  if (!isAddress(address)) return Promise.resolve(false);
  return new Promise((resolve) => {
    const socket = connect(address);
    const finish = (answer: boolean): void => {
      socket.destroy();
      resolve(answer);
    };
    socket.setTimeout(PATIENCE_MS, () => finish(true));
    socket.on('connect', () => finish(true));
    socket.on('error', (error) => finish(!SURELY_FREE.has(failureCode(error) ?? '')));
  });
}

/** Takes away what a dead holder of `name` in `folder` left in the file system. */
export async function clearLock(folder: string, name: string, address: string): Promise<void> {
  await rm(join(folder, `${name}.lock`), { force: true });
  if (isElsewhere(address)) await rm(dirname(address), { recursive: true, force: true });
}

/** Nobody listens, nothing is there, or what is there is no socket. */
const SURELY_FREE = new Set(['ECONNREFUSED', 'ENOENT', 'ENOTDIR', 'ENOTSOCK']);

function isAddress(text: string): boolean {
  return text.startsWith(PIPES) || isElsewhere(text) || (isAbsolute(text) && text.endsWith('.lock'));
}

function isElsewhere(text: string): boolean {
  return isAbsolute(text) && basename(text) === 'lock' && basename(dirname(text)).startsWith(ELSEWHERE);
}

async function held(address: string): Promise<HeldLock> {
  const server = createServer((socket) => {
    socket.on('error', () => undefined);
    socket.destroy();
  });
  await listen(server, address);
  // The lock alone keeps no program going.
  server.unref();
  return {
    address,
    async release() {
      // Node takes the socket's own file away with it.
      await new Promise((resolve) => server.close(resolve));
      if (isElsewhere(address)) await rm(dirname(address), { recursive: true, force: true });
    },
  };
}

function listen(server: Server, address: string): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(address, () => {
      server.off('error', reject);
      resolve();
    });
  });
}
