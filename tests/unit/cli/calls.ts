/** Calls of the command line, made in this process, and files to call it with. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '../../../src-main/cli/run.ts';

export interface Called {
  readonly status: number;
  readonly out: string;
  readonly warned: string;
}

/** `walewright …` as typed; what it printed and its exit status. */
export async function call(...typed: string[]): Promise<Called> {
  const out: string[] = [];
  const warned: string[] = [];
  const status = await run(typed, { out: (text) => out.push(text), warn: (text) => warned.push(text) });
  return { status, out: out.join('\n'), warned: warned.join('\n') };
}

/** The same with `--json`: the one document printed. */
export async function callJson<T>(...typed: string[]): Promise<T> {
  const { out } = await call(...typed, '--json');
  return JSON.parse(out) as T;
}

/** A folder of files to read, taken away by `remove`. */
export class Folder {
  readonly path = mkdtempSync(join(tmpdir(), 'walewright-cli-'));

  /** Writes a file and gives its path. */
  file(name: string, content: string | Uint8Array): string {
    const path = join(this.path, name);
    writeFileSync(path, content);
    return path;
  }

  /** A PBM of lines of text, X being the figure, the topmost row first. */
  motif(name: string, rows: readonly string[]): string {
    const bits = rows.map((row) => [...row].map((cell) => (cell === 'X' ? '1' : '0')).join(' '));
    return this.file(name, `P1\n${rows[0]?.length ?? 0} ${rows.length}\n${bits.join('\n')}\n`);
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

/**
 * A motif 12 wide and `rows` tall that fills its columns 1 to 11, and whose
 * last column as drawn is blank: worn on the knit side, the first column on
 * the needles is.
 */
export function blankColumnMotif(rows: number): string[] {
  const row = (at: number): string =>
    Array.from({ length: 12 }, (_, column) =>
      column < 11 && (column === 0 || column === 10 || (column * 3 + at) % 4 !== 0) ? 'X' : '.',
    ).join('');
  return Array.from({ length: rows }, (_, at) => row(at));
}
