/** `export PROJECT --to DIR`: the files that a project turns into. */
import { resolve } from 'node:path';
import type { Command } from '../command.ts';
import { readProject } from '../motif-argument.ts';
import { filesText, writeFiles } from '../output.ts';
import { inGivenSize } from '../size-option.ts';
import { folder, needed, paper, value } from '../values.ts';
import { placed } from '../placed.ts';
import { makePlan } from '@shared/knitting/index.ts';

export const exportCommand: Command = {
  name: 'export',
  argument: 'PROJECT',
  options: ['to', 'paper', 'size', 'keep'],
  required: ['to'],
  async run(given) {
    const [path] = given.names as [string];
    const into = needed(given, 'to', folder);
    const onPaper = value(given, 'paper', paper) ?? 'a4';
    const project = inGivenSize(await readProject(path), given);
    // What cannot be knitted is a problem of the file, found before anything is written.
    placed(path, () => makePlan(project));
    const output = { folder: into, paper: onPaper, keeps: given.switches.has('keep') };
    const files = await writeFiles(project, { kind: 'file', path: resolve(path) }, output);
    return { json: { files }, text: () => filesText(files, into) };
  },
};
