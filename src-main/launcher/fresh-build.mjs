/**
 * Whether what was built is what the sources say, and building it where it is
 * not. Plain JavaScript: it runs before anything has been built.
 *
 * A build notes a digest of its sources: path, size and time of change of each
 * file. Equal digests mean that nothing has come, gone or changed, which times
 * alone do not tell (a pull may bring a file that is older than the build).
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { oneAtATime } from './build-lock.mjs';

const SOURCES = ['src-shared', 'src-main', 'src-renderer'];
const SETTINGS = ['electron.vite.config.ts', 'package.json', 'package-lock.json', 'tsconfig.json'];

/** @param {string} root */
const noteOf = (root) => join(root, 'out', 'built-from');

/**
 * What tells these sources from others. Looks at no content: some milliseconds for all files.
 * @param {string} root the program's folder
 * @returns {string | null} null where there are no sources, as in an installed program
 */
function digestOfSources(root) {
  // Paths joined by hand and hashed at once: with some 800 files a fifth less time.
  let seen = '';
  /** @param {string} path */
  const add = (path) => {
    const { size, mtimeMs } = statSync(`${root}/${path}`);
    seen += `${path}\0${size}\0${mtimeMs}\n`;
  };
  /** @param {string} folder */
  const addAll = (folder) => {
    const entries = readdirSync(`${root}/${folder}`, { withFileTypes: true });
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      const path = `${folder}/${entry.name}`;
      if (entry.isDirectory()) addAll(path);
      else add(path);
    }
  };
  if (!SOURCES.every((folder) => existsSync(join(root, folder)))) return null;
  for (const folder of SOURCES) addAll(folder);
  for (const file of SETTINGS) if (existsSync(join(root, file))) add(file);
  return createHash('sha256').update(seen).digest('hex');
}

/**
 * Whether a build is there, and of which sources.
 * @param {string} root
 * @returns {'current' | 'older' | 'missing'}
 */
export function stateOfBuild(root) {
  const digest = digestOfSources(root);
  const isBuilt = existsSync(join(root, 'out', 'main', 'launcher.cjs'));
  if (digest === null) return isBuilt ? 'current' : 'missing';
  const note = noteOf(root);
  if (!isBuilt || !existsSync(note)) return 'missing';
  return readFileSync(note, 'utf8') === digest ? 'current' : 'older';
}

/** The builder's script, or null where it is not installed. @param {string} root */
export function builderIn(root) {
  const script = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js');
  return existsSync(script) ? script : null;
}

/**
 * Builds, whatever was built before.
 * @param {string} root
 * @param {(line: string) => void} say
 * @returns {boolean} whether everything was built
 */
export function build(root, say) {
  return oneAtATime(
    join(root, 'out', 'being-built'),
    () => say(WAITING),
    () => makeAndNote(root, makeAll),
  );
}

const WAITING =
  'Walewright is being built by another start of it: waiting for that. (If none runs, delete out/being-built.)';

/**
 * Builds, and notes of which sources.
 * @param {string} root
 * @param {(root: string) => boolean} make makes all parts; true if it could
 * @returns {boolean} whether everything was built
 */
function makeAndNote(root, make) {
  // What changes while it is built makes the next start build again.
  const digest = digestOfSources(root);
  rmSync(noteOf(root), { force: true });
  if (!make(root)) return false;
  if (digest !== null) writeFileSync(noteOf(root), digest);
  return true;
}

/** @param {string} root */
function makeAll(root) {
  const builder = builderIn(root);
  if (builder === null) return false;
  // What is printed goes beside the answers of the command line, never into them.
  const { status } = spawnSync(process.execPath, [builder, 'build', '--logLevel', 'error'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
  });
  if (status !== 0) return false;
  // A command without it is only slower to start.
  const keep = join(import.meta.dirname, 'keep-code.mjs');
  spawnSync(process.execPath, [keep, join(root, 'out', 'main')], { cwd: root, stdio: 'ignore', timeout: 60_000 });
  return true;
}

/**
 * Makes the build what the sources say, saying so in a line where there is something to do.
 * @param {string} root
 * @param {(line: string) => void} say
 * @param {(root: string) => boolean} make
 * @returns {boolean} whether the program can be run
 */
export function ensureBuilt(root, say, make = makeAll) {
  const state = stateOfBuild(root);
  if (state === 'current') return true;
  if (make === makeAll && builderIn(root) === null) {
    say(
      state === 'missing'
        ? 'Walewright has not been built, and what builds it is not installed. Run: npm ci'
        : 'The sources are newer than the build, and what builds it is not installed; what was built is run. Run: npm ci',
    );
    return state === 'older';
  }
  return oneAtATime(
    join(root, 'out', 'being-built'),
    () => say(WAITING),
    () => buildIfNotCurrent(root, say, make),
  );
}

/**
 * @param {string} root
 * @param {(line: string) => void} say
 * @param {(root: string) => boolean} make
 */
function buildIfNotCurrent(root, say, make) {
  // Who was waited for may have built it.
  const state = stateOfBuild(root);
  if (state === 'current') return true;
  say(
    state === 'missing'
      ? 'Walewright has not been built yet: building it, which takes some seconds.'
      : 'The sources have changed since Walewright was built: building it again, which takes some seconds.',
  );
  if (makeAndNote(root, make)) return true;
  say(
    'It could not be built; the reason stands above. Mend the file that is named there, or run npm ci, and try again.',
  );
  return false;
}
