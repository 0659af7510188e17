/**
 * The one place that writes what a person named.
 *
 * It decides the final path, says what is there, so that the person can be
 * asked, and writes only over what was asked about: over nothing, or over the
 * version that was seen.
 */
import { basename, resolve } from 'node:path';
import { problemError, problemOf } from '@shared/problem/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import type { Environment } from './environment.ts';
import { assertMade, assertOurKind, PROJECT_ENDING } from './file-kinds.ts';
import { failureCode, processesHere, readingProblem, readWhole, writeChecked, type Disk } from './files/index.ts';
import type { Reach } from './reach.ts';
import { stampOf } from './stamp.ts';

/** What must be at a path for it to be written. */
export type Expectation = Params<'documents.write'>['expect'];

export type Target = Result<'documents.target'>;

export interface Saving {
  /**
   * Where a project would go that is saved in `folder` under the `name` typed,
   * and what is there. Throws `file-name-unusable`, `path-closed`,
   * `file-is-folder`, `file-of-other-kind`, and what reading throws.
   */
  target(folder: string, name: string): Promise<Target>;
  /** The stamp of what is at the path, or null. Throws as `target` does. */
  stampAt(path: string): Promise<string | null>;
  /** True if anything at all has that name, of whatever kind. */
  isTaken(path: string): Promise<boolean>;
  /**
   * Writes if what is there is what is expected, and gives the new stamp.
   * Throws `file-exists`, `file-changed-elsewhere`, `file-of-other-kind`,
   * `path-closed`, and what `writeChecked` throws.
   */
  write(path: string, bytes: Uint8Array, expected: Expectation): Promise<string>;
}

export function savingOf({ files, wait, homeFolder }: Environment, reach: Reach): Saving {
  const disk = { files, wait, processes: processesHere };

  async function stampAt(path: string): Promise<string | null> {
    const bytes = await readWhole(files, path).catch((error: unknown) => {
      const { code } = problemOf(error);
      if (code === 'file-missing') return null;
      // Nothing that the program writes is so large.
      throw code === 'file-too-large' ? problemError('file-of-other-kind', {}, path) : error;
    });
    if (bytes === null) return null;
    assertOurKind(path, bytes);
    return stampOf(bytes);
  }

  return {
    async target(folder, name) {
      const path = resolve(homeFolder, folder, fileName(name));
      await reach.assertWritable(path);
      const there = await stampAt(path);
      return { path, name: basename(path), there, mustAsk: there !== null };
    },

    stampAt,

    async isTaken(path) {
      try {
        await files.state(path);
        return true;
      } catch (error) {
        if (failureCode(error) === 'ENOENT') return false;
        throw readingProblem(error, path);
      }
    },

    async write(path, bytes, expected) {
      await reach.assertWritable(path);
      await writeExpected(disk, path, bytes, expected);
      return stampOf(bytes);
    },
  };
}

/** Writes over what is expected at a path that may be written. Throws as {@link Saving.write} does. */
export async function writeExpected(disk: Disk, path: string, bytes: Uint8Array, expected: Expectation): Promise<void> {
  await writeChecked(disk, path, bytes, (there) => {
    if (there === null) return assertMade(path);
    if (expected.kind === 'nothing') throw problemError('file-exists', {}, path);
    if (stampOf(there) !== expected.stamp) throw problemError('file-changed-elsewhere', {}, path);
    assertOurKind(path, there);
  });
}

/** The path with the ending of a project. */
export function projectPath(path: string): string {
  return path.toLowerCase().endsWith(PROJECT_ENDING) ? path : path + PROJECT_ENDING;
}

/** The name typed, without blanks around it. Throws `file-name-unusable` for one that names no file. */
function fileName(typed: string): string {
  const name = typed.trim();
  if (name === '' || /[/\\]$|\0/.test(name)) throw problemError('file-name-unusable', { text: name });
  return projectPath(name);
}
