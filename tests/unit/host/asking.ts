/** Plain HTTP, with every header as the test wants it: `fetch` would mend Host and Origin. */
import { request, type IncomingHttpHeaders } from 'node:http';

export interface Asked {
  readonly method?: string;
  /** As it goes over the wire, dots and all. */
  readonly path?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Uint8Array;
}

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly body: string;
}

export function ask(origin: string, { method = 'GET', path = '/', headers = {}, body }: Asked): Promise<Answer> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve, reject) => {
    const asking = request({ hostname, port, method, path, headers, agent: false }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => {
        const bytes = new Uint8Array(Buffer.concat(chunks));
        const { statusCode = 0, headers: answered } = response;
        resolve({ status: statusCode, headers: answered, bytes, body: new TextDecoder().decode(bytes) });
      });
      response.on('error', reject);
    });
    asking.on('error', reject);
    asking.end(body);
  });
}
