/** Corners of a chart on the command line: put on its lines, turned, and of two charts those of the one meant. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { encode } from 'jpeg-js';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import type { Corners, FoundChart, Picture } from '@shared/reading/index.ts';
import type { ReadJson } from '../../../src-main/cli/json/read.ts';
import { photograph } from '../reading/chart-photo.ts';
import { blobs } from '../reading/motifs.ts';
import { twoChartsOnAPage } from '../reading/two-charts.ts';
import { callJson, call, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const [COLUMNS, ROWS] = [20, 24];
const grid = blobs(COLUMNS, ROWS, 2, 5);
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
const jpegOf = ({ width, height, rgba }: Picture): Uint8Array => encode({ width, height, data: rgba }, 85).data;
const photo = folder.file('chart.jpg', jpegOf(picture));
const written = (points: Corners): string => points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(',');

/** What was written, # for black, the topmost row first. */
function rowsOf(file: string): string[] {
  const { width, height, data } = PNG.sync.read(readFileSync(file));
  return Array.from({ length: height }, (_, y) =>
    Array.from({ length: width }, (_, x) => ((data[(y * width + x) * 4] as number) < 128 ? '#' : '.')).join(''),
  );
}

const drawn = Array.from({ length: ROWS }, (_, fromTop) =>
  Array.from({ length: COLUMNS }, (_, column) =>
    grid.cells[(ROWS - 1 - fromTop) * COLUMNS + column] === 1 ? '#' : '.',
  ).join(''),
);

describe('corners that are given', () => {
  // Two thirds of a cell, in every direction.
  const off: Corners = [
    { x: corners[0].x - 10, y: corners[0].y + 9 },
    { x: corners[1].x + 9, y: corners[1].y + 10 },
    { x: corners[2].x - 10, y: corners[2].y - 10 },
    { x: corners[3].x + 10, y: corners[3].y + 8 },
  ];
  const given = ['read', photo, '--corners', written(off), '--columns', '20', '--rows', '24', '--ink'];

  it('are put on the lines near them, so that ten pixels off do no harm', async () => {
    const to = join(folder.path, 'off.png');
    const json = await callJson<ReadJson>(...given, '--to', to);
    expect(rowsOf(to)).toEqual(drawn);
    json.settled?.forEach(({ x, y }, i) => {
      const { x: drawnX, y: drawnY } = corners[i] as { x: number; y: number };
      expect(Math.hypot(x - drawnX, y - drawnY)).toBeLessThan(3);
    });
    expect(json.settled).toHaveLength(4);
    expect((await call(...given, '--to', join(folder.path, 'said.png'))).out).toContain(
      `Put on the lines found near the corners given: --corners ${written(json.settled as Corners)}`,
    );
  });

  it('stay as they are where a count does not fit the lines near them', async () => {
    const json = await callJson<ReadJson>(
      ...['read', photo, '--corners', written(off), '--columns', '31', '--rows', '24', '--ink'],
      ...['--to', join(folder.path, 'other.png')],
    );
    expect(json.settled ?? null).toBeNull();
  });
});

describe('a chart that lies on the photo turned', () => {
  it.each([
    ['90', 24, 20],
    ['180', 20, 24],
    ['270', 24, 20],
  ])('is read turned by %s degrees', async (degrees, columns, rows) => {
    const to = join(folder.path, `turned-${degrees}.png`);
    const json = await callJson<ReadJson>('read', photo, '--turn', degrees, '--ink', '--to', to);
    expect(json).toMatchObject({ columns, rows, found: { columns, rows } });
    let turned = drawn;
    for (let quarter = 0; quarter < Number(degrees) / 90; quarter++) {
      // Clockwise: the left column becomes the upper row.
      turned = Array.from({ length: (turned[0] as string).length }, (_, column) =>
        turned
          .map((row) => row[column])
          .reverse()
          .join(''),
      );
    }
    expect(rowsOf(to)).toEqual(turned);
  });

  it('is turned by quarters alone', async () => {
    const json = await callJson('read', photo, '--turn', '45', '--to', join(folder.path, 'aslant.png'));
    expect(json).toMatchObject({ error: { code: 'option-value', where: '--turn' } });
  });
});

it('asks which of two charts is meant, and reads the one whose corners are given', async () => {
  const page = folder.file('page.jpg', jpegOf(twoChartsOnAPage()));
  const to = join(folder.path, 'one.png');
  const { error } = await callJson<{ error: { code: string; charts: FoundChart[] } }>('read', page, '--to', to);
  expect(error.code).toBe('charts-several');
  const { warned } = await call('read', page, '--ink', '--to', to);
  const eight = /corners (\d+(?:\.\d+)?(?:,\d+(?:\.\d+)?){7})/g;
  const choices = [...warned.matchAll(eight)].map(([, said]) => said as string);
  expect(choices).toHaveLength(2);
  const counts: string[] = [];
  for (const [i, said] of choices.entries()) {
    const file = join(folder.path, `chart-${i}.png`);
    const { columns, rows } = await callJson<ReadJson>('read', page, '--corners', said, '--ink', '--to', file);
    counts.push(`${columns} × ${rows}`);
  }
  expect(counts.sort()).toEqual(['14 × 16', '26 × 20']);
});
