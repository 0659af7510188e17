/** `read A B`: a chart over two photos, joined by what both show. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import { crop, type Grid } from '@shared/grid/index.ts';
import type { ReadJson } from '../../../src-main/cli/json/read.ts';
import { photograph } from '../reading/chart-photo.ts';
import { blobs } from '../reading/motifs.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());
const motif = join(folder.path, 'motif.png');

/** A photo of a chart in ink, as a file, and its corners as they are typed. */
function photoOf(
  name: string,
  grid: Grid,
  roll: number,
  side = 300,
): { readonly file: string; readonly corners: string } {
  const { picture, corners } = photograph(
    grid,
    {
      colours: [
        [235, 230, 220],
        [50, 50, 60],
      ],
      line: 0.08,
      lineColour: [140, 140, 150],
    },
    { width: side, height: side, roll, tilt: 8, pan: -6 },
    { blur: 0.7, noise: 3 },
  );
  const file = new PNG({ width: picture.width, height: picture.height });
  file.data = Buffer.from(picture.rgba);
  const typed = corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(',');
  return { file: folder.file(name, PNG.sync.write(file)), corners: typed };
}

/** The cells that were written, the bottom row first: 1 for black. */
function written(): { width: number; height: number; cells: number[] } {
  const { width, height, data } = PNG.sync.read(readFileSync(motif));
  const rows = Array.from({ length: height }, (_, y) =>
    Array.from({ length: width }, (_unused, x) => ((data[(y * width + x) * 4] as number) < 128 ? 1 : 0)),
  );
  return { width, height, cells: rows.reverse().flat() };
}

const whole = blobs(18, 30, 2, 14);
const lower = photoOf('lower.png', crop(whole, 0, 0, 18, 18), 4);
const upper = photoOf('upper.png', crop(whole, 0, 13, 18, 17), -5);

describe('read with two photos', () => {
  it('joins them by the rows that both show', async () => {
    const typed = [lower.file, upper.file, '--corners', `${lower.corners},${upper.corners}`, '--ink', '--to', motif];
    const json = await callJson<ReadJson>('read', ...typed);
    expect(json).toMatchObject({
      columns: 18,
      rows: 30,
      joined: { side: 'above', shared: 5, differing: 0, second: { columns: 18, rows: 17 } },
      replaced: false,
    });
    expect(written()).toEqual({ width: 18, height: 30, cells: [...whole.cells] });
    const { out } = await call('read', ...typed, '--columns', '18', '--rows', '18,17');
    expect(out).toContain('The second photo goes on above, with 5 rows on both, all alike.');
    expect(out).toContain('18 stitches × 30 rows');
    expect(out).toContain('in place of what was read before');
  });

  it('joins them the other way round as well, and as it is told to', async () => {
    const typed = [upper.file, lower.file, '--corners', `${upper.corners},${lower.corners}`, '--ink', '--to', motif];
    expect(await callJson('read', ...typed, '--replace')).toMatchObject({ joined: { side: 'below', shared: 5 } });
    expect(written().cells).toEqual([...whole.cells]);
    expect(await callJson('read', ...typed, '--replace', '--overlap', 'below:4')).toMatchObject({
      rows: 31,
      joined: { side: 'below', shared: 4 },
    });
  });

  it('finds the chart in either photo where no corners are given', async () => {
    const json = await callJson<ReadJson>('read', lower.file, upper.file, '--ink', '--to', motif, '--replace');
    expect(json).toMatchObject({
      rows: 30,
      found: { rows: 18 },
      joined: { side: 'above', shared: 5, second: { rows: 17, found: { rows: 17 } } },
    });
    expect(written().cells).toEqual([...whole.cells]);
  });

  describe('of a repeat drawn many times over', () => {
    const tile = blobs(12, 4, 2, 3);
    const cells = Uint8Array.from({ length: 12 * 16 }, (_, at) => tile.cells[at % 48] as number);
    const one = photoOf('one.png', { width: 12, height: 16, cells }, 3, 200);
    const two = photoOf('two.png', { width: 12, height: 16, cells }, -3, 200);
    const counts = ['--columns', '12', '--rows', '16', '--ink', '--to', join(folder.path, 'repeat.png')];
    const typed = [one.file, two.file, '--corners', `${one.corners},${two.corners}`, ...counts];

    it('asks in which of several ways they meet', async () => {
      const { error } = await callJson<{ error: { code: string; where: string; message: string } }>('read', ...typed);
      expect(error).toMatchObject({ code: 'charts-meet-openly', where: '--overlap' });
      expect(error.message).toContain('above with 8 rows on both');
    });

    it('joins them in the way that is told', async () => {
      expect(await callJson('read', ...typed, '--overlap', 'above:8')).toMatchObject({ columns: 12, rows: 24 });
    });
  });

  it.each([
    { what: 'corners of one alone', typed: [lower.file, upper.file, '--corners', lower.corners], code: 'option-value' },
    {
      what: 'a third photo',
      typed: [lower.file, upper.file, lower.file, '--corners', lower.corners],
      code: 'argument-unexpected',
    },
    {
      what: 'an overlap of one photo',
      typed: [lower.file, '--corners', lower.corners, '--overlap', 'above:3'],
      code: 'option-unknown',
    },
    {
      what: 'an overlap at no side',
      typed: [lower.file, upper.file, '--corners', `${lower.corners},${upper.corners}`, '--overlap', 'behind:3'],
      code: 'option-value',
    },
    {
      what: 'an overlap of all that a photo shows',
      typed: [lower.file, upper.file, '--corners', `${lower.corners},${upper.corners}`, '--overlap', 'above:17'],
      code: 'not-a-whole-number',
    },
    {
      what: 'photos that share nothing',
      typed: [
        lower.file,
        photoOf('else.png', blobs(18, 17, 2, 99), 2).file,
        '--corners',
        `${lower.corners},${upper.corners}`,
        '--columns',
        '18',
        '--rows',
        '18,17',
      ],
      code: 'charts-meet-nowhere',
    },
  ])('refuses $what', async ({ typed, code }) => {
    const { error } = await callJson<{ error: { code: string } }>('read', ...typed, '--ink', '--to', motif);
    expect(error.code).toBe(code);
  });
});
