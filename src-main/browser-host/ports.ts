/**
 * The ports that hosts of this user had, the last first.
 *
 * A browser keeps what it stores by address. So a host takes the last port
 * again where it is free: there are the windows that wait for a host, and the
 * work they keep.
 */
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { outcome } from '@shared/problem/index.ts';
import { whole, z } from '@shared/schema/index.ts';
import { failureCode, nodeFiles, writeWhole, type Environment } from '../services/index.ts';

const portsSchema = z.array(whole(1024, 65_535)).check(z.maxLength(100));

/** Hosts that run side by side have one each; more are of no use. */
const MOST_KEPT = 8;

const fileIn = (dataFolder: string): string => join(dataFolder, 'ports.json');

/** The ports that were noted, the last first. */
export async function lastPorts(dataFolder: string): Promise<readonly number[]> {
  const text = await readFile(fileIn(dataFolder), 'utf8').catch(() => '[]');
  const read = outcome(() => portsSchema.parse(JSON.parse(text)));
  return read.ok ? read.value : [];
}

/** Notes that `port` was had after those `before`. Where it cannot be noted the next start has another address. */
export async function notePort(
  { wait, dataFolder }: Environment,
  port: number,
  before: readonly number[],
): Promise<void> {
  const ports = [port, ...before.filter((other) => other !== port)].slice(0, MOST_KEPT);
  const bytes = new TextEncoder().encode(JSON.stringify(ports));
  await writeWhole(nodeFiles, wait, fileIn(dataFolder), bytes).catch(() => undefined);
}

/** Listens on the first of `ports` that is free, else on any; returns which. */
export async function listenOnOneOf(server: Server, host: string, ports: readonly number[]): Promise<number> {
  let isListening = false;
  for (const port of ports) {
    isListening = await canListen(server, port, host);
    if (isListening) break;
  }
  if (!isListening) await listen(server, 0, host);
  return (server.address() as AddressInfo).port;
}

function listen(server: Server, port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const fail = (error: Error): void => {
      server.off('listening', succeed);
      reject(error);
    };
    const succeed = (): void => {
      server.off('error', fail);
      resolve();
    };
    server.once('error', fail);
    server.once('listening', succeed);
    server.listen(port, host);
  });
}

/** False if somebody else has the port. */
async function canListen(server: Server, port: number, host: string): Promise<boolean> {
  try {
    await listen(server, port, host);
    return true;
  } catch (error) {
    if (['EADDRINUSE', 'EACCES'].includes(failureCode(error) ?? '')) return false;
    throw error;
  }
}
