/** Requests that are going on, and an end that waits for no sender. */
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { Socket } from 'node:net';
import { finished } from 'node:stream/promises';
import { setTimeout } from 'node:timers/promises';

/** How long, once nothing runs any more, an answer may take to reach who asked. */
const LAST_ANSWERS_MS = 1000;

export type Handle = (
  request: IncomingMessage,
  response: ServerResponse,
  /** To be told once all of the request has come. */
  whenWhole: () => void,
) => Promise<void>;

/** Serves by `handle`; returns what ends it: at once for who has not said all, after its answer for who has. */
export function serve(server: Server, handle: Handle): () => Promise<void> {
  const sockets = new Set<Socket>();
  /** With a whole request on them that is not answered yet. */
  const answering = new Set<Socket>();
  const running = new Set<Promise<void>>();
  const sending = new Set<Promise<void>>();
  const during = (jobs: Set<Promise<void>>, job: Promise<void>): void => {
    jobs.add(job);
    void job.then(() => jobs.delete(job));
  };

  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
  });
  server.on('request', (request, response) => {
    const { socket } = request;
    const job = handle(request, response, () => answering.add(socket)).catch(() => {
      // The browser went away in the middle, or the page's file did.
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
    during(running, job);
    const sent = job.then(() => finished(response)).catch(() => undefined);
    during(
      sending,
      sent.then(() => void answering.delete(socket)),
    );
  });

  return async () => {
    const closed = new Promise((resolve) => server.close(resolve));
    for (const socket of sockets) if (!answering.has(socket)) socket.destroy();
    await Promise.all(running);
    const patience = new AbortController();
    await Promise.race([
      Promise.all(sending),
      setTimeout(LAST_ANSWERS_MS, undefined, { signal: patience.signal }).catch(() => undefined),
    ]);
    patience.abort();
    server.closeAllConnections();
    await closed;
  };
}
