/** What a host says in the terminal of the person who started it. */
import { createInterface } from 'node:readline';
import { terminalWords } from '@shared/words/terminal.ts';
import type { BrowserHost } from './start.ts';

export interface Terminal {
  readonly say: (line: string) => void;
  /** Where Enter is pressed. */
  readonly input: NodeJS.ReadableStream;
}

/** The terminal that this process was started from. */
export function ownTerminal(): Terminal {
  return { say: (line) => console.log(line), input: process.stdin };
}

/** Prints an address that lets one window in, and another for every Enter. Returns what stops that. */
export async function printAddresses(host: BrowserHost, { say, input }: Terminal): Promise<() => void> {
  const print = async (): Promise<void> => say(terminalWords.launcher.address(await host.newAddress()));
  await print();
  say(terminalWords.launcher.howToEnd);
  // A program that was sent to the background and reads is stopped by the terminal, unless it asks not to be.
  const stay = (): void => undefined;
  if (process.platform !== 'win32') process.on('SIGTTIN', stay);
  input.on('error', stay);
  const lines = createInterface({ input, terminal: false });
  lines.on('line', () => void print());
  return () => {
    lines.close();
    input.pause();
    if (process.platform !== 'win32') process.off('SIGTTIN', stay);
  };
}
