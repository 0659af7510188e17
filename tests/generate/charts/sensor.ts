/** What a camera makes of what stands before it: light on the sensor, a soft lens, grain, and the file. */
import { decode, encode } from 'jpeg-js';
import type { Corners, Picture } from '@shared/reading/index.ts';
import type { Place, View } from './camera.ts';
import type { Rgb } from './drawn-chart.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Two by two looks a pixel: edges come out soft as on a sensor. */
const LOOKS = [1 / 4, 3 / 4];

/** Three numbers a pixel, of a sheet that has `colourAt` its places. */
export function exposed({ width, height }: Size, view: View, colourAt: (x: number, y: number) => Rgb): Float32Array {
  const values = new Float32Array(width * height * 3);
  const place: Place = { x: 0, y: 0 };
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = (y * width + x) * 3;
      for (const dy of LOOKS) {
        for (const dx of LOOKS) {
          view.toSheet(x + dx, y + dy, place);
          const colour = colourAt(place.x, place.y);
          for (let c = 0; c < 3; c++) values[at + c] = (values[at + c] as number) + (colour[c] as number) / 4;
        }
      }
    }
  }
  return values;
}

/** Where the corners of a chart on the sheet are in the picture: its own top left first. */
export function cornersSeen(view: View, { width, height }: Size): Corners {
  const corner = (x: number, y: number): Place => view.toPicture(x, y);
  return [corner(0, 0), corner(width, 0), corner(width, height), corner(0, height)];
}

/** Gaussian blur, across and then down. */
export function blurred(values: Float32Array, { width, height }: Size, deviation: number): Float32Array {
  const reach = Math.ceil(2.5 * deviation);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * deviation ** 2)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const pass = (from: Float32Array, isDown: boolean): Float32Array => {
    const to = new Float32Array(from.length);
    const step = isDown ? width * 3 : 3;
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const at = (y * width + x) * 3;
        const [place, last] = isDown ? [y, height - 1] : [x, width - 1];
        for (let k = -reach; k <= reach; k++) {
          const near = at + (Math.min(last, Math.max(0, place + k)) - place) * step;
          const weight = (weights[k + reach] as number) / total;
          for (let c = 0; c < 3; c++) to[at + c] = (to[at + c] as number) + weight * (from[near + c] as number);
        }
      }
    }
    return to;
  };
  return pass(pass(values, false), true);
}

/** The picture, `grain` being the noise of each of its values in sRGB steps. */
export function grained(values: Float32Array, { width, height }: Size, grain: () => number): Picture {
  const rgba = new Uint8ClampedArray(width * height * 4);
  for (let pixel = 0; pixel < width * height; pixel++) {
    for (let c = 0; c < 3; c++) rgba[pixel * 4 + c] = (values[pixel * 3 + c] as number) + grain();
    rgba[pixel * 4 + 3] = 255;
  }
  return { width, height, rgba };
}

/** The picture as it comes back out of a JPEG file. */
export function throughJpeg({ width, height, rgba }: Picture, quality: number): Picture {
  const file = encode({ width, height, data: rgba }, quality);
  return { width, height, rgba: new Uint8ClampedArray(decode(file.data, { useTArray: true }).data) };
}
