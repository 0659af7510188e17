/** `keep MOTIF`: a motif more in the collection. */
import { isSameName, motifAlone } from '@shared/collection/index.ts';
import type { Params } from '@shared/host/index.ts';
import { problemError } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { projectToText, type Project } from '@shared/project/index.ts';
import { collectionWords } from '@shared/words/collection.ts';
import type { Args } from '../args.ts';
import type { Command } from '../command.ts';
import { readMotif } from '../motif-argument.ts';
import { keepInOwn, motifsCalled, ownCollection } from '../own-collection.ts';
import { collectionFolder, value } from '../values.ts';

export const keepCommand: Command = {
  name: 'keep',
  argument: 'MOTIF',
  options: ['motif', 'ground', 'collection', 'keep-both', 'replace'],
  required: [],
  async run(args) {
    const [path] = args.names as [string];
    const { project, motif: first } = await readMotif(path, args.values.get('ground'));
    const motif = value(args, 'motif', (name) => motifCalled(project, name)) ?? first;
    const folder = value(args, 'collection', collectionFolder);
    const text = projectToText(motifAlone(project, motif.id));
    const kept = await keepInOwn(text, folder, await answerOf(args, motif.name));
    if (kept.kind === 'asks') throw problemError('files-there', { names: kept.there.map(({ file }) => file) });
    const { as, file } = kept;
    return { json: { name: motif.name, as, file }, text: () => collectionWords.kept[as](motif.name, file) };
  },
};

/** What becomes of a motif of that name. Throws `options-exclude`, or `collected-several` where several could be replaced. */
async function answerOf({ switches, values }: Args, name: string): Promise<Params<'collection.keep'>['there']> {
  const isReplacing = switches.has('replace');
  if (switches.has('keep-both')) {
    if (isReplacing) throw problemError('options-exclude', { options: ['--keep-both', '--replace'] });
    return { kind: 'keep-both' };
  }
  if (!isReplacing) return { kind: 'ask' };
  const there = motifsCalled((await ownCollection(values.get('collection'))).entries, name);
  const [only, another] = there;
  if (another) throw problemError('collected-several', { files: there.map(({ file }) => file) }, '--replace');
  return only ? { kind: 'replace', file: only.file, stamp: only.stamp } : { kind: 'ask' };
}

/** Throws `option-value`. */
function motifCalled({ motifs }: Project, name: string): Motif {
  const [motif] = motifs.filter((one) => isSameName(one.name, name));
  if (motif) return motif;
  const allowed = motifs.map((one) => one.name).join(', ');
  throw problemError('option-value', { option: '--motif', text: name, allowed });
}
