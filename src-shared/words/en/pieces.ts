/** The pieces of a project: their strip, and how they are called elsewhere. */
import { numbers as n } from './numbers.ts';

export const pieces = {
  /** The row of pieces, to assistive technology, and what can be done with the one looked at. */
  title: 'Pieces',
  deeds: (name: string): string => `What to do with ${name}`,
  /** On the button, beside the list. */
  addShort: 'Add',
  /** Beside the field, and its name. */
  knitShort: 'Knit',
  knitHowMany: 'Knit how many',
  /** Behind the name of a piece of which several are knitted. */
  times: (knit: number): string => `× ${knit}`,
  newName: (number: number): string => `piece ${number}`,
  copyName: (name: string, number: number): string => `${name} copy${number === 1 ? '' : ` ${number}`}`,
  lookedAt: (name: string): string => `Looking at ${name}.`,
  moved: (name: string, place: number, count: number): string => `${name} is piece ${place} of ${count}.`,
  removed: (name: string, next: string): string => `${name} is removed; undo brings it back. ${pieces.lookedAt(next)}`,
  knit: (name: string, knit: number): string => `Knit ${knit} of ${name}.`,
  /** On sheets and in texts, of a piece that is knitted more than once. */
  knitOfThis: (knit: number): string => `Knit ${knit} of this piece. All figures are for one.`,
  /** Below a table of yarn; `amounts`: each yarn with its length. */
  yarnOfAll: (knit: number, share: number, amounts: readonly { readonly yarn: string; readonly length: string }[]) =>
    `For one piece. All ${knit} together take ${n.list(amounts.map(({ yarn, length }) => `${length} of ${yarn}`))}, ${n.percent(share)} more included.`,
  /** One of several of a name, by their order from 1: `front (2)`. */
  numbered: (name: string, number: number): string => `${name} (${number})`,
  /** `Skerry, sleeve`. */
  named: (parts: readonly string[]): string => parts.join(', '),
};
