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
      step: null,
      slips: [],
    });
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
        'It is drawn 2 × 1 times, and 2 columns of one more at the right: the last copy is cut.',
        'The first column is blank all the way up.',
        'The ground is #ffffff.',
      ].join('\n'),
    );
  });
});
