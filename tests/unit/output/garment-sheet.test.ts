/** The sheet of all pieces: each piece as its own sheet has it, behind what they take together. */
import { describe, expect, it } from 'vitest';
import { garmentSheet, placementSheet, plannedPlaces, sheetFacts, type SheetOptions } from '@shared/output/index.ts';
import { ballsOf, garmentNeed } from '@shared/plan/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { placesIn, type ProjectAt } from '@shared/project/index.ts';
import { textOf } from '@shared/words/index.ts';
import { TEST_DAY } from '../../day.ts';
import { garment, garmentAt } from '../../garment.ts';
import { wordsOn } from './items-of.ts';

const OPTIONS: SheetOptions = { paper: 'a4', date: TEST_DAY };
const ALL = { pieces: 'all', sizes: 'all' } as const;

const sheetsOf = (project: ProjectAt) =>
  plannedPlaces(project, ALL).map((places) =>
    garmentSheet(
      places.map(({ place, plan }) => ({ facts: sheetFacts(place), plan })),
      OPTIONS,
    ),
  );

describe('the scope of a sheet', () => {
  const named = (project: ProjectAt) =>
    `${project.piece.name} ${project.sizes.find(({ id }) => id === project.at.size)?.name}`;

  it.each([
    ['this', 'this', [['sleeve M']]],
    ['all', 'this', [['front M', 'sleeve M']]],
    ['this', 'all', [['sleeve S'], ['sleeve M']]],
    [
      'all',
      'all',
      [
        ['front S', 'sleeve S'],
        ['front M', 'sleeve M'],
      ],
    ],
  ] as const)('of pieces “%s” in sizes “%s” is a list for each size', (pieces, sizes, expected) => {
    const places = placesIn(garmentAt('sleeve', 'M'), { pieces, sizes });
    expect(places.map((own) => own.map(named))).toEqual(expected);
  });

  it('that has a piece which cannot be planned says which, in which size', () => {
    const project = garment();
    const pieces = project.pieces.map((piece) =>
      piece.name === 'sleeve'
        ? {
            ...piece,
            perSize: piece.perSize.map((one) => ({
              ...one,
              shape: { kind: 'rectangle', stitches: 3, rows: 40 } as const,
            })),
          }
        : piece,
    );
    const wrong = garmentAt('front', 'S', { ...project, pieces });
    const problemIn = (scope: Parameters<typeof plannedPlaces>[1]) => {
      try {
        plannedPlaces(wrong, scope);
        return null;
      } catch (thrown) {
        return problemOf(thrown);
      }
    };
    expect(problemIn({ pieces: 'this', sizes: 'all' })).toBeNull();
    expect(problemIn({ pieces: 'all', sizes: 'this' })).toMatchObject({
      code: 'groups-wider-than-piece',
      where: 'sleeve, size S',
    });
  });
});

describe('the sheet of all pieces', () => {
  it('has the pages of each piece as its own sheet has them, one piece after the other, in each size', () => {
    const planned = plannedPlaces(garmentAt('front', 'S'), ALL);
    sheetsOf(garmentAt('front', 'S')).forEach(({ pages }, size) => {
      const own = (planned[size] ?? []).flatMap(
        ({ place, plan }) => placementSheet(sheetFacts(place), plan, OPTIONS).pages,
      );
      expect(pages.slice(1).map(({ elements }) => elements)).toEqual(own.map(({ elements }) => elements));
      expect(pages.map(({ title }) => title).slice(0, 2)).toEqual([
        `Page 1 of 1 of all pieces, size ${size === 0 ? 'S' : 'M'}`,
        expect.stringMatching(/^Page 1 of \d+ of front, size [SM]$/),
      ]);
    });
  });

  it('names project, piece and size over every page, however long they are called', () => {
    const long = (letter: string, count: number): string => letter.repeat(count);
    const project = garment(long('W', 120));
    const pieces = project.pieces.map((piece, at) => ({ ...piece, name: `${at}${long('M', 60)}` }));
    const sizes = project.sizes.map((size, at) => ({ ...size, name: `${at}${long('m', 20)}` }));
    for (const { pages } of sheetsOf(garmentAt('front', 'S', { ...project, pieces, sizes }))) {
      for (const { elements } of pages) {
        const [head] = elements;
        const [left] = head?.role === 'decoration' ? head.items : [];
        expect(left?.kind === 'text' ? textOf(left.spans) : '').toMatch(
          /^W{3,}… · (all pieces|[01]M{3,}…), size [01]m+…? · Placement sheet$/,
        );
      }
    }
  });

  it('has no first page of its own where there is one piece', () => {
    const [only] = garment().pieces;
    const project = garmentAt('front', 'S', { ...garment(), pieces: only ? [only] : [] });
    for (const { pages } of sheetsOf(project)) {
      expect(wordsOn(pages[0] as (typeof pages)[number])).not.toContain('Yarn for all pieces');
    }
  });
});

describe('the yarn of a garment', () => {
  it('has each yarn that a piece takes, main first, and no weight where nobody knows it', () => {
    const [places = []] = plannedPlaces(garmentAt('front', 'S'), { pieces: 'all', sizes: 'this' });
    const pieces = places.map(({ place, plan }) => ({ name: place.piece.name, knit: place.knit, plan }));
    const { yarns } = garmentNeed(pieces, garment());
    expect(yarns.map(({ yarn, pieces: own, total }) => [yarn, own.map(({ name }) => name), total.grams])).toEqual([
      [0, ['front', 'sleeve'], expect.any(Number)],
      [1, ['sleeve'], null],
    ]);
    for (const { pieces: own, strands, total } of yarns) {
      expect(total.mm).toBeCloseTo(
        own.reduce((sum, { all }) => sum + all.mm, strands?.mm ?? 0),
        6,
      );
    }
  });

  it.each([
    [0.1, 1],
    [50, 1],
    [50.1, 2],
    [141, 3],
  ])('of %d g is %i balls of 50 g, a ball that is begun being one', (grams, balls) => {
    expect(ballsOf(grams, 50)).toBe(balls);
  });
});
