/**
 * What pictures take: at most 200 MB and 3 s for one that is refused, 600 MB and
 * 5 s for one that is taken. Each is read by a process of its own, which says
 * the most memory that it ever held, and how long it worked.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { constants, deflateRawSync } from 'node:zlib';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chunk } from '../picture/pictures.ts';

const folder = mkdtempSync(join(tmpdir(), 'walewright-bounds-'));
const root = resolve(import.meta.dirname, '../../..');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Bundled, so that no loader counts. */
beforeAll(async () => {
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    resolve: { alias: { '@shared': resolve(root, 'src-shared') } },
    ssr: { noExternal: true },
    build: {
      ssr: resolve(import.meta.dirname, 'read-one.ts'),
      outDir: folder,
      emptyOutDir: false,
      rollupOptions: { output: { format: 'es', entryFileNames: 'read-one.mjs' } },
    },
  });
});

interface Taken {
  readonly code: string | null;
  readonly megabytes: number;
  readonly seconds: number;
}

function read(name: string, bytes: Uint8Array): Taken {
  const file = join(folder, name);
  writeFileSync(file, bytes);
  const run = spawnSync(process.execPath, [join(folder, 'read-one.mjs'), file], { encoding: 'utf8' });
  rmSync(file);
  return JSON.parse(run.stdout) as Taken;
}

const word = (value: number): number[] => [value >>> 24, (value >>> 16) & 255, (value >>> 8) & 255, value & 255];
const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const header = (width: number, height: number, colourType: number): Buffer =>
  chunk('IHDR', [...word(width), ...word(height), 8, colourType, 0, 0, 0]);

/** A zlib stream of that many noughts, made of pieces that each unpack by themselves. */
function noughts(length: number): Buffer {
  const piece = 1_000_000;
  const flush = { finishFlush: constants.Z_FULL_FLUSH };
  const whole = deflateRawSync(Buffer.alloc(piece), flush);
  const last = deflateRawSync(Buffer.alloc(length % piece));
  return Buffer.concat([
    Buffer.of(0x78, 0x9c),
    ...Array.from({ length: Math.floor(length / piece) }, () => whole),
    last,
    Buffer.alloc(4),
  ]);
}

const png = (...chunks: readonly Buffer[]): Uint8Array => Buffer.concat([SIGNATURE, ...chunks, chunk('IEND', [])]);

/** A JPEG (ITU-T T.81) of one grey: both its codes are a single 0, so each block is two bits. */
function flatJpeg(width: number, height: number, bits: number): Uint8Array {
  const segment = (marker: number, body: readonly number[]): number[] => [
    0xff,
    marker,
    (body.length + 2) >> 8,
    (body.length + 2) & 255,
    ...body,
  ];
  const two = (value: number): number[] => [value >> 8, value & 255];
  const oneCode = [1, ...new Array<number>(15).fill(0), 0];
  return Buffer.concat([
    Buffer.from([0xff, 0xd8, ...segment(0xdb, [0, ...new Array<number>(64).fill(1)])]),
    Buffer.from(segment(0xc0, [8, ...two(height), ...two(width), 1, 1, 0x11, 0])),
    Buffer.from([...segment(0xc4, [0x00, ...oneCode, 0x10, ...oneCode]), ...segment(0xda, [1, 1, 0, 0, 63, 0])]),
    Buffer.alloc(Math.ceil(bits / 8)),
    Buffer.from([0xff, 0xd9]),
  ]);
}

/** A restart marker where none is due: the bits end there. */
function endingEarly(jpeg: Uint8Array): Uint8Array {
  jpeg.set([0xff, 0xd0], jpeg.length - 16);
  return jpeg;
}

const [WIDE, HIGH] = [9000, 6600];
const wideRow = WIDE * 3 + 1;

describe('a picture that is refused', () => {
  it.each<[what: string, make: () => Uint8Array, code: string]>([
    [
      'a PNG of 60 × 60 pixels that unpacks to 2 GB',
      () => png(header(60, 60, 2), chunk('IDAT', [...noughts(2_000_000_000)])),
      'picture-broken',
    ],
    [
      'a PNG with a second header, of 59 million pixels',
      () => png(header(4, 4, 2), header(WIDE, HIGH, 2), chunk('IDAT', [...noughts(wideRow * HIGH)])),
      'picture-broken',
    ],
    [
      'a PNG of 59 million pixels of which the last one is missing',
      () => png(header(WIDE, HIGH, 2), chunk('IDAT', [...noughts(wideRow * HIGH - 1)])),
      'picture-broken',
    ],
    [
      'a PNG with a note that unpacks to 1 GB',
      () => png(header(1, 1, 2), chunk('zTXt', [65, 0, 0, ...noughts(1_000_000_000)]), chunk('IDAT', [...noughts(4)])),
      'picture-broken',
    ],
    [
      'a PNG with a colour profile that unpacks to 1 GB',
      () => png(header(1, 1, 2), chunk('iCCP', [65, 0, 0, ...noughts(1_000_000_000)]), chunk('IDAT', [...noughts(4)])),
      'picture-broken',
    ],
    ['a JPEG of some hundred bytes for 59 million pixels', () => flatJpeg(WIDE, HIGH, 3000), 'picture-truncated'],
    [
      'a JPEG of 59 million pixels that ends just before its last rows',
      () => endingEarly(flatJpeg(WIDE, HIGH, 2 * 1125 * 825)),
      'picture-broken',
    ],
    [
      'a picture of 100 million pixels',
      () => png(header(10_000, 10_000, 2), chunk('IDAT', [...noughts(4)])),
      'photo-too-large',
    ],
  ])('takes at most 200 MB and 3 s: %s', (_, make, code) => {
    const taken = read('refused', make());
    expect(taken.code).toBe(code);
    expect(taken.megabytes).toBeLessThanOrEqual(200);
    expect(taken.seconds).toBeLessThanOrEqual(3);
  });
});

describe('a picture that is taken', () => {
  it.each<[what: string, make: () => Uint8Array]>([
    ['a PNG of 59 million pixels', () => png(header(WIDE, HIGH, 2), chunk('IDAT', [...noughts(wideRow * HIGH)]))],
    ['the same with alpha', () => png(header(WIDE, HIGH, 6), chunk('IDAT', [...noughts((WIDE * 4 + 1) * HIGH)]))],
    ['a JPEG of 59 million pixels', () => flatJpeg(WIDE, HIGH, 2 * 1125 * 825)],
    [
      'a PBM of 59 million pixels',
      () => Buffer.concat([Buffer.from(`P4 ${WIDE} ${HIGH}\n`), Buffer.alloc((WIDE / 8) * HIGH)]),
    ],
  ])('takes at most 600 MB and 5 s: %s', (_, make) => {
    const taken = read('taken', make());
    expect(taken.code).toBeNull();
    expect(taken.megabytes).toBeLessThanOrEqual(600);
    expect(taken.seconds).toBeLessThanOrEqual(5);
  });
});
