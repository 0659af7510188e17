/** Running the programs that test, from node_modules. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

export const root = resolve(import.meta.dirname, '../..');

/** The script behind a command (`package#command`), so that no shell is needed on any platform. */
export function binary(program: string): string {
  const [name, command = name] = program.split('#') as [string, string?];
  const folder = join(root, 'node_modules', name);
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    bin: string | Record<string, string>;
  };
  const entry = typeof manifest.bin === 'string' ? manifest.bin : manifest.bin[command.split('/').at(-1) as string];
  if (entry === undefined) throw new Error(`${name} has no command ${command}`);
  return join(folder, entry);
}

export interface Run {
  readonly title: string;
  /** A package of node_modules, `package#command`, or a script of ours. */
  readonly program: string;
  readonly args: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
  /** Where it runs; in the project's folder if left out. */
  readonly folder?: string;
  /** Whether what it prints is shown as it comes, or once it has ended, because others run beside it. */
  readonly shows: 'at once' | 'at the end';
}

/** Resolves with whether it ended well. */
export async function run({ title, program, args, env = {}, folder = root, shows }: Run): Promise<boolean> {
  const script = program.endsWith('.mjs') ? join(root, program) : binary(program);
  const isShown = shows === 'at once';
  if (isShown) console.log(`\n── ${title}`);
  const child = spawn(process.execPath, [script, ...args], {
    cwd: folder,
    env: { ...process.env, ...env },
    stdio: ['ignore', isShown ? 'inherit' : 'pipe', isShown ? 'inherit' : 'pipe'],
  });
  const printed: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (part: Buffer) => printed.push(part));
  const status = await new Promise<number | null>((end) => child.on('error', () => end(null)).on('close', end));
  if (!isShown) {
    console.log(`\n── ${title}`);
    process.stdout.write(Buffer.concat(printed));
  }
  return status === 0;
}

/** What a program wrote as JSON, or null if it did not come to that. */
export function readReport<T>(path: string): T | null {
  try {
    return JSON.parse(readFileSync(path, 'utf8')) as T;
  } catch {
    return null;
  }
}
