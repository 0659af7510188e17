/** A photo of noise, which packs worse than anything a camera sees. */
import jpeg from 'jpeg-js';

const BLOCK = 8;
/** The markers after which JPEG codes go on anew (ITU-T T.81, E.1.4), numbered 0 … 7 in turn. */
const FIRST_RESTART = 0xd0;

/**
 * A JPEG of `width` × `height` pixels, both multiples of 8. Eight rows are made
 * and stand in it again and again, parted by restart markers: to encode millions of
 * pixels would take longer than all that is to be tested.
 */
export function noisyPhoto(width: number, height: number, quality: number): Buffer {
  const data = Buffer.alloc(width * BLOCK * 4, 255);
  let chance = 1;
  for (let at = 0; at < data.length; at++) {
    chance = (Math.imul(chance, 1_664_525) + 1_013_904_223) >>> 0;
    if (at % 4 < 3) data[at] = chance >>> 24;
  }
  const { data: strip } = jpeg.encode({ width, height: BLOCK, data }, quality);
  const frame = strip.indexOf(Buffer.from([0xff, 0xc0]));
  strip.writeUInt16BE(height, frame + 5);
  const scan = strip.indexOf(Buffer.from([0xff, 0xda]));
  const codesFrom = scan + 2 + strip.readUInt16BE(scan + 2);
  const codes = strip.subarray(codesFrom, -2);
  const interval = Buffer.from([0xff, 0xdd, 0, 4, 0, 0]);
  interval.writeUInt16BE(width / BLOCK, 4);
  const parts = [strip.subarray(0, scan), interval, strip.subarray(scan, codesFrom)];
  for (let row = 0; row < height / BLOCK; row++) {
    if (row > 0) parts.push(Buffer.from([0xff, FIRST_RESTART + ((row - 1) % 8)]));
    parts.push(codes);
  }
  return Buffer.concat([...parts, strip.subarray(-2)]);
}
