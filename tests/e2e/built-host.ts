/** The browser host as it was built, in a process of its own, as a person starts it. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { resolve } from 'node:path';

const program = resolve(import.meta.dirname, '../../out/main/browser-host.cjs');
const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/\?visit=[\w-]{12}#[\w-]{43}\n/g;

export interface BuiltHost {
  /** `http://127.0.0.1:PORT` */
  readonly origin: string;
  /** Presses Enter where it prints; what it prints then, an address that lets one window in. */
  newAddress(): Promise<string>;
  /** What it has complained of so far. */
  complaints(): string;
  /** Ends it as Ctrl-C does. Throws with what it complained of, if it did, or if it did not end well. */
  close(): Promise<void>;
  /** Ends it as a crash does. */
  kill(): Promise<void>;
}

/** `file` is opened at the start. Rejects with what it printed, if it ends before it has said where it is. */
export async function startBuiltHost(homeFolder: string, dataFolder: string, file?: string): Promise<BuiltHost> {
  const host = spawn(process.execPath, [program, ...(file === undefined ? [] : [file])], {
    // Node complains where colours are asked for and refused at once, as test runners may.
    env: {
      ...process.env,
      FORCE_COLOR: undefined,
      WALEWRIGHT_DATA: dataFolder,
      HOME: homeFolder,
      USERPROFILE: homeFolder,
    },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  const ended = once(host, 'close') as Promise<[number | null, NodeJS.Signals | null]>;
  let complaints = '';
  host.stderr.setEncoding('utf8').on('data', (text: string) => (complaints += text));
  let printed = '';
  host.stdout.setEncoding('utf8').on('data', (text: string) => (printed += text));
  // It may be ended while it is asked.
  host.stdin.on('error', () => undefined);
  let taken = 0;

  async function nextAddress(): Promise<string> {
    const wanted = taken++;
    for (;;) {
      const found = printed.match(ADDRESS)?.[wanted];
      if (found !== undefined) return found.trim();
      const more = once(host.stdout, 'data').then(() => null);
      const end = await Promise.race([more, ended]);
      if (end !== null) throw new Error(`The host ended with ${end[0]}: ${printed}${complaints}`);
    }
  }

  let unused: string | null = await nextAddress();
  return {
    origin: new URL(unused).origin,
    async newAddress() {
      const address = unused;
      unused = null;
      if (address !== null) return address;
      host.stdin.write('\n');
      return nextAddress();
    },
    complaints: () => complaints,
    async kill() {
      host.kill('SIGKILL');
      await ended;
    },
    async close() {
      host.kill('SIGINT');
      const [code, signal] = await ended;
      if (code !== 0 || complaints !== '') {
        throw new Error(`The host ended with ${code ?? signal}, saying: ${complaints}`);
      }
    },
  };
}
