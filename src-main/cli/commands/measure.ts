/** `measure MOTIF`: what a drawing is. */
import { differencesOf, measure } from '@shared/motif/repeat/index.ts';
import type { Yarn } from '@shared/project/index.ts';
import { plainText, words } from '@shared/words/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import type { Command } from '../command.ts';
import { measureJson } from '../json/measure.ts';
import { readMotif } from '../motif-argument.ts';
import { onOneLine } from '../text/on-one-line.ts';

/** More places where copies differ are in the JSON alone. */
const MOST_TOLD = 12;

export const measureCommand: Command = {
  name: 'measure',
  argument: 'MOTIF',
  options: ['ground'],
  required: [],
  async run({ names: [path], values }) {
    const { motif, project, isProject } = await readMotif(path as string, values.get('ground'));
    const measured = measure(motif.grid, project.mainYarn);
    const { colour, name } = project.yarns[project.mainYarn] as Yarn;
    const nameOf = (yarn: number): string => {
      const named = project.yarns[yarn] as Yarn;
      return isProject ? onOneLine(named.name) : named.colour;
    };
    return {
      json: measureJson(measured, motif.grid, project.yarns),
      text: () =>
        [
          ...words.measure.sentences(measured),
          ...differencesOf(measured, motif.grid)
            .slice(0, MOST_TOLD)
            .map((versions) => terminalWords.cli.difference(versions, nameOf)),
          terminalWords.cli.ground(colour, isProject ? onOneLine(name) : null),
        ]
          .map(plainText)
          .join('\n'),
    };
  },
};
