import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { encode } from 'jpeg-js';
import { PNG } from 'pngjs';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import type { Picture } from '@shared/reading/index.ts';
import { doubtfulCells, type ReadJson } from '../../../src-main/cli/json/read.ts';
import { grain } from '../../generate/charts/random.ts';
import { photograph } from '../reading/chart-photo.ts';
import { blobs } from '../reading/motifs.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const grid = blobs(20, 24, 2, 5);
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
  { width: 480, height: 480, roll: 7, tilt: 12, pan: -9 },
  { blur: 0.7, noise: 3 },
);
const written = (points: typeof corners): string =>
  points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(',');
const at = written(corners);
const blank = folder.file('blank.png', pngOf({ width: 300, height: 200, rgba: new Uint8Array(240_000).fill(220) }));
const jpeg = folder.file('chart.jpg', jpegOf(picture));
const png = folder.file('chart.png', pngOf(picture));
const motif = join(folder.path, 'motif.png');
beforeEach(() => rmSync(motif, { force: true }));

function jpegOf({ width, height, rgba }: Picture): Uint8Array {
  return encode({ width, height, data: rgba }, 80).data;
}

function pngOf({ width, height, rgba }: Picture): Uint8Array {
  const file = new PNG({ width, height });
  file.data = Buffer.from(rgba);
  return PNG.sync.write(file);
}

/** The motif that was written, as a chart is read: # for black, the topmost row first. */
function motifRows(): string[] {
  const { width, height, data } = PNG.sync.read(readFileSync(motif));
  return Array.from({ length: height }, (_, y) =>
    Array.from({ length: width }, (_, x) => ((data[(y * width + x) * 4] as number) < 128 ? '#' : '.')).join(''),
  );
}

const painted = Array.from({ length: 24 }, (_, fromTop) =>
  Array.from({ length: 20 }, (_, column) => (grid.cells[(23 - fromTop) * 20 + column] === 1 ? '#' : '.')).join(''),
);

describe('read', () => {
  it.each([
    ['JPEG', jpeg],
    ['PNG', png],
  ])('writes the chart of a %s as a motif', async (_, photo) => {
    const json = await callJson<ReadJson>('read', photo, '--corners', at, '--ink', '--to', motif);
    expect(json).toMatchObject({ columns: 20, rows: 24, colours: ['#ffffff', '#000000'], file: motif });
    expect(json.counted?.columns?.count).toBe(20);
    expect(json.doubtful).toEqual([]);
    expect(motifRows()).toEqual(painted);
    // What is written is a MOTIF for the other commands.
    expect(await callJson('measure', motif)).toMatchObject({ width: 20, height: 24, ground: '#ffffff' });
  });

  it('reads a photo that a camera held sideways, in the corners of the upright picture', async () => {
    const sideways = folder.file('sideways.jpg', withOrientation(jpegOf(turnedLeft(picture)), 6));
    await callJson('read', sideways, '--corners', at, '--ink', '--to', motif);
    expect(motifRows()).toEqual(painted);
  });

  it('finds corners and counts that are not given, and says what it took', async () => {
    const json = await callJson<ReadJson>('read', jpeg, '--ink', '--to', motif);
    expect(json).toMatchObject({ columns: 20, rows: 24, counted: null, found: { columns: 20, rows: 24, sure: true } });
    json.found?.corners.forEach(({ x, y }, i) => {
      const { x: drawnX, y: drawnY } = corners[i] as { x: number; y: number };
      // A cell is about 15 pixels wide.
      expect(Math.hypot(x - drawnX, y - drawnY)).toBeLessThan(5);
    });
    expect(motifRows()).toEqual(painted);
    rmSync(motif);
    const { out } = await call('read', jpeg, '--ink', '--to', motif);
    expect(out).toContain('A chart of 20 columns and 24 rows was found.');
    // What it says can be given.
    const said = /--corners ([\d.,]+)/.exec(out)?.[1] as string;
    rmSync(motif);
    expect(await callJson('read', jpeg, '--corners', said, '--ink', '--to', motif)).toMatchObject({ found: null });
    expect(motifRows()).toEqual(painted);
  });

  it('says of a chart without lines no more than that no cell between its corners is doubtful', async () => {
    const look = {
      colours: [
        [200, 190, 170],
        [40, 50, 100],
      ] as const,
      line: 0,
    };
    const held = { width: 480, height: 420, roll: 5, tilt: 10, pan: -8, fill: 0.84 };
    const seen = photograph(blobs(16, 14, 2, 5), look, held, { blur: 0.6, noise: 3 });
    const bare = folder.file('bare.png', pngOf(seen.picture));
    const { out } = await call('read', bare, '--colours', '2', '--to', motif);
    expect(out).toMatch(/A chart of perhaps .* It has no lines/);
    expect(out).toContain('No cell between these corners is doubtful.');
    expect(out).not.toContain('No cell is doubtful.');
  });

  it('says why it finds no chart where there is none', async () => {
    expect(await callJson('read', blank, '--to', motif)).toMatchObject({
      error: { code: 'chart-not-found', where: blank },
    });
  });

  it.each([100, 200])(
    'says of page %i of writing that it shows no chart, though its lines come back',
    async (number) => {
      const page = folder.file(`page${number}.png`, pngOf(pageOfWriting(number)));
      expect(await callJson('read', page, '--to', motif)).toMatchObject({
        error: { code: 'chart-not-found', where: page },
      });
    },
  );

  it('takes counts and yarns that are given, and says to people what it read', async () => {
    const { status, out } = await call(
      ...['read', png, '--corners', at, '--columns', '20', '--rows', '24', '--colours', '2', '--to', motif],
    );
    expect(status).toBe(0);
    expect(out).toContain('20 stitches × 24 rows');
    expect(out).toContain('No cell is doubtful.');
    expect(out).toContain(`Written to ${motif}.`);
  });

  it('sorts by the symbols in the cells when told to, into as many as there are', async () => {
    const drawing = blobs(14, 12, 2, 3);
    const look = {
      colours: [
        [240, 238, 230],
        [40, 40, 44],
      ] as const,
      line: 0.07,
      mark: 'cross' as const,
    };
    const seen = photograph(drawing, look, { width: 420, height: 380, roll: 3, tilt: 5, pan: -4 }, { blur: 0.6 });
    const photo = folder.file('symbols.png', pngOf(seen.picture));
    const given = ['--corners', written(seen.corners), '--columns', '14', '--rows', '12', '--to', motif];
    expect(await callJson('read', photo, '--symbols', ...given)).toMatchObject({ colours: ['#ffffff', '#1d1d1f'] });
    expect(motifRows().map((row) => [...row].filter((cell) => cell === '#').length)).toEqual(
      Array.from(
        { length: 12 },
        (_, fromTop) =>
          [...drawing.cells.subarray((11 - fromTop) * 14, (12 - fromTop) * 14)].filter((cell) => cell === 1).length,
      ),
    );
    expect(await callJson('read', photo, '--symbols', '--ink', ...given)).toMatchObject({
      error: { code: 'option-unknown' },
    });
  });

  it('replaces what it read out of the same photo, and another file only when told to', async () => {
    const typed = ['--corners', at, '--ink', '--to', motif];
    expect(await callJson('read', png, ...typed)).toMatchObject({ replaced: false });
    expect(await callJson('read', png, ...typed, '--figure', 'light')).toMatchObject({ replaced: true });
    expect(await callJson('read', jpeg, ...typed)).toMatchObject({ error: { code: 'files-not-from-here' } });
    writeFileSync(motif, 'mine');
    expect(await callJson('read', png, ...typed)).toMatchObject({ error: { code: 'files-not-from-here' } });
    // Told to as well, a file of another kind stays.
    expect(await callJson('read', png, ...typed, '--replace')).toMatchObject({ error: { code: 'file-of-other-kind' } });
    expect(readFileSync(motif, 'utf8')).toBe('mine');
    writeFileSync(motif, readFileSync(png));
    expect(await callJson('read', png, ...typed)).toMatchObject({ error: { code: 'files-not-from-here' } });
    expect(await callJson('read', png, ...typed, '--replace')).toMatchObject({ replaced: true });
  });

  it('takes what is light for the figure if asked', async () => {
    await callJson('read', png, '--corners', at, '--ink', '--figure', 'light', '--to', motif);
    expect(motifRows()).toEqual(painted.map((row) => [...row].map((cell) => (cell === '#' ? '.' : '#')).join('')));
  });

  const crossed = written([corners[0], corners[2], corners[1], corners[3]]);
  const mirrored = written([corners[1], corners[0], corners[3], corners[2]]);
  it.each([
    { what: 'corners crossed', typed: [png, '--corners', crossed], code: 'corners-unusable', where: '--corners' },
    {
      what: 'corners the wrong way round',
      typed: [png, '--corners', mirrored],
      code: 'corners-unusable',
      where: '--corners',
    },
    {
      what: 'corners in a line',
      typed: [png, '--corners', '10,10,200,10,400,10,10,300'],
      code: 'corners-unusable',
      where: '--corners',
    },
    {
      what: 'a corner outside',
      typed: [png, '--corners', '10,10,900,10,400,400,10,300'],
      code: 'corner-outside-picture',
      where: '--corners',
    },
    { what: 'seven numbers', typed: [png, '--corners', '1,2,3,4,5,6,7'], code: 'option-value', where: '--corners' },
    {
      what: 'one yarn',
      typed: [png, '--corners', at, '--colours', '1'],
      code: 'not-a-whole-number',
      where: '--colours',
    },
    {
      what: 'seventeen yarns',
      typed: [png, '--corners', at, '--colours', '17'],
      code: 'not-a-whole-number',
      where: '--colours',
    },
    {
      what: 'more columns than pixels show',
      typed: [png, '--corners', at, '--columns', '400', '--rows', '24'],
      code: 'cells-too-fine',
      where: png,
    },
  ])('refuses $what', async ({ typed, code, where }) => {
    const { error } = await callJson<{ error: { code: string; where: string } }>('read', ...typed, '--to', motif);
    expect(error).toMatchObject({ code, where });
  });

  it('names the folder that is not there, not a file that nobody asked for', async () => {
    const to = join(folder.path, 'nowhere', 'motif.png');
    const answer = await callJson('read', png, '--corners', at, '--ink', '--to', to);
    expect(answer).toMatchObject({ error: { code: 'file-missing', where: join(folder.path, 'nowhere') } });
  });

  it('refuses to write anything but a PNG', async () => {
    const { error } = await callJson<{ error: { code: string } }>('read', png, '--corners', at, '--to', 'motif.jpg');
    expect(error.code).toBe('option-value');
  });

  it.each([
    { what: 'a photo with no grid', photo: () => blank, code: 'grid-not-found' },
    {
      what: 'a JPEG of 100 megapixels',
      photo: () => folder.file('huge.jpg', declaring(jpegOf(picture), 10_000, 10_000)),
      code: 'photo-too-large',
    },
    { what: 'a PNG of 100 megapixels', photo: () => folder.file('huge.png', hugePng()), code: 'photo-too-large' },
    {
      what: 'a JPEG that was cut off',
      photo: () => folder.file('cut.jpg', jpegOf(picture).subarray(0, 9000)),
      code: 'picture-truncated',
    },
    {
      what: 'a JPEG cut in its header',
      photo: () => folder.file('cut2.jpg', jpegOf(picture).subarray(0, 30)),
      code: 'picture-truncated',
    },
    { what: 'an empty file', photo: () => folder.file('empty.jpg', ''), code: 'picture-empty' },
    { what: 'a text', photo: () => folder.file('text.jpg', 'knit one, purl one'), code: 'photo-unknown-kind' },
    {
      what: 'an SVG',
      photo: () => folder.file('a.svg', '<svg xmlns="http://www.w3.org/2000/svg"/>'),
      code: 'photo-only-in-window',
    },
  ])('refuses $what', async ({ photo, code }) => {
    const path = photo();
    const { error } = await callJson<{ error: { code: string; where: string; message: string } }>(
      ...['read', path, '--corners', '10,10,200,10,200,150,10,150', '--to', motif],
    );
    expect(error).toMatchObject({ code, where: path });
    expect(error.message).not.toBe('');
  });
});

/** Letters of up to seven strokes, in lines and words. */
function pageOfWriting(seed: number): Picture {
  const [width, height] = [900, 1200];
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [line, v] = [Math.floor((y - 80) / 26), (y - 80) % 26];
      const [letter, u] = [Math.floor((x - 80) / 11), (x - 80) % 11];
      const isBetween =
        y < 80 || y > 1120 || x < 80 || x > 820 || v > 16 || u > 8 || grain(letter, line, seed + 9) < 0.17;
      const strokes = [
        u < 2 && v < 8,
        u < 2 && v >= 8,
        u > 6 && v < 8,
        u > 6 && v >= 8,
        v < 2,
        v >= 7 && v < 9,
        v > 14,
      ];
      const isInk = strokes.some((isOn, k) => isOn && grain(letter * 7 + k, line, seed + 4) < 0.55);
      const value = !isBetween && isInk ? 40 : 236 + 3 * grain(x, y, 1);
      rgba.fill(value, (y * width + x) * 4, (y * width + x) * 4 + 3);
    }
  }
  return { width, height, rgba };
}

/** The picture as a sensor held a quarter turn to the left stores it. */
function turnedLeft({ width, height, rgba }: Picture): Picture {
  const turned = new Uint8ClampedArray(rgba.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      turned.set(rgba.subarray((y * width + x) * 4, (y * width + x) * 4 + 4), ((width - 1 - x) * height + y) * 4);
    }
  }
  return { width: height, height: width, rgba: turned };
}

/** The JPEG with an Exif segment that says how it was held (Exif 2.3, tag 0x0112). */
function withOrientation(file: Uint8Array, orientation: number): Uint8Array {
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
  const segment = [...Buffer.from('Exif\0\0'), ...tiff];
  return Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 0, segment.length + 2, ...segment, ...file.subarray(2)]);
}

/** The JPEG declaring another size in its frame header. */
function declaring(file: Uint8Array, width: number, height: number): Uint8Array {
  const changed = Uint8Array.from(file);
  const frame = changed.findIndex((byte, i) => byte === 0xff && changed[i + 1] === 0xc0);
  changed.set([height >> 8, height & 255, width >> 8, width & 255], frame + 5);
  return changed;
}

describe('cells to look at', () => {
  it('are counted from 1, the bottom row first', () => {
    const doubtful = Uint8Array.of(0, 0, 1, 1, 0, 0);
    const reading = {
      grid: { width: 3, height: 2, cells: new Uint8Array(6) },
      colours: ['#000000'],
      ground: 0,
      confidence: new Float32Array(6),
      doubtful,
    };
    expect(doubtfulCells(reading)).toEqual([
      { column: 3, row: 1 },
      { column: 1, row: 2 },
    ]);
  });
});

/** Its header says 100 million pixels, and its checksum is right. */
function hugePng(): Uint8Array {
  const file = Uint8Array.from(pngOf({ width: 2, height: 2, rgba: new Uint8Array(16) }));
  const view = new DataView(file.buffer);
  view.setUint32(16, 10_000);
  view.setUint32(20, 10_000);
  view.setUint32(29, crc32(file.subarray(12, 29)));
  return file;
}
