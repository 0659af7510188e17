/** Finding a motif by what is typed. */
import { describe, expect, it } from 'vitest';
import { factsOf, finder, type MotifFacts } from '@shared/collection/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import { projectAround, START_YARNS } from '@shared/project/index.ts';
import { collectionWords } from '@shared/words/collection.ts';

const motif = (
  name: string,
  [width, height]: [number, number],
  repeat: [number, number],
  yarns: string[],
): MotifFacts => ({
  name,
  width,
  height,
  repeat: { width: repeat[0], height: repeat[1] },
  yarns: yarns.map((yarn) => ({ name: yarn, colour: '#000000' })),
});
const kept = [
  motif('Lighthouse', [24, 20], [24, 20], ['slate', 'chalk']),
  motif('Étoile', [24, 30], [12, 10], ['slate', 'navy blue']),
  motif('border 12', [48, 6], [6, 6], ['Rust', 'chalk']),
  motif('small border', [6, 124], [6, 2], ['slate', 'moss']),
];
const found = (typed: string): string[] => kept.filter(finder(typed, collectionWords.search)).map(({ name }) => name);

describe('what is typed finds', () => {
  it.each([
    ['', ['Lighthouse', 'Étoile', 'border 12', 'small border']],
    ['   ', ['Lighthouse', 'Étoile', 'border 12', 'small border']],
    // A name, capitals and accents aside.
    ['light', ['Lighthouse']],
    ['BORDER', ['border 12', 'small border']],
    ['etoile', ['Étoile']],
    ['étoile', ['Étoile']],
    // A yarn.
    ['chalk', ['Lighthouse', 'border 12']],
    ['navy', ['Étoile']],
    ['rust', ['border 12']],
    // A size, of the drawing or of its repeat.
    ['24 × 20', ['Lighthouse']],
    ['24x20', ['Lighthouse']],
    ['24 X 20', ['Lighthouse']],
    ['24*20', ['Lighthouse']],
    ['24 stitches × 20 rows', ['Lighthouse']],
    ['12 x 10', ['Étoile']],
    ['20 × 24', []],
    // Not within a longer number.
    ['4 x 20', []],
    ['6 x 12', []],
    // A repeat.
    ['repeat 12', ['Étoile']],
    ['repeat 6', ['border 12', 'small border']],
    ['repeat 6 x 2', ['small border']],
    ['repeat 24 × 20', ['Lighthouse']],
    ['rep 10', ['Étoile']],
    // Before it is said which, nothing is left out.
    ['repeat', ['Lighthouse', 'Étoile', 'border 12', 'small border']],
    ['chalk repeat', ['Lighthouse', 'border 12']],
    // One side.
    ['24 stitches', ['Lighthouse', 'Étoile']],
    ['24 sts', ['Lighthouse', 'Étoile']],
    ['6 st', ['small border']],
    ['6 rows', ['border 12']],
    // A number is any count, or part of a name.
    ['12', ['Étoile', 'border 12']],
    ['24', ['Lighthouse', 'Étoile']],
    // All parts must fit, in whatever order.
    ['border chalk', ['border 12']],
    ['chalk, border', ['border 12']],
    ['24 slate', ['Lighthouse', 'Étoile']],
    ['slate 24 x 30', ['Étoile']],
    ['navy repeat 12', ['Étoile']],
    ['navy chalk', []],
    // What is of no use to a pattern is text.
    ['(', []],
    ['.*', []],
  ])('%j: %j', (typed, names) => expect(found(typed)).toEqual(names));
});

it('a motif is found by its true repeat and by the yarns that it is drawn in, the ground first', () => {
  const yarns = [...START_YARNS, { name: 'unused', colour: '#123456', count: null, onHand: null }];
  const grid = gridFromText(['X.X.', '....'], 'X.');
  expect(factsOf(projectAround('p', 'dots', grid, 1, 'worn', yarns))).toEqual({
    name: 'dots',
    width: 4,
    height: 2,
    repeat: { width: 2, height: 2 },
    yarns: [
      { name: 'chalk', colour: '#fbf7ea' },
      { name: 'slate', colour: '#5d7591' },
    ],
  });
});
