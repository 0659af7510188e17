/** Photos as a camera stores them, turned and mirrored in each of the ways that Exif knows, are read as they are seen. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { encode } from 'jpeg-js';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import type { Picture } from '@shared/reading/index.ts';
import { photograph } from '../reading/chart-photo.ts';
import { blobs } from '../reading/motifs.ts';
import { callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const grid = blobs(16, 20, 2, 9);
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
  // Not square, or turned pictures would be as large.
  { width: 360, height: 440, roll: 5, tilt: 9, pan: -7 },
  { blur: 0.7, noise: 3 },
);
const at = corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(',');

/**
 * Where the stored row 0 and column 0 are seen, in words of Exif 2.3 (JEITA
 * CP-3451B, tag 274): "the 0th row is at the visual …, the 0th column at the
 * visual …".
 */
const ORIENTATIONS = [
  { orientation: 1, row0: 'top', column0: 'left' },
  { orientation: 2, row0: 'top', column0: 'right' },
  { orientation: 3, row0: 'bottom', column0: 'right' },
  { orientation: 4, row0: 'bottom', column0: 'left' },
  { orientation: 5, row0: 'left', column0: 'top' },
  { orientation: 6, row0: 'right', column0: 'top' },
  { orientation: 7, row0: 'right', column0: 'bottom' },
  { orientation: 8, row0: 'left', column0: 'bottom' },
] as const;
type Edge = (typeof ORIENTATIONS)[number]['row0' | 'column0'];

/** The picture as it is stored with its first row and column at these edges of what is seen. */
function stored({ width, height, rgba }: Picture, row0: Edge, column0: Edge): Picture {
  const isTurned = row0 === 'left' || row0 === 'right';
  const [across, down] = isTurned ? [height, width] : [width, height];
  const pixels = new Uint8ClampedArray(rgba.length);
  for (let row = 0; row < down; row++) {
    for (let column = 0; column < across; column++) {
      const from = { left: 0, right: 0, top: 0, bottom: 0, [row0]: row, [column0]: column };
      const isFromRight = row0 === 'right' || column0 === 'right';
      const isFromBottom = row0 === 'bottom' || column0 === 'bottom';
      const x = isFromRight ? width - 1 - from.right : from.left;
      const y = isFromBottom ? height - 1 - from.bottom : from.top;
      const pixel = (y * width + x) * 4;
      pixels.set(rgba.subarray(pixel, pixel + 4), (row * across + column) * 4);
    }
  }
  return { width: across, height: down, rgba: pixels };
}

/** The JPEG with an Exif segment that says how it was held (Exif 2.3, tag 0x0112). */
function jpegHeld({ width, height, rgba }: Picture, orientation: number): Uint8Array {
  const file = encode({ width, height, data: rgba }, 85).data;
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
  const segment = [...Buffer.from('Exif\0\0'), ...tiff];
  return Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 0, segment.length + 2, ...segment, ...file.subarray(2)]);
}

describe('a photo stored with its first row and column', () => {
  it.each(ORIENTATIONS)('$row0 and $column0 is read as it is seen', async ({ orientation, row0, column0 }) => {
    const photo = folder.file(`held-${orientation}.jpg`, jpegHeld(stored(picture, row0, column0), orientation));
    const to = join(folder.path, `motif-${orientation}.png`);
    expect(await callJson('read', photo, '--corners', at, '--ink', '--to', to)).toMatchObject({
      columns: 16,
      rows: 20,
    });
    const { width, height, data } = PNG.sync.read(readFileSync(to));
    const read = Array.from({ length: width * height }, (_, i) => ((data[i * 4] as number) < 128 ? 1 : 0));
    const drawn = Array.from({ length: 20 }, (_, fromTop) => [
      ...grid.cells.subarray((19 - fromTop) * 16, (20 - fromTop) * 16),
    ]);
    expect(read).toEqual(drawn.flat());
  });
});
