/** The motifs of a project: their list, and what can be done with it. */
import { numbers as n } from './numbers.ts';

export const motifs = {
  title: 'Motifs',
  choose: 'Motif on the bench',
  /** On buttons, beside the list. */
  short: { add: 'Add', duplicate: 'Duplicate', remove: 'Delete', collection: 'Collection…' },
  size: (width: number, height: number): string => n.size(width, height),
  newName: (number: number): string => `motif ${number}`,
  copyName: (name: string): string => `${name} copy`,
  onBench: (name: string, width: number, height: number): string => `${name}, ${n.size(width, height)}`,
  /** Yarns of a motif, two and two. */
  pairs: {
    title: 'Contrast between its yarns',
    pair: (one: string, other: string): string => `${one} and ${other}`,
    faint: (one: string, other: string): string => `${one} and ${other} are hard to tell apart.`,
    tooMany: (yarns: number, most: number): string =>
      `The motif is drawn in ${yarns} yarns. No more than ${most} are kept apart in one motif.`,
  },
  stamp: {
    which: 'It stamps',
    figureOnly: 'Figure alone',
    allCells: 'Stamp all cells',
    taken: (name: string): string => `The stamp places ${name}.`,
    held: 'Arrow keys move it, Space places it, Escape cancels.',
    laid: 'Stamped.',
    noOther: 'There is no other motif to stamp. Add one first.',
  },
  added: (name: string): string => `${name} is on the bench.`,
  removed: (name: string, next: string): string => `${name} is deleted; ${next} is on the bench.`,
};
