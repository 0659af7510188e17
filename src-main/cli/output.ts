/** Writing what a project turns into. */
import { mkdir } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { exportKinds } from '@shared/host/index.ts';
import { problemError } from '@shared/problem/index.ts';
import type { Project } from '@shared/project/index.ts';
import type { PaperSize } from '@shared/sheet/index.ts';
import { words } from '@shared/words/index.ts';
import type { WrittenFile } from '../services/export/index.ts';
import { failureCode, nodeFiles, writeWhole, writingProblem } from '../services/files/index.ts';

/**
 * Writes every kind of file that a project turns into, each whole or not at
 * all, into a folder that is made if need be. Throws what planning and writing
 * throw.
 */
export async function writeFiles(project: Project, folder: string, paper: PaperSize): Promise<readonly WrittenFile[]> {
  const into = resolve(folder);
  await makeFolder(into);
  // Fonts and the PDF writer take a while to load; the other commands do not wait for them.
  const { writeExports } = await import('../services/export/index.ts');
  const wait = (ms: number): Promise<void> => setTimeout(ms);
  return await writeExports({
    project,
    folder: into,
    kinds: exportKinds,
    paper,
    writeFile: (path, bytes) => writeWhole(nodeFiles, wait, path, bytes),
  });
}

/** A line for each file, under a heading. */
export function filesText(files: readonly WrittenFile[], folder: string): string {
  const lines = files.map(({ path }) => `  ${basename(path)}`);
  return [words.cli.files.written(files.length, resolve(folder)), ...lines].join('\n');
}

async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    if (failureCode(error) === 'EEXIST') {
      throw problemError('folder-not-writable', { detail: `${basename(folder)} is not a folder` }, folder);
    }
    throw writingProblem(error, folder);
  }
}
