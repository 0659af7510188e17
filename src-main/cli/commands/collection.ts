/** `collection`: the motifs that are kept beyond one project. */
import { join } from 'node:path';
import { finder, type CellSize } from '@shared/collection/index.ts';
import { collectionWords } from '@shared/words/collection.ts';
import { words } from '@shared/words/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import type { Command } from '../command.ts';
import { problemJson } from '../json/problem.ts';
import { ownCollection } from '../own-collection.ts';
import { onOneLine } from '../text/on-one-line.ts';
import { table } from '../text/table.ts';
import { collectionFolder, value } from '../values.ts';

export const collectionCommand: Command = {
  name: 'collection',
  argument: null,
  options: ['find', 'collection'],
  required: [],
  async run(args) {
    const { where, entries } = await ownCollection(value(args, 'collection', collectionFolder));
    const fits = finder(args.values.get('find') ?? '', collectionWords.search);
    const motifs = entries.filter((entry) => entry.kind === 'motif').filter(fits);
    const unusable = entries.filter((entry) => entry.kind === 'unusable');
    const text = terminalWords.cli.collection;
    const size = ({ width, height }: CellSize): string => text.size(width, height);
    return {
      json: {
        folder: where.folder,
        motifs: motifs.map(({ file, name, width, height, repeat, yarns }) => ({
          name,
          width,
          height,
          repeat,
          yarns,
          file: join(where.folder, file),
        })),
        unusable: unusable.map(({ file, problem }) => ({ file: join(where.folder, file), ...problemJson(problem) })),
      },
      text: () =>
        [
          text.folder(where.folder),
          ...(motifs.length === 0
            ? [text.none]
            : table(motifs, [
                { title: text.columns.name, cell: ({ name }) => onOneLine(name) },
                { title: text.columns.size, cell: size, isNumber: true },
                { title: text.columns.repeat, cell: ({ repeat }) => size(repeat), isNumber: true },
                { title: text.columns.yarns, cell: ({ yarns }) => yarns.map(({ name }) => onOneLine(name)).join(', ') },
                { title: text.columns.file, cell: ({ file }) => onOneLine(file) },
              ])),
          ...unusable.map(({ problem }) => words.problems.sentence(problem)),
        ].join('\n'),
    };
  },
};
