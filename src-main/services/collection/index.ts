/** Motifs kept beyond one project: a folder of small project files that hold one motif each. */
import type { Params, Result } from '@shared/host/index.ts';
import type { Environment } from '../environment.ts';
import { inTurn } from '../in-turn.ts';
import type { Reach } from '../reach.ts';
import type { Settings } from '../settings.ts';
import { Entries } from './entries.ts';
import { chooseFolder, folderNow, listFiles } from './folder.ts';
import { keepMotif } from './keep.ts';

export { Entries, type Entry } from './entries.ts';
export { folderNow, listFiles, type CollectionFolder } from './folder.ts';
export { keepMotif } from './keep.ts';

export interface Collection {
  /** Throws what reading the folder throws; one of the program's own that is not there yet is empty. */
  list(): Promise<Result<'collection.list'>>;
  look(params: Params<'collection.look'>): Promise<Result<'collection.look'>>;
  read(params: Params<'collection.read'>): Promise<Result<'collection.read'>>;
  keep(params: Params<'collection.keep'>): Promise<Result<'collection.keep'>>;
  choose(params: Params<'collection.choose'>): Promise<void>;
}

export function collectionOf(environment: Environment, settings: Settings, reach: Reach): Collection {
  const entries = new Entries(environment);
  const turn = inTurn();
  const now = () => folderNow(environment, settings);
  return {
    list: async () => listFiles(environment, await now()),
    async look({ files }) {
      const { folder } = await now();
      const looked = [];
      for (const file of files) looked.push(await entries.look(folder, file));
      return looked;
    },
    async read({ file }) {
      const { folder } = await now();
      return entries.read(folder, file);
    },
    // One after another: of two of a name that come at once, the second is asked about.
    keep: (params) => turn('keep', async () => keepMotif(environment, entries, await now(), params)),
    choose: ({ folder }) => chooseFolder(environment, settings, reach, folder),
  };
}
