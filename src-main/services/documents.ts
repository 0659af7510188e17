/** Reading and writing the files that a person names. */
import { basename, resolve } from 'node:path';
import { problemError, ProblemError, problemOf } from '@shared/problem/index.ts';
import { projectFromText } from '@shared/project/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import type { Environment } from './environment.ts';
import { assertOpens, isProjectName } from './file-kinds.ts';
import { readWhole } from './files/index.ts';
import { inTurn } from './in-turn.ts';
import type { Reach } from './reach.ts';
import type { Recent } from './recent.ts';
import type { Saving } from './saving.ts';
import { stampOf } from './stamp.ts';

export interface Documents {
  read(params: Params<'documents.read'>): Promise<Result<'documents.read'>>;
  write(params: Params<'documents.write'>): Promise<Result<'documents.write'>>;
}

export function documentsOf(environment: Environment, recent: Recent, reach: Reach, saving: Saving): Documents {
  const { files, homeFolder, shell } = environment;
  const turn = inTurn();

  /** A recent list that cannot be written stops nobody. */
  async function note(path: string): Promise<void> {
    if (!isProjectName(path)) return;
    shell.noteDocument(path);
    await recent.add(path).catch((error: unknown) => shell.noteProblem(problemOf(error)));
  }

  return {
    async read(params) {
      const path = resolve(homeFolder, params.path);
      await reach.assertReadable(path);
      const bytes = await readWhole(files, path);
      assertOpens(path, bytes);
      await note(path);
      return { path, name: basename(path), bytes, stamp: stampOf(bytes) };
    },

    async write({ path: given, text, expect }) {
      const path = resolve(homeFolder, given);
      assertOpensAgain(path, text);
      const bytes = new TextEncoder().encode(text);
      const stamp = await turn(path, () => saving.write(path, bytes, expect));
      await note(path);
      return { path, name: basename(path), stamp };
    },
  };
}

/** Throws `project-not-savable` for a project that could not be opened again, and what reading throws for what is none. */
function assertOpensAgain(path: string, text: string): void {
  try {
    projectFromText(text);
  } catch (error) {
    const problem = problemOf(error);
    if (problem.code === 'project-invalid') throw problemError('project-not-savable', problem.facts, path);
    throw new ProblemError({ ...problem, where: path });
  }
}
