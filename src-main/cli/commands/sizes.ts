/** `sizes PROJECT`: its sizes side by side. */
import { sizesTable } from '@shared/fabric/index.ts';
import type { Command } from '../command.ts';
import { sizesJson } from '../json/sizes.ts';
import { readProject } from '../motif-argument.ts';
import { atGivenPlace } from '../place-option.ts';
import { sizesText } from '../text/sizes.ts';

export const sizesCommand: Command = {
  name: 'sizes',
  argument: 'PROJECT',
  options: ['piece'],
  required: [],
  async run(args) {
    const [path] = args.names as [string];
    const project = atGivenPlace(await readProject(path), args);
    const table = sizesTable(project);
    return { json: sizesJson(table), text: () => sizesText(table, project.machine) };
  },
};
