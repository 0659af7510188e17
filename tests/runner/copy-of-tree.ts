/** A copy of the project to change. */
import { cpSync, mkdtempSync, readdirSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './programs.ts';

/** What is made from the sources, or is none of them. */
const LEFT_OUT = ['.git', 'demo-output', 'dist', 'fuzz-input', 'node_modules', 'out', 'screens', 'test-results'];

/**
 * A copy of all files of the project in a new temporary folder, with the same
 * packages. The caller takes it away.
 */
export function copyOfTree(purpose: string): string {
  const copy = mkdtempSync(join(tmpdir(), `walewright-${purpose}-`));
  for (const name of readdirSync(root)) {
    if (!LEFT_OUT.includes(name)) cpSync(join(root, name), join(copy, name), { recursive: true });
  }
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'), 'junction');
  return copy;
}
