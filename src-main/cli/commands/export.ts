/** `export PROJECT --to DIR`: the files that a project turns into. */
import { plannedPlaces } from '@shared/output/index.ts';
import type { Command } from '../command.ts';
import { readProject } from '../motif-argument.ts';
import { filesText, outputOptions, writeFiles } from '../output.ts';
import { placed } from '../placed.ts';
import { atGivenPlace, scopeGiven } from '../place-option.ts';
import { folder, needed } from '../values.ts';

export const exportCommand: Command = {
  name: 'export',
  argument: 'PROJECT',
  options: [
    'to',
    'paper',
    'charts',
    'unit',
    'date',
    'piece',
    'all-pieces',
    'size',
    'all-sizes',
    'colourway',
    'replace',
  ],
  required: ['to'],
  async run(args, passing) {
    const [path] = args.names as [string];
    const into = needed(args, 'to', folder);
    const options = outputOptions(args);
    const scope = scopeGiven(args);
    const project = atGivenPlace(await readProject(path), args);
    // What cannot be knitted is a problem of the file, found before anything is written.
    placed(path, () => plannedPlaces(project, scope));
    const files = await writeFiles(project, { ...options, scope, folder: into, passing, own: null });
    return { json: { files }, text: () => filesText(files, into) };
  },
};
