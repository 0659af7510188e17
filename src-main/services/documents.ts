/** Reading and writing the files that a person names. */
import { basename, resolve } from 'node:path';
import { problemError, problemOf } from '@shared/problem/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import type { Environment } from './environment.ts';
import { readWhole, writeWhole } from './files/index.ts';
import { inTurn } from './in-turn.ts';
import type { Recent } from './recent.ts';
import { stampOf } from './stamp.ts';

const PROJECT_EXTENSION = '.walewright';

export interface Documents {
  read(params: Params<'documents.read'>): Promise<Result<'documents.read'>>;
  write(params: Params<'documents.write'>): Promise<Result<'documents.write'>>;
}

export function documentsOf(environment: Environment, recent: Recent): Documents {
  const { files, wait, homeFolder, shell } = environment;
  const turn = inTurn();

  /** A recent list that cannot be written stops nobody. */
  async function note(path: string): Promise<void> {
    if (!path.toLowerCase().endsWith(PROJECT_EXTENSION)) return;
    shell.noteDocument(path);
    await recent.add(path).catch((error: unknown) => shell.noteProblem(problemOf(error)));
  }

  /** Throws `file-changed-elsewhere` if the file holds something else than `over` names. One that is gone loses nothing. */
  async function refuseIfChanged(path: string, over: string): Promise<void> {
    const bytes = await readWhole(files, path).catch((error: unknown) => {
      if (problemOf(error).code === 'file-missing') return null;
      throw error;
    });
    if (bytes !== null && stampOf(bytes) !== over) throw problemError('file-changed-elsewhere', {}, path);
  }

  return {
    async read(params) {
      const path = resolve(homeFolder, params.path);
      const bytes = await readWhole(files, path);
      await note(path);
      return { path, name: basename(path), bytes: Buffer.from(bytes).toString('base64'), stamp: stampOf(bytes) };
    },

    async write(params) {
      const path = resolve(homeFolder, params.path);
      const bytes = new TextEncoder().encode(params.text);
      await turn(path, async () => {
        if (params.over !== null) await refuseIfChanged(path, params.over);
        await writeWhole(files, wait, path, bytes);
      });
      await note(path);
      return { path, name: basename(path), stamp: stampOf(bytes) };
    },
  };
}
