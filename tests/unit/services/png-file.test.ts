/** PNG files read back with a decoder that the project does not write with. */
import fc from 'fast-check';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { indexedPng, pngOf } from '../../../src-main/services/export/png-file.ts';

/** Colour types (PNG, ISO/IEC 15948, 11.2.2) stand behind width, height and depth in the header. */
const COLOUR_TYPE_AT = 25;
const TRUECOLOUR = 2;
const INDEXED = 3;

function opaque(width: number, height: number, colour: (at: number) => number): Uint8Array {
  const rgba = new Uint8Array(width * height * 4);
  for (let at = 0; at < width * height; at++) {
    const value = colour(at);
    rgba.set([value >> 16, (value >> 8) & 255, value & 255, 255], at * 4);
  }
  return rgba;
}

function decoded(png: Uint8Array): Uint8Array {
  return new Uint8Array(PNG.sync.read(Buffer.from(png)).data);
}

describe('pixels written as PNG', () => {
  it('are read back as they were, whatever their colours and lines', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        // Lines by their number, so that many come again.
        fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 1, maxLength: 30 }),
        fc.constantFrom(1, 2, 17, 256, 300, 5000),
        fc.integer(),
        (width, lines, colours, seed) => {
          const rgba = opaque(width, lines.length, (at) => {
            const line = lines[Math.floor(at / width)] as number;
            return (Math.imul(line * width + (at % width) + seed, 2654435761) >>> 8) % colours;
          });
          expect(decoded(pngOf({ width, height: lines.length, rgba }))).toEqual(rgba);
        },
      ),
    );
  });

  it.each([
    [256, INDEXED],
    [257, TRUECOLOUR],
  ])('of %i colours have the colour type %i', (colours, type) => {
    const rgba = opaque(257, 3, (at) => ((at % 257) % colours) * 1001);
    const png = pngOf({ width: 257, height: 3, rgba });
    expect(png[COLOUR_TYPE_AT]).toBe(type);
    expect(decoded(png)).toEqual(rgba);
  });

  it('may lie anywhere in a larger buffer', () => {
    const rgba = opaque(5, 4, (at) => at * 70_000);
    const behind = new Uint8Array(rgba.length + 3);
    behind.set(rgba, 3);
    expect(decoded(pngOf({ width: 5, height: 4, rgba: behind.subarray(3) }))).toEqual(rgba);
  });

  it('as places in a palette have its colours', () => {
    const colours = ['#102030', '#ffeedd', '#00ff7f'];
    const indices = Uint8Array.of(0, 1, 2, 0, 1, 2, 2, 2, 0);
    const png = indexedPng({ width: 3, height: 3, indices, colours });
    const expected = opaque(3, 3, (at) => Number.parseInt((colours[indices[at] as number] as string).slice(1), 16));
    expect(decoded(png)).toEqual(expected);
  });

  it('that repeat line by line take little room', () => {
    const [width, height] = [4000, 3000];
    const rgba = opaque(width, height, (at) => (Math.imul(at % width, 2654435761) >>> 20) % 30);
    // 3,000 lines as the one before: far less than a byte for each 258 pixels of them, the most that one step of deflate copies (RFC 1951).
    expect(pngOf({ width, height, rgba }).length).toBeLessThan((width * height) / 258);
  });
});
