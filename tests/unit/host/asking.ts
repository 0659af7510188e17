/** Plain HTTP, with every header as the test wants it: `fetch` would mend Host and Origin. */
import { request, type IncomingHttpHeaders } from 'node:http';

export interface Asked {
  readonly method?: string;
  /** As it goes over the wire, dots and all. */
  readonly path?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

export function ask(origin: string, { method = 'GET', path = '/', headers = {}, body }: Asked): Promise<Answer> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve, reject) => {
    const asking = request({ hostname, port, method, path, headers, agent: false }, (response) => {
      let text = '';
      response.setEncoding('utf8');
      response.on('data', (chunk: string) => (text += chunk));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }));
      response.on('error', reject);
    });
    asking.on('error', reject);
    asking.end(body);
  });
}

/** Opens the address as a browser does and returns the cookie it is given. */
export async function letIn(address: string): Promise<string> {
  const { origin, pathname, search } = new URL(address);
  const { headers } = await ask(origin, { path: pathname + search });
  return headers['set-cookie']?.[0]?.split(';')[0] ?? '';
}
