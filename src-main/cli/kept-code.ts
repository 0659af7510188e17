/**
 * The program's own files, loaded with the code that the build compiled of them
 * (`launcher/keep-code.mjs`): a command takes longer to be compiled than to run.
 */
import { existsSync, readFileSync } from 'node:fs';
import Module, { createRequire } from 'node:module';
import { dirname, sep } from 'node:path';
import { Script } from 'node:vm';

/** What is beside a file of the program with its code in it. */
const ENDING = '.code';

/** A file's text as the platform wraps it; what the build makes asks `load` for nothing but modules. */
type Wrapped = (
  exports: unknown,
  load: (name: string) => unknown,
  module: NodeModule,
  path: string,
  folder: string,
) => void;

/**
 * Loads files in `folder` that have code beside them with that code. The engine
 * takes it only if the very same engine made it of a text of the same length,
 * and compiles the text otherwise; files are named by a hash of their text.
 */
export function useKeptCode(folder: string): void {
  const { extensions } = createRequire(import.meta.url);
  // Where somebody has a way of their own to load such files, it is kept.
  if (extensions['.cjs']) return;
  extensions['.cjs'] = (module, path) => {
    const kept = path + ENDING;
    if (!path.startsWith(folder + sep) || !existsSync(kept)) return extensions['.js'](module, path);
    const text = Module.wrap(readFileSync(path, 'utf8'));
    const run = new Script(text, { filename: path, cachedData: readFileSync(kept) }).runInThisContext() as Wrapped;
    const load = (name: string): unknown => module.require(name);
    run.call(module.exports, module.exports, load, module, path, dirname(path));
  };
}
