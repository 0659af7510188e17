/** Colourways, and orders of colours up the rows of a pattern. */
import { numbers as n } from './numbers.ts';

export const colourOrder = {
  about:
    'Rows are counted from the first row of the pattern. The drawing stays as it is, and the main yarn too: for stripes of the ground draw rows all in a contrast.',
  start: 'Change colours up the rows',
  stop: 'Knit as drawn',
  /** `first` and `last` row of the pattern, from 1. */
  stripe: (first: number, last: number): string => (first === last ? `Row ${first}` : `Rows ${first}–${last}`),
  /** What stands on a field: the yarn that is drawn. */
  forYarn: (drawn: string): string => `For ${drawn}`,
  asDrawn: (drawn: string): string => `${drawn}, as drawn`,
  addStripe: 'Add a stripe',
  remove: 'Remove the stripe',
  up: 'Move up',
  down: 'Move down',
  repeats: 'Begin again after the last stripe',
  repeatsHint: 'Otherwise the rows above it are knitted as drawn.',
  /** Rows of all stripes, and of the pattern. */
  tooTall: (stripes: number, rows: number): string =>
    `The stripes have ${n.rows(stripes)}, the pattern ${n.rows(rows)}: those above are not knitted.`,
  oneContrast: 'There is no other contrast yarn: add some on the Motif bench.',
  full: (most: number): string => `An order has at most ${most} stripes.`,
  preview: (rows: number): string =>
    `One copy across and the first ${n.rows(rows)} of the pattern, in the order of colours.`,
  added: (first: number, last: number): string => `${colourOrder.stripe(first, last)} added.`,
  removed: 'Stripe removed.',
};

export const colourways = {
  title: 'Colourways',
  about:
    'The yarns in several versions. The drawing stays; what each yarn is changes. Plan, sheet and exports are of the one that is knitted.',
  name: 'Name',
  knitted: 'Knitted',
  knit: 'Knit this one',
  knitNamed: (name: string): string => `Knit ${name}`,
  sketch: (name: string): string => `The piece in ${name}`,
  colourOf: (yarn: string): string => `Colour of ${yarn}`,
  nameOf: (yarn: string): string => `Name of ${yarn}`,
  main: 'main',
  duplicate: 'Duplicate',
  remove: 'Remove',
  close: 'Close',
  free: (number: number): string => String(number),
  chosen: (name: string): string => `${name} is knitted now.`,
  added: (name: string): string => `Colourway ${name} added.`,
  removed: (name: string): string => `Colourway ${name} removed.`,
  only: 'Duplicate it to try other colours beside these.',
};
