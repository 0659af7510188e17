import { describe, expect, it } from 'vitest';
import { parseColour, projectFromPicture, readMotifPicture } from '@shared/picture/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { projectFromText, projectToText } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { bytesOf, pngOf } from './pictures.ts';

const [white, black, red, green, blue] = ['#ffffff', '#000000', '#c00000', '#00c000', '#0000c0'] as const;
const groundOf = (rows: string[][]): string | undefined => readMotifPicture(pngOf(rows)).colours[0];

describe('the ground of a picture', () => {
  it.each([
    ['white in black and white, however much is black', [[black, black, white]], white],
    ['white in all black', [[black]], white],
    [
      'the one colour that fills the left edge',
      [
        [red, blue, blue],
        [red, blue, green],
      ],
      red,
    ],
    [
      'the one colour that fills the right edge',
      [
        [blue, blue, red],
        [green, blue, red],
      ],
      red,
    ],
    [
      'the one colour that fills both edges',
      [
        [red, blue, red],
        [red, blue, red],
      ],
      red,
    ],
    [
      'the commonest where two colours fill an edge each',
      [
        [red, blue, green],
        [red, blue, green],
        [red, green, green],
      ],
      green,
    ],
    [
      'the commonest where none fills an edge',
      [
        [red, blue, blue, blue],
        [blue, red, red, red],
        [blue, blue, blue, red],
      ],
      blue,
    ],
    [
      'the lightest of equally common ones',
      [
        [red, green],
        [green, red],
      ],
      green,
    ],
    [
      'the lightest, in whichever order they come',
      [
        [green, red],
        [red, green],
      ],
      green,
    ],
    [
      'black where black is common and white is not alone with it',
      [
        [black, black, red],
        [red, black, white],
      ],
      black,
    ],
  ])('is %s', (_, rows, ground) => {
    expect(groundOf(rows)).toBe(ground);
  });

  it.each([
    ['#C00000', red],
    ['c00000', red],
    [' #c00000 ', red],
  ])('is what is asked for, written %s', (groundColour, ground) => {
    const picture = readMotifPicture(pngOf([[green, red, green]]), { groundColour });
    expect(picture.colours).toEqual([ground, green]);
    expect([...picture.grid.cells]).toEqual([1, 0, 1]);
  });

  it('may be black in a PBM', () => {
    const picture = readMotifPicture(bytesOf('P1 2 1 1 0'), { groundColour: 'black' });
    expect(picture.colours).toEqual([black, white]);
    expect([...picture.grid.cells]).toEqual([0, 1]);
  });

  it.each(['#123456', 'mauve', ''])(
    '"%s" that the picture does not hold is refused with those it does',
    (groundColour) => {
      const read = outcome(() => readMotifPicture(pngOf([[red, green]]), { groundColour }));
      expect(read).toMatchObject({ problem: { code: 'colour-unknown', facts: { known: `${red}, ${green}` } } });
    },
  );
});

describe('a colour as a person writes it', () => {
  it.each([
    ['#5d7591', '#5d7591'],
    ['#FFF', '#ffffff'],
    ['0af', '#00aaff'],
    ['White', '#ffffff'],
    ['black', '#000000'],
    ['#12345', null],
    ['#12345g', null],
    ['red', null],
    ['', null],
  ])('%s is %s', (text, colour) => {
    expect(parseColour(text)).toBe(colour);
  });
});

describe('a project around a picture', () => {
  it('has a yarn for each colour and stands as a file', () => {
    const picture = readMotifPicture(
      pngOf([
        [red, green, red],
        [red, blue, red],
      ]),
    );
    const project = projectFromPicture(picture, { project: 'gulls', motif: 'gull', yarn: words.pictures.yarn });
    expect(project.yarns.map(({ name, colour }) => [name, colour])).toEqual([
      ['colour 1', red],
      ['colour 2', blue],
      ['colour 3', green],
    ]);
    expect(project.mainYarn).toBe(0);
    expect(project.motifs[0]).toMatchObject({ name: 'gull', shows: 'worn' });
    expect(projectFromText(projectToText(project))).toEqual(project);
  });

  it('from a file with a very long name stands as a file too', () => {
    const name = 'g'.repeat(250);
    const picture = readMotifPicture(bytesOf('P1 1 1 1'));
    const project = projectFromPicture(picture, { project: name, motif: name, yarn: words.pictures.yarn });
    expect(projectFromText(projectToText(project))).toEqual(project);
  });
});
