/** Files loaded with the code that the build keeps of them: the same comes of them whatever lies beside them. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import Module, { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { useKeptCode } from '../../../src-main/cli/kept-code.ts';

const TEXT = `exports.twice = (number) => 2 * number; exports.sum = require('./other.cjs').sum;`;
const require = createRequire(import.meta.url);
let folder = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'walewright-code-'));
  writeFileSync(join(folder, 'part.cjs'), TEXT);
  writeFileSync(join(folder, 'other.cjs'), 'exports.sum = (a, b) => a + b;');
  useKeptCode(folder);
});

afterEach(() => {
  delete require.extensions['.cjs'];
  rmSync(folder, { recursive: true });
});

function codeOf(text: string): Buffer {
  return new Script(Module.wrap(text), { filename: join(folder, 'part.cjs') }).createCachedData();
}

it.each([
  ['its code', () => codeOf(TEXT)],
  ['the code of a longer text', () => codeOf(`${TEXT} exports.more = 1;`)],
  ['the code of another engine', () => codeOf(TEXT).fill(7, 4, 8)],
  ['what is no code', () => Buffer.from('no code')],
  ['nothing', () => null],
])('a file with %s beside it does what it says', (_, make) => {
  const code = make();
  if (code) writeFileSync(join(folder, 'part.cjs.code'), code);
  const part = require(join(folder, 'part.cjs')) as {
    twice(number: number): number;
    sum(a: number, b: number): number;
  };
  expect(part.twice(21)).toBe(42);
  expect(part.sum(20, 22)).toBe(42);
});
