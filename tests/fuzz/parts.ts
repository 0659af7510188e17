/** Files changed part by part: parts left out, doubled, exchanged, grown, or filled with far more than they say. */
import { crc32, deflateSync } from 'node:zlib';
import { changedBytes, joined } from './bytes.ts';
import type { Dice } from './random.ts';

/** How a format is cut into parts and put together again, with the lengths and checksums that the parts then have. */
export interface Layout {
  cut(bytes: Uint8Array): Part[];
  join(parts: readonly Part[], dice: Dice): Uint8Array;
  /** Parts that hold far more than their length. */
  readonly bombs: readonly ((dice: Dice) => Part)[];
}

export interface Part {
  readonly name: string;
  readonly body: Uint8Array;
}

export function changedParts(bytes: Uint8Array, layout: Layout, dice: Dice): Uint8Array {
  const parts = layout.cut(bytes);
  for (let times = 1 + dice.below(3); times > 0 && parts.length > 0; times--) {
    const at = dice.below(parts.length);
    const part = parts[at] as Part;
    switch (dice.below(7)) {
      case 0:
        parts.splice(at, 1);
        break;
      case 1:
        parts.splice(dice.below(parts.length + 1), 0, part);
        break;
      case 2: {
        const other = dice.below(parts.length);
        [parts[at], parts[other]] = [parts[other] as Part, part];
        break;
      }
      case 3:
        if (layout.bombs.length > 0)
          parts.splice(dice.below(parts.length + 1), dice.below(2), dice.pick(layout.bombs)(dice));
        break;
      case 4:
        parts[at] = { name: (parts[dice.below(parts.length)] as Part).name, body: part.body };
        break;
      default:
        parts[at] = { name: part.name, body: changedBytes(part.body, dice) };
    }
  }
  return layout.join(parts, dice);
}

const latin = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'));
const nameOf = (bytes: Uint8Array, at: number): string => Buffer.from(bytes.subarray(at, at + 4)).toString('latin1');

function word(value: number, isLittle = false): Uint8Array {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setUint32(0, value, isLittle);
  return bytes;
}

const rowsOf = (dice: Dice): Uint8Array =>
  Uint8Array.from({ length: dice.below(300) }, () => dice.pick([0, 1, 2, 3, 4, dice.below(256)]));
const noughts = (length: number): Uint8Array => new Uint8Array(deflateSync(Buffer.alloc(length)));
/** 40 MB of noughts in 40 kB, made once. */
const swollen = noughts(40_000_000);

/** ISO/IEC 15948. Most checksums are set right, or nothing behind them would ever be reached. */
export const PNG_LAYOUT: Layout = {
  cut(bytes) {
    const parts: Part[] = [];
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let at = 8; at + 12 <= bytes.length;) {
      const end = at + 12 + view.getUint32(at);
      parts.push({ name: nameOf(bytes, at + 4), body: bytes.subarray(at + 8, end - 4) });
      at = end;
    }
    return parts;
  },
  join: (parts, dice) =>
    joined(
      Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
      ...parts.flatMap(({ name, body }) => {
        const named = joined(latin(name), body);
        return [word(body.length), named, word(dice.once(40) ? dice.below(2 ** 32) : crc32(named))];
      }),
    ),
  bombs: [
    // Pixels of about the right number, whatever they are.
    (dice) => ({ name: 'IDAT', body: new Uint8Array(deflateSync(Buffer.from(rowsOf(dice)))) }),
    () => ({ name: 'IDAT', body: swollen }),
    () => ({ name: 'zTXt', body: joined(latin('Comment\0\0'), swollen) }),
    () => ({ name: 'iCCP', body: joined(latin('Profile\0\0'), swollen) }),
    () => ({ name: 'iTXt', body: joined(latin('XML\0\x01\0\0\0'), swollen) }),
    () => ({ name: 'IHDR', body: joined(word(60_000), word(900), Uint8Array.of(8, 6, 0, 0, 0)) }),
    () => ({ name: 'IHDR', body: joined(word(2 ** 31 - 1), word(2 ** 31 - 1), Uint8Array.of(16, 6, 0, 0, 1)) }),
    () => ({ name: 'PLTE', body: new Uint8Array(768) }),
    () => ({ name: 'acTL', body: new Uint8Array(8) }),
  ],
};

/** ITU-T T.81: segments up to the first scan, whose bits go with the rest. */
export const JPEG_LAYOUT: Layout = {
  cut(bytes) {
    const parts: Part[] = [];
    for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff;) {
      const isScan = bytes[at + 1] === 0xda;
      let end = at + 2 + (((bytes[at + 2] as number) << 8) | (bytes[at + 3] as number));
      if (isScan) {
        while (
          end < bytes.length - 1 &&
          (bytes[end] !== 0xff || bytes[end + 1] === 0 || ((bytes[end + 1] as number) & 0xf8) === 0xd0)
        )
          end++;
      }
      parts.push({ name: String.fromCharCode(bytes[at + 1] as number), body: bytes.subarray(at + 2, end) });
      at = end;
    }
    return parts;
  },
  join: (parts) =>
    joined(
      Uint8Array.of(0xff, 0xd8),
      ...parts.flatMap(({ name, body }) => [Uint8Array.of(0xff, name.charCodeAt(0)), body]),
      Uint8Array.of(0xff, 0xd9),
    ),
  bombs: [
    () => ({ name: '\xc0', body: Uint8Array.of(0, 11, 8, 0x1f, 0xff, 0x1c, 0xff, 1, 1, 0x11, 0) }),
    () => ({ name: '\xc2', body: Uint8Array.of(0, 17, 8, 0xff, 0xff, 3, 0x80, 3, 1, 0x44, 0, 2, 0x11, 0, 3, 0x11, 0) }),
    () => ({ name: '\xdc', body: Uint8Array.of(0, 4, 0xff, 0xff) }),
    () => ({ name: '\xdd', body: Uint8Array.of(0, 4, 0, 1) }),
    () => ({ name: '\xc4', body: Uint8Array.of(0, 19, 0, ...new Array<number>(15).fill(255), 255, 0) }),
    () => ({
      name: '\xe1',
      body: Uint8Array.of(0, 16, 0x45, 0x78, 0x69, 0x66, 0, 0, 0x49, 0x49, 42, 0, 0xff, 0xff, 0xff, 0xff),
    }),
  ],
};

/** RFC 9649. */
export const WEBP_LAYOUT: Layout = {
  cut(bytes) {
    const parts: Part[] = [];
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let at = 12; at + 8 <= bytes.length;) {
      const length = view.getUint32(at + 4, true);
      parts.push({ name: nameOf(bytes, at), body: bytes.subarray(at + 8, at + 8 + length) });
      at += 8 + length + (length & 1);
    }
    return parts;
  },
  join(parts, dice) {
    const body = joined(
      latin('WEBP'),
      ...parts.flatMap(({ name, body: held }) => [
        latin(name),
        word(held.length, true),
        held,
        new Uint8Array(held.length & 1),
      ]),
    );
    return joined(latin('RIFF'), word(body.length + (dice.once(10) ? dice.below(9) - 4 : 0), true), body);
  },
  bombs: [
    () => ({ name: 'VP8X', body: Uint8Array.of(0, 0, 0, 0, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff) }),
    () => ({ name: 'VP8L', body: Uint8Array.of(0x2f, 0xff, 0xff, 0xff, 0x0f) }),
    () => ({ name: 'ANIM', body: new Uint8Array(6) }),
  ],
};
