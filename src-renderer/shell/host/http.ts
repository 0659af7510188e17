/** Calls to the browser host. It has nothing to say unasked. */
import type { Host, Method, Params, Result } from '@shared/host/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { isOutcome, UNREACHABLE } from './outcome.ts';

export type Fetch = (path: string, request: RequestInit) => Promise<Response>;

export function httpHost(fetch: Fetch): Host {
  return {
    async call<M extends Method>(method: M, params: Params<M>): Promise<Outcome<Result<M>>> {
      try {
        const response = await fetch(`/call/${method}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(params),
        });
        const answer: unknown = await response.json();
        return isOutcome(answer) ? (answer as Outcome<Result<M>>) : UNREACHABLE;
      } catch {
        return UNREACHABLE;
      }
    },
    listen: () => () => undefined,
  };
}
