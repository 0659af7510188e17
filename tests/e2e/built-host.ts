/** The browser host as it was built, in a process of its own, as a person starts it. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { resolve } from 'node:path';

const program = resolve(import.meta.dirname, '../../out/main/browser-host.cjs');
const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/\S*/;

export interface BuiltHost {
  /** What it printed for the person to open. */
  readonly address: string;
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
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = once(host, 'close') as Promise<[number | null, NodeJS.Signals | null]>;
  let complaints = '';
  host.stderr.setEncoding('utf8').on('data', (text: string) => (complaints += text));
  const address = await new Promise<string>((found, failed) => {
    let printed = '';
    host.stdout.setEncoding('utf8').on('data', (text: string) => {
      printed += text;
      const address = ADDRESS.exec(printed);
      if (address && printed.endsWith('\n')) found(address[0]);
    });
    ended.then(([code]) => failed(new Error(`The host ended with ${code}: ${printed}${complaints}`)), failed);
  });
  return {
    address,
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
