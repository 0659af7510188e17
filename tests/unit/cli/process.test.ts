import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { blankColumnMotif, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());
const root = resolve(import.meta.dirname, '../../..');
const motif = folder.motif('motif.pbm', blankColumnMotif(31));

interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly warned: string;
}

/** Runs the command line as a process; `stopAfter` closes its output after that many bytes, as `head` does. */
function runProcess(typed: readonly string[], stopAfter = Infinity): Promise<Ended> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src-main/cli/main.ts', ...typed], { cwd: root });
  let out = '';
  let warned = '';
  child.stdout.on('data', (chunk: Buffer) => {
    out += chunk.toString();
    if (out.length >= stopAfter) child.stdout.destroy();
  });
  child.stderr.on('data', (chunk: Buffer) => (warned += chunk.toString()));
  return new Promise((done) => child.on('close', (status) => done({ status, out, warned })));
}

describe('the command line as a process', () => {
  it('answers on standard output and ends with 0', async () => {
    const { status, out, warned } = await runProcess(['measure', motif, '--json']);
    expect([status, warned]).toEqual([0, '']);
    expect(JSON.parse(out)).toMatchObject({ width: 12, height: 31 });
  });

  it('ends with 1 and says why on standard error', async () => {
    const { status, out, warned } = await runProcess(['measure', 'no-such-file.png']);
    expect([status, out]).toEqual([1, '']);
    expect(warned).toContain('no-such-file.png: There is no such file');
  });

  it('ends quietly when its reader has seen enough', async () => {
    const plan = ['plan', motif, '--stitches', '200', '--copies', '6', '--rows', '2000', '--json'];
    const { status, out, warned } = await runProcess(plan, 1);
    expect([status, warned]).toEqual([0, '']);
    expect(out.length).toBeGreaterThan(0);
  });
});
