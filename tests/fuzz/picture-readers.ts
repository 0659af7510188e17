/** The readers of picture files. */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readMotifPicture } from '@shared/picture/index.ts';
import {
  checkPictureFile,
  decodePhoto,
  isSvg,
  MOST_KEPT_MEGAPIXELS,
  MOST_MEGAPIXELS,
  readSvg,
  SVG_SIDE,
} from '@shared/reading/index.ts';
import { bitRows, rawPng } from '../unit/picture/pictures.ts';
import { JPEG_LAYOUT, PNG_LAYOUT, WEBP_LAYOUT } from './parts.ts';
import { latin, ofBytes, ofText, type Reader } from './reader.ts';

const samples = (count: number, most: number): number[] =>
  Array.from({ length: count }, (_, at) => (at * 7 + (at >> 2)) % (most + 1));
const png = (depth: number, colourType: number, channels: number, more: object = {}): Uint8Array =>
  new Uint8Array(
    rawPng({
      width: 9,
      height: 6,
      depth,
      colourType,
      rows: Array.from({ length: 6 }, () =>
        bitRows(samples(9 * channels, Math.min(255, 2 ** depth - 1)), Math.min(depth, 8)).concat(
          depth === 16 ? samples(9 * channels, 255) : [],
        ),
      ),
      ...more,
    }),
  );
const palette = Array.from({ length: 6 }, (_, at) => at * 40);
const PNGS = [
  png(1, 0, 1),
  png(8, 0, 1, { transparency: [0, 7] }),
  png(8, 2, 3),
  png(8, 6, 4),
  png(16, 2, 3),
  png(8, 4, 2),
  png(1, 3, 1, { palette }),
  png(8, 2, 3, {
    chunks: [
      ['tEXt', [65, 0, 66]],
      ['zTXt', [65, 0, 0, 1]],
      ['gAMA', [0, 0, 177, 143]],
    ],
  }),
  new Uint8Array(
    rawPng({ width: 3, height: 1, depth: 8, colourType: 0, rows: [[255], [0], [255]], isInterlaced: true }),
  ),
];
const PBMS = ['P1\n# a chart\n5 3\n01010 11111 00100\n', 'P1 3 1 0 1 0', 'P4 9 2\n\u0001\u0002\u0003\u0004'].map(latin);
const jpegs = join(import.meta.dirname, '..', 'unit', 'picture', 'jpegs');
const JPEGS = readdirSync(jpegs)
  .filter((name) => name.endsWith('.jpg'))
  .map((name) => new Uint8Array(readFileSync(join(jpegs, name))));

function riff(...chunks: readonly (readonly [string, readonly number[]])[]): Uint8Array {
  const body = chunks.flatMap(([name, bytes]) => [
    ...latin(name),
    bytes.length,
    0,
    0,
    0,
    ...bytes,
    ...(bytes.length % 2 ? [0] : []),
  ]);
  return Uint8Array.from([...latin('RIFF'), body.length + 4, 0, 0, 0, ...latin('WEBP'), ...body]);
}
const WEBPS = [
  riff(['VP8 ', [0, 0, 0, 0x9d, 0x01, 0x2a, 0x20, 3, 0x58, 2, 1, 2, 3]]),
  riff(['VP8L', [0x2f, 0x1f, 0xc3, 0x95, 0, 1]]),
  riff(['VP8X', [0, 0, 0, 0, 15, 0, 0, 15, 0, 0]], ['ICCP', [1, 2]], ['VP8L', [0x2f, 15, 0xc0, 3, 0, 0]]),
];
function bmp(depth: number, width: number, height: number): Uint8Array {
  const table = depth <= 8 ? 4 * 2 ** depth : 0;
  const bytes = new Uint8Array(54 + table + Math.ceil((width * depth) / 32) * 4 * Math.abs(height));
  const view = new DataView(bytes.buffer);
  bytes.set([0x42, 0x4d]);
  [
    [2, bytes.length],
    [10, 54 + table],
    [14, 40],
    [18, width],
    [22, height],
  ].forEach(([at, value]) => view.setInt32(at as number, value as number, true));
  view.setUint16(26, 1, true);
  view.setUint16(28, depth, true);
  return bytes;
}
const BMPS = [bmp(24, 5, 4), bmp(8, 7, -3), bmp(1, 33, 2)];

const photo = (input: Uint8Array): void => {
  const { picture, scale, width, height } = decodePhoto(input);
  assert.equal(picture.rgba.length, picture.width * picture.height * 4);
  assert(picture.width >= 1 && picture.height >= 1 && picture.width * picture.height <= MOST_KEPT_MEGAPIXELS * 1e6);
  assert.deepEqual([Math.ceil(width / scale), Math.ceil(height / scale)], [picture.width, picture.height]);
};
const motif = (input: Uint8Array): void => {
  const { grid, colours, ground } = readMotifPicture(input);
  assert(grid.width >= 1 && grid.width <= 1000 && grid.height >= 1 && grid.height <= 4000);
  assert.equal(grid.cells.length, grid.width * grid.height);
  assert(colours.every((colour) => /^#[0-9a-f]{6}$/.test(colour)) && new Set(colours).size === colours.length);
  assert(grid.cells.every((cell) => cell < colours.length) && ground === 0);
};
const checked = (input: Uint8Array): void => {
  const file = checkPictureFile(input);
  if (file.kind === 'SVG') return;
  assert(file.width >= 1 && file.height >= 1 && file.width * file.height <= MOST_MEGAPIXELS * 1e6);
  assert(file.orientation >= 1 && file.orientation <= 8);
};

const SVGS = [
  '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><defs><g id="a"><rect width="1" height="1"/></g></defs><use href="#a" x="3"/><use xlink:href="#a"/></svg>',
  `<svg width="30mm" height="60mm"><style>.k{fill:#123}</style><!-- knit --><path class="k" d="M0 0L10 10"/><text>2 &lt; 3</text><image href="data:image/png;base64,${Buffer.from(PNGS[0] as Uint8Array).toString('base64')}"/></svg>`,
  '<svg><g id="l0"><rect/></g><g id="l1"><use href="#l0"/><use href="#l0"/></g><g id="l2"><use href="#l1"/><use href="#l1"/></g><rect fill="url(#l2)" mask="url(#l1)"/></svg>',
];

export const PICTURE_READERS: readonly Reader[] = [
  ofBytes('motif-png', PNGS, PNG_LAYOUT, motif),
  ofBytes('photo-png', PNGS, PNG_LAYOUT, photo),
  ofBytes('jpeg', JPEGS, JPEG_LAYOUT, photo),
  ofBytes('pbm', PBMS, null, (input) => {
    motif(input);
    photo(input);
  }),
  ofBytes('webp', WEBPS, WEBP_LAYOUT, checked),
  ofBytes('bmp', BMPS, null, checked),
  ofText('svg', SVGS, (text) => {
    if (!isSvg(latin(text))) return;
    const { width, height } = readSvg(text);
    assert(Math.max(width, height) === SVG_SIDE && Math.min(width, height) >= 1);
  }),
];
