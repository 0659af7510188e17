/** The renderer's way to the services, whichever shell is around it. */
import { bridgeConnection, type Bridge } from './bridge.ts';
import type { Entered } from './connection.ts';
import { keepRunKey, keptRunKey, takeEntryKey, type Place } from './keys-of-the-page.ts';
import { SealedConnection, type Surroundings } from './sealed-connection.ts';
import { sealingInWorker } from './sealing.ts';
import SealingWorker from './sealing.worker.ts?worker&inline';
import { nextLook, patience } from './watching.ts';

export type { Connection, Entered, Outside, Standing, StorageSeal } from './connection.ts';

/** Through Electron's bridge where there is one, else sealed, over HTTP, to where the page came from. */
export async function connect(): Promise<Entered> {
  const { walewrightBridge } = window as Window & { readonly walewrightBridge?: Bridge };
  if (walewrightBridge) return { kind: 'in', connection: bridgeConnection(walewrightBridge) };
  return enter(window, {
    authority: location.host,
    fetch: (path, request) => fetch(path, request),
    // The worker comes with the page: one that were fetched later could be a stranger's, and would be given keys.
    sealing: sealingInWorker(() => new SealingWorker()),
    keepRunKey: (key) => keepRunKey(window, key),
    nextLook,
    patience,
  });
}

/** Takes a key out of the address that a window which is in has no use for; it goes on to open another. */
export function dropEntryKey(): void {
  takeEntryKey(window);
}

/** With the key of the address, else with that of the run, if the page was loaded again. */
async function enter(place: Place, surroundings: Surroundings): Promise<Entered> {
  const entryKey = takeEntryKey(place);
  const runKey = keptRunKey(place);
  let why: Extract<Entered, { kind: 'outside' }>['why'] = 'no-key';
  for (const [way, key] of [
    ['enter', entryKey],
    ['join', runKey],
  ] as const) {
    if (key === null) continue;
    const opened = await SealedConnection.open(surroundings, way, key);
    if (typeof opened !== 'string') return { kind: 'in', connection: opened };
    if (opened === 'nobody') why = 'nobody';
    else if (way === 'enter') why = 'key-refused';
  }
  return { kind: 'outside', why };
}
