/** Calls through Electron's preload script. */
import type { Host, HostEvent, Method, Params, Result } from '@shared/host/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { type Connection, isOutcome, UNREACHABLE } from './connection.ts';

/** What the preload script puts on the window. */
export interface Bridge {
  call(method: string, params: unknown): Promise<unknown>;
  listen(listener: (event: HostEvent) => void): () => void;
}

/** The main process is there as long as the window is. */
export function bridgeConnection(bridge: Bridge): Connection {
  return {
    host: bridgeHost(bridge),
    isJoined: true,
    onStanding: () => () => undefined,
    look: async () => true,
    storage: null,
  };
}

export function bridgeHost(bridge: Bridge): Host {
  return {
    async call<M extends Method>(method: M, params: Params<M>): Promise<Outcome<Result<M>>> {
      try {
        const answer = await bridge.call(method, params);
        return isOutcome(answer) ? (answer as Outcome<Result<M>>) : UNREACHABLE;
      } catch {
        return UNREACHABLE;
      }
    },
    listen: (listener) => bridge.listen(listener),
  };
}
