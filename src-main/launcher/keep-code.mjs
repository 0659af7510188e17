/**
 * Keeps, beside the files of a build, the code that the engine compiled of them
 * while commands ran; the command line starts with it (`cli/kept-code.ts`).
 * Plain JavaScript: `node src-main/launcher/keep-code.mjs OUT/MAIN`, in a process
 * of its own, since what has run holds more than what was only read.
 */
import { mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import Module, { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { Script } from 'node:vm';

const built = resolve(process.argv[2] ?? '');
const entry = join(built, 'cli.cjs');
const require = createRequire(entry);
const work = mkdtempSync(join(tmpdir(), 'walewright-build-'));
/** The sample project, as it was once saved. */
const sample = join(import.meta.dirname, 'sample.walewright');
/** Commands that use what most commands use. */
const commands = [
  ['demo', '--to', work],
  ['export', sample, '--to', work, '--replace'],
  ['measure', sample],
  ['measure', join(work, 'Skerry sleeve - chart.png')],
];

/** @type {[path: string, script: Script][]} */
const loaded = [];
/** @type {(module: NodeJS.Module, path: string) => void} */
const load = (module, path) => {
  const script = new Script(Module.wrap(readFileSync(path, 'utf8')), { filename: path });
  loaded.push([path, script]);
  /** @param {string} name */
  const requireThere = (name) => module.require(name);
  script.runInThisContext().call(module.exports, module.exports, requireThere, module, path, dirname(path));
};
require.extensions['.cjs'] = load;

/** @param {string[]} typed */
function run(typed) {
  process.argv = [process.execPath, entry, ...typed];
  delete require.cache[entry];
  require(entry);
}

function keep() {
  for (const [path, script] of loaded) {
    if (path === entry) continue;
    // Under its name only once it is whole.
    writeFileSync(`${path}.part`, script.createCachedData());
    renameSync(`${path}.part`, `${path}.code`);
  }
  rmSync(work, { recursive: true, force: true });
}

// Each begins when nothing of the one before is left to do.
process.on('beforeExit', () => {
  const next = commands.shift();
  if (next) run(next);
  else if (loaded.length > 0) {
    keep();
    loaded.length = 0;
    process.exitCode = 0;
  }
});
