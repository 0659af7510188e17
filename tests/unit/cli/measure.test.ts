import { afterAll, describe, expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { pngOf } from '../picture/pictures.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const stripes = folder.motif('stripes.pbm', ['.XX..XX..X', '..X...X...']);
const [slate, chalk] = ['#5d7591', '#fbf7ea'];
const gull = folder.file(
  'gull.png',
  pngOf([
    [slate, chalk, slate],
    [slate, slate, chalk],
  ]),
);
const sample = folder.file('sample.walewright', projectToText(sampleProject()));

describe('measure', () => {
  it('gives size, blank edges and true repeat of a PBM', async () => {
    expect(await callJson('measure', stripes)).toEqual({
      width: 10,
      height: 2,
      ground: '#ffffff',
      blank: { left: 1, right: 0, top: 0, bottom: 0 },
      repeat: { width: 4, height: 2, dividesAcross: false, dividesUp: true },
      cut: { stitches: 2, rows: 0 },
      step: null,
      blocks: [
        {
          laid: 'straight',
          width: 4,
          height: 2,
          step: 0,
          firstStitch: 1,
          firstRow: 1,
          cuts: { sides: 1, corners: 1 },
        },
      ],
      near: null,
      slips: [],
      differences: [],
      rowsOfManyYarns: [],
      trims: {
        repeat: {
          width: 4,
          height: 2,
          blankColumns: 2,
          firstStitchForBlankFirst: 4,
          firstStitchForBlankLast: 2,
        },
        withoutBlank: { width: 9, height: 2, firstStitch: 2, firstRow: 1 },
      },
    });
  });

  it('lists slips by row and stitch as charts are read, with the colour drawn and the one expected', async () => {
    const rows = Array.from({ length: 12 }, (_, row) => (row === 5 ? 'X..XX.X..X..' : 'X..X..X..X..'));
    expect(await callJson('measure', folder.motif('slip.pbm', rows), '--ground', '#ffffff')).toMatchObject({
      near: { width: 3, height: 1 },
      slips: [{ row: 7, stitch: 5, drawn: '#000000', expected: '#ffffff' }],
    });
  });

  it('gives both of two copies that differ in a cell, and expects neither', async () => {
    const bird = ['........', '..XX....', '.XXXX...', '...XXX..', '..XXXXX.', '...XXXX.', '....X...', '...XX...'];
    const rows = [...bird, ...bird].map((line, fromTop) => (fromTop === 2 ? '.XXXX..X' : line));
    const two = folder.motif('two.pbm', rows);
    const [white, black] = ['#ffffff', '#000000'];
    expect(await callJson('measure', two, '--ground', white)).toMatchObject({
      near: { width: 8, height: 8 },
      slips: [
        { row: 6, stitch: 8, drawn: white, expected: null },
        { row: 14, stitch: 8, drawn: black, expected: null },
      ],
      differences: [
        {
          versions: [
            { colour: white, copies: 1, row: 6, stitch: 8 },
            { colour: black, copies: 1, row: 14, stitch: 8 },
          ],
          proposed: null,
        },
      ],
    });
    const { out } = await call('measure', two, '--ground', white);
    expect(out).toContain(
      'It nearly repeats every 8 rows: copies differ in one cell, at row 6, stitch 8, and as many have one yarn there as another.',
    );
    expect(out).toContain(
      'Row 6, stitch 8 is #ffffff in 1 copy; row 14, stitch 8 is #000000 in 1 copy. Which is right?',
    );
  });

  it('proposes what most of three copies have', async () => {
    const bird = ['........', '..XX....', '.XXXX...', '...XXX..', '..XXXXX.', '...XXXX.', '....X...', '...XX...'];
    const rows = [...bird, ...bird, ...bird].map((line, fromTop) => (fromTop === 2 ? '.XXXX..X' : line));
    const three = folder.motif('three-birds.pbm', rows);
    expect(await callJson('measure', three, '--ground', '#ffffff')).toMatchObject({
      slips: [{ row: 22, stitch: 8, drawn: '#000000', expected: '#ffffff' }],
      differences: [{ proposed: '#ffffff' }],
    });
    const { out } = await call('measure', three, '--ground', '#ffffff');
    expect(out).toContain(
      'Row 6, stitch 8 is #ffffff in 2 copies; row 22, stitch 8 is #000000 in 1 copy. Proposed: #ffffff.',
    );
  });

  it('gives the blocks of a step by half, and any other step as it is', async () => {
    const bricks = ['........', 'XXX..XXX', '........', '.XXXXXX.'];
    expect(await callJson('measure', folder.motif('bricks.pbm', bricks))).toMatchObject({
      step: { rows: 2, shift: 4 },
      blocks: [
        { laid: 'brick', width: 8, height: 2, step: 4, firstStitch: 1, firstRow: 1, cuts: { sides: 0, corners: 0 } },
        { laid: 'half-drop', width: 4, height: 4, step: 2, cuts: { sides: 1, corners: 0 } },
      ],
    });
    expect(await callJson('measure', folder.motif('third.pbm', ['..X', '.X.', 'X..']))).toMatchObject({
      step: { rows: 1, shift: 1 },
      blocks: [
        { laid: 'stepped-columns', width: 1, height: 3, step: 1 },
        { laid: 'stepped-courses', width: 3, height: 1, step: 1 },
      ],
    });
  });

  it('names the rows with more than two yarns', async () => {
    const three = folder.file(
      'three.png',
      pngOf([
        [slate, chalk, '#9a3324'],
        [slate, slate, chalk],
      ]),
    );
    expect(await callJson('measure', three)).toMatchObject({ rowsOfManyYarns: [2] });
  });

  it('gives null for the blank edges of a drawing without a figure', async () => {
    expect(await callJson('measure', folder.motif('plain.pbm', ['...', '...']))).toMatchObject({
      blank: null,
      repeat: { width: 1, height: 1 },
    });
  });

  it('finds the ground of a PNG, or takes the one given', async () => {
    expect(await callJson('measure', gull)).toMatchObject({ ground: slate, blank: { left: 1, right: 0 } });
    expect(await callJson('measure', gull, '--ground', chalk)).toMatchObject({
      ground: chalk,
      blank: { left: 0, right: 0 },
    });
  });

  it('takes the first motif of a project, and its ground by colour or yarn', async () => {
    expect(await callJson('measure', sample)).toMatchObject({
      width: 14,
      height: 18,
      ground: slate,
      blank: { right: 1 },
    });
    expect(await callJson('measure', sample, '--ground', 'chalk')).toMatchObject({ ground: chalk });
    expect(await callJson('measure', sample, '--ground', '#5D7591')).toMatchObject({ ground: slate });
  });

  it('says it in sentences to people', async () => {
    const { status, out, warned } = await call('measure', stripes);
    expect([status, warned]).toEqual([0, '']);
    expect(out).toBe(
      [
        'The chart is 10 stitches × 2 rows.',
        'The repeat is 4 stitches × 2 rows.',
        'It is drawn 2 × 1 times, and the last copy is cut at the right after 2 of its 4 stitches.',
        'The first column is blank all the way up.',
        'The ground is #ffffff.',
      ].join('\n'),
    );
  });
});
