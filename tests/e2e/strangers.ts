/** Servers that are not ours, on the ports of this machine. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface Heard {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

export interface Stranger {
  readonly origin: string;
  /** All that it was asked, as it came. */
  readonly heard: readonly Heard[];
  close(): Promise<void>;
}

/** What it gives for a path in place of its page, or null. */
export type Gives = (path: string) => {
  readonly type: string;
  readonly body: string;
  readonly headers?: Readonly<Record<string, string>>;
} | null;

/** Listens on `port`, or any; answers every request with a page that holds `html`, and lets every page ask. */
export async function startStranger(html: string, port = 0, gives: Gives = () => null): Promise<Stranger> {
  const heard: Heard[] = [];
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const { method = '', url = '', headers } = request;
      heard.push({ method, path: url, headers, body: Buffer.concat(chunks).toString('latin1') });
      const given = method === 'POST' ? null : gives(url);
      response.writeHead(200, {
        'content-type': given?.type ?? (method === 'POST' ? 'application/json' : 'text/html'),
        ...given?.headers,
        'access-control-allow-origin': '*',
        'access-control-allow-headers': '*',
      });
      if (given) response.end(given.body);
      else response.end(method === 'POST' ? JSON.stringify({ ok: true, value: null }) : `<!doctype html>${html}`);
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    heard,
    async close() {
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeAllConnections();
      await closed;
    },
  };
}
