/** The renderer's way to the services, whichever shell is around it. */
import type { Host } from '@shared/host/index.ts';
import { bridgeHost, type Bridge } from './bridge.ts';
import { httpHost } from './http.ts';

/** Through Electron's bridge where there is one, else over HTTP to where the page came from. */
export function connectHost(): Host {
  const { walewrightBridge } = window as Window & { readonly walewrightBridge?: Bridge };
  return walewrightBridge ? bridgeHost(walewrightBridge) : httpHost((path, request) => fetch(path, request));
}
