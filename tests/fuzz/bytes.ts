/** Files changed byte by byte: what bad disks, bad lines and bad people do. */
import type { Dice } from './random.ts';

/** Numbers at which readers go wrong. */
const EDGES = [0, 1, 2, 4, 7, 8, 15, 16, 0x20, 0x7f, 0x80, 0xd0, 0xda, 0xfe, 0xff];
const WORDS = [0, 1, 0x7f, 0xff, 0x100, 0x7fff, 0x8000, 0xffff, 0x10000, 0x7fffffff, 0x80000000, 0xffffffff];

export function changedBytes(bytes: Uint8Array, dice: Dice): Uint8Array {
  let changed = bytes;
  for (let times = 1 + dice.below(4); times > 0; times--) changed = changedOnce(changed, dice);
  return changed;
}

function changedOnce(bytes: Uint8Array, dice: Dice): Uint8Array {
  const copy = Uint8Array.from(bytes);
  if (copy.length === 0) return Uint8Array.of(dice.below(256));
  const at = dice.below(copy.length);
  const length = 1 + dice.below(Math.min(64, copy.length - at));
  const part = copy.subarray(at, at + length);
  switch (dice.below(9)) {
    case 0:
      copy[at] = (copy[at] as number) ^ (1 << dice.below(8));
      return copy;
    case 1:
      copy[at] = dice.pick(EDGES);
      return copy;
    case 2: {
      const word = dice.pick(WORDS);
      const view = new DataView(copy.buffer);
      if (at + 4 <= copy.length) view.setUint32(at, word, dice.once(2));
      return copy;
    }
    case 3:
      return copy.slice(0, at);
    case 4:
      return joined(copy.subarray(0, at), copy.subarray(at + length));
    case 5:
      return joined(copy.subarray(0, at), part, copy.subarray(at));
    case 6:
      return joined(
        copy.subarray(0, at),
        Uint8Array.from({ length }, () => dice.below(256)),
        copy.subarray(at),
      );
    case 7: {
      const to = dice.below(copy.length - length + 1);
      copy.copyWithin(to, at, at + length);
      return copy;
    }
    default:
      return joined(copy, copy.subarray(at));
  }
}

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
