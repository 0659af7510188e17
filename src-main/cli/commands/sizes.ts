/** `sizes PROJECT`: its sizes side by side. */
import { sizesTable } from '@shared/fabric/index.ts';
import type { Command } from '../command.ts';
import { sizesJson } from '../json/sizes.ts';
import { readProject } from '../motif-argument.ts';
import { sizesText } from '../text/sizes.ts';

export const sizesCommand: Command = {
  name: 'sizes',
  argument: 'PROJECT',
  options: [],
  required: [],
  async run({ names: [path] }) {
    const project = await readProject(path as string);
    const table = sizesTable(project);
    return { json: sizesJson(table), text: () => sizesText(table, project.piece) };
  },
};
