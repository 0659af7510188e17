import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { readMotifPicture } from '@shared/picture/index.ts';
import { outcome, type Problem } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { bytesOf, pngOf, rawPng } from './pictures.ts';

const problem = (bytes: Uint8Array): Problem | null => {
  const read = outcome(() => readMotifPicture(bytes));
  return read.ok ? null : read.problem;
};

const good = pngOf([
  ['#102030', '#405060'],
  ['#405060', '#102030'],
]);
const header = (width: number, height: number): Uint8Array =>
  rawPng({ width, height, depth: 1, colourType: 0, rows: [[0]] });

/** The picture with one byte changed. */
function changed(bytes: Uint8Array, at: number, to: number): Uint8Array {
  const copy = Uint8Array.from(bytes);
  copy[at] = to;
  return copy;
}

/** Where a chunk's bytes begin. */
function bodyOf(bytes: Uint8Array, name: string): number {
  return Buffer.from(bytes).indexOf(name, 0, 'latin1') + 4;
}

describe('a picture that cannot be a motif', () => {
  it.each([
    ['an empty file', new Uint8Array(0), 'picture-empty'],
    ['a text', bytesOf('a letter to a friend'), 'picture-unknown-kind'],
    ['a JPEG', Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 16), 'picture-unknown-kind'],
    ['a grey Netpbm picture', bytesOf('P5 1 1 255 x'), 'picture-unknown-kind'],
    ['a word that begins like a PBM', bytesOf('P12 3 4'), 'picture-unknown-kind'],

    ['a PNG of which only its mark is there', good.subarray(0, 8), 'picture-truncated'],
    ['a PNG that ends in its header', good.subarray(0, 20), 'picture-truncated'],
    ['a PNG that ends in its pixels', good.subarray(0, bodyOf(good, 'IDAT') + 4), 'picture-truncated'],
    ['a PNG without its last part', good.subarray(0, good.length - 12), 'picture-truncated'],
    ['a PNG sent as text', changed(good, 4, 0x0a), 'picture-broken'],
    ['a PNG with a changed pixel byte', changed(good, bodyOf(good, 'IDAT') + 3, 0x55), 'picture-broken'],
    ['a PNG with a changed header', changed(good, bodyOf(good, 'IHDR') + 8, 3), 'picture-broken'],
    ['a PNG of no width', header(0, 5), 'picture-broken'],
    ['a PNG whose pixels are too few', header(100, 100), 'picture-broken'],
    [
      'a PNG whose pixel names no colour',
      rawPng({ width: 1, height: 1, depth: 8, colourType: 3, rows: [[5]], palette: [0, 0, 0] }),
      'picture-broken',
    ],
    [
      'a PNG without its palette',
      rawPng({ width: 1, height: 1, depth: 8, colourType: 3, rows: [[0]] }),
      'picture-broken',
    ],

    ['a PBM that ends in its header', bytesOf('P1 3'), 'picture-truncated'],
    ['a PBM that ends in a comment', bytesOf('P1 3 1 1 0 # and'), 'picture-truncated'],
    ['a PBM with too few pixels', bytesOf('P1 3 1 1 0'), 'picture-truncated'],
    ['a packed PBM with too few bytes', bytesOf('P4 9 2\n\x01\x02\x03'), 'picture-truncated'],
    ['a PBM of no height', bytesOf('P1 3 0 '), 'picture-broken'],
    ['a PBM with a negative width', bytesOf('P1 -3 1 1 0 1'), 'picture-broken'],
    ['a PBM with a fractional height', bytesOf('P1 3 1.5 1 0 1'), 'picture-broken'],
    ['a PBM with a 2 among its pixels', bytesOf('P1 3 1 1 0 2'), 'picture-broken'],
  ])('%s is refused', (_, bytes, code) => {
    expect(problem(bytes)?.code).toBe(code);
  });

  it.each([
    ['PNG', header(20_000, 20_000)],
    ['packed PBM', bytesOf('P4 20000 20000\n')],
    ['PBM', bytesOf('P1 20000 20000 ')],
  ])('a %s of 20,000 × 20,000 pixels is refused before room is made for it', (_, bytes) => {
    const before = process.memoryUsage().arrayBuffers;
    expect(problem(bytes)).toMatchObject({ code: 'picture-too-large', facts: { width: 20_000, height: 20_000 } });
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(10_000_000);
  });

  it.each([
    [1000, 1, null],
    [1001, 1, 'picture-too-large'],
    [1, 4000, null],
    [1, 4001, 'picture-too-large'],
  ])('of %i × %i pixels: %s', (width, height, code) => {
    expect(problem(bytesOf(`P4 ${width} ${height}\n${'\0'.repeat(Math.ceil(width / 8) * height)}`))?.code ?? null).toBe(
      code,
    );
  });

  it.each([
    [64, null],
    [65, 'picture-too-many-colours'],
  ])('with %i colours: %s', (colours, code) => {
    const row = Array.from({ length: colours }, (_, i) => `#0000${i.toString(16).padStart(2, '0')}`);
    expect(problem(pngOf([row]))?.code ?? null).toBe(code);
  });

  it('that would unpack to far more than its header says is refused unpacked', () => {
    // Bytes without a pattern, so that packing makes them no smaller.
    const rows = Array.from({ length: 400 }, (_, r) => [
      ...createHash('shake256', { outputLength: 256 }).update(`${r}`).digest(),
    ]);
    expect(problem(rawPng({ width: 1, height: 1, depth: 8, colourType: 0, rows }))).toMatchObject({
      code: 'picture-broken',
      facts: { damage: 'pixels' },
    });
  });

  it('cut anywhere is a problem of its own and never an unexpected one', () => {
    for (let length = 0; length < good.length; length++) {
      const found = problem(good.subarray(0, length));
      expect(['picture-empty', 'picture-unknown-kind', 'picture-truncated']).toContain(found?.code);
    }
  });

  it('changed in any one byte is read or refused by name, never unexpected', () => {
    for (let at = 0; at < good.length; at++) {
      for (const to of [0, 1, 0x7f, 0xff]) {
        const found = problem(changed(good, at, to));
        if (found) expect(words.problems.say(found).mend).not.toContain('report');
      }
    }
  });
});
