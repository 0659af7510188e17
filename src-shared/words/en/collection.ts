/** The collection: motifs kept beyond one project, found and put in another. */
import type { PutIn, SearchWords } from '../../collection/index.ts';
import { numbers as n } from './numbers.ts';

const search: SearchWords = {
  repeat: ['repeat', 'repeats', 'rep'],
  stitches: ['stitches', 'stitch', 'sts', 'st', 'columns'],
  rows: ['rows', 'row'],
};

export const collection = {
  title: 'Collection',
  find: 'Find',
  findHint: 'A name, a yarn, a size such as 24 × 20, or repeat 12.',
  search,
  choose: 'Motif of the collection',

  /** How many there are, and how many fit what is typed. */
  count: (fitting: number, all: number, isAsked: boolean): string =>
    isAsked ? `${fitting} of ${n.count(all, 'motif')}` : n.count(all, 'motif'),
  looking: (looked: number, all: number): string => `Looking through the folder: ${looked} of ${n.count(all, 'file')}`,
  left: (left: number): string =>
    `${n.count(left, 'file')} more in the folder ${left === 1 ? 'is' : 'are'} not listed.`,
  empty: 'No motif is kept here yet. Keep the one on the bench, and every project can have it.',
  nothingFits: 'No motif fits that.',

  size: (width: number, height: number): string => n.size(width, height),
  repeat: (width: number, height: number): string => `repeat ${width} × ${height}`,
  yarns: (names: readonly string[]): string => n.list(names),

  putIn: 'Put in the project',
  stamp: 'Stamp it',
  keep: (name: string): string => `Keep “${name}”`,

  /** What became of a motif that was kept. */
  kept: {
    new: (name: string, file: string): string => `“${name}” is kept as ${file}.`,
    replaced: (name: string, file: string): string => `“${name}” is kept in place of what was in ${file}.`,
    same: (name: string, file: string): string => `“${name}” is kept already, in ${file}.`,
  },

  /** A motif of that name is kept already. */
  namesake: {
    title: (name: string): string => `“${name}” is kept already`,
    text: (count: number): string =>
      `${count === 1 ? 'A motif' : n.count(count, 'motif')} of that name ${count === 1 ? 'is' : 'are'} in the collection and will stay unless you replace ${count === 1 ? 'it' : 'one'}.`,
    what: (width: number, height: number, file: string): string => `${n.size(width, height)}, ${file}`,
    replace: 'Replace',
    replaceOne: (file: string): string => `Replace ${file}`,
    keepBoth: 'Keep both',
  },

  /** What came of putting one in. */
  added: ({ name, added, exchanged }: Pick<PutIn, 'name' | 'added' | 'exchanged'>): string =>
    [
      `${name} is in the project.`,
      exchanged && `${exchanged.figure} is the ground here, so its figure has ${exchanged.ground} instead.`,
      added.length > 0 && `New ${added.length === 1 ? 'yarn' : 'yarns'}: ${n.list(added)}.`,
    ]
      .filter((part) => part)
      .join(' '),
  gone: (file: string): string => `${file} is not in the folder any more.`,

  folder: 'Folder',
  folderText: 'One small project file for each motif: copy them as you like.',
  otherFolder: 'Choose another…',
  ownFolder: 'Back to the program’s own',

  unusable: (count: number): string => `${n.count(count, 'file')} that cannot be used`,
};
