/**
 * Real bitmaps that nobody here drew: the X11 set (Debian package `xbitmaps`
 * 1.1.1), under the licence beside them.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Grid } from '@shared/grid/index.ts';

/** Reads an XBM: C source with a width, a height and bytes, the least significant bit first, 1 = ink. */
export function readBitmap(name: string): Grid {
  const text = readFileSync(join(import.meta.dirname, 'bitmaps', name), 'latin1');
  const width = Number(/_width (\d+)/.exec(text)?.[1]);
  const height = Number(/_height (\d+)/.exec(text)?.[1]);
  const bytes = [...text.matchAll(/0x([0-9a-f]{1,2})/gi)].map((match) => parseInt(match[1] as string, 16));
  const rowBytes = Math.ceil(width / 8);
  const cells = new Uint8Array(width * height);
  for (let fromTop = 0; fromTop < height; fromTop++) {
    for (let column = 0; column < width; column++) {
      const byte = bytes[fromTop * rowBytes + (column >> 3)] as number;
      cells[(height - 1 - fromTop) * width + column] = (byte >> (column & 7)) & 1;
    }
  }
  return { width, height, cells };
}
