/** The samples of a JPEG's components as red, green and blue (JFIF, ITU-T T.871, clause 7; Adobe's segment APP14). */
import type { JpegFrame } from './jpeg-segments.ts';

interface Samples {
  readonly samples: Uint8ClampedArray;
  readonly stride: number;
}

/** Turns row `row` of the samples into opaque pixels; components with fewer samples are repeated. */
export function rgbaOf(
  frame: JpegFrame,
  planes: readonly Samples[],
  adobeTransform: number | null,
): (row: number, rgba: Uint8Array) => void {
  const { width, components, mostAcross, mostDown } = frame;
  const lines = components.map(() => new Uint8Array(width));
  const spread = (row: number): void =>
    components.forEach(({ across, down }, index) => {
      const { samples, stride } = planes[index] as Samples;
      const start = Math.floor((row * down) / mostDown) * stride;
      const line = lines[index] as Uint8Array;
      if (across === mostAcross) line.set(samples.subarray(start, start + width));
      else if (2 * across === mostAcross) for (let x = 0; x < width; x++) line[x] = samples[start + (x >> 1)] as number;
      else for (let x = 0; x < width; x++) line[x] = samples[start + Math.floor((x * across) / mostAcross)] as number;
    });
  const [one, two, three, four] = lines as [Uint8Array, Uint8Array, Uint8Array, Uint8Array];
  const isYcc =
    components.length === 4 ? adobeTransform === 2 : components.length === 3 && isYccOf(frame, adobeTransform);
  return (row, rgba) => {
    spread(row);
    if (components.length === 1) grey(one, rgba);
    else {
      if (isYcc) fromYcc(one, two, three, components.length === 4 ? 255 : 0, rgba);
      else asTheyAre(one, two, three, rgba);
      // Adobe stores how much light each ink lets through; without its segment it is how much ink there is.
      if (components.length === 4) underBlack(four, adobeTransform !== null, rgba);
    }
  };
}

/** Three components are YCbCr unless Adobe's segment or their names say otherwise. */
function isYccOf({ components }: JpegFrame, adobeTransform: number | null): boolean {
  if (adobeTransform !== null) return adobeTransform !== 0;
  return String.fromCharCode(...components.map(({ id }) => id)) !== 'RGB';
}

function grey(line: Uint8Array, rgba: Uint8Array): void {
  for (let x = 0, to = 0; x < line.length; x++, to += 4) {
    rgba[to] = rgba[to + 1] = rgba[to + 2] = line[x] as number;
    rgba[to + 3] = 255;
  }
}

function asTheyAre(one: Uint8Array, two: Uint8Array, three: Uint8Array, rgba: Uint8Array): void {
  for (let x = 0, to = 0; x < one.length; x++, to += 4) {
    rgba[to] = one[x] as number;
    rgba[to + 1] = two[x] as number;
    rgba[to + 2] = three[x] as number;
    rgba[to + 3] = 255;
  }
}

/** 1.402, 0.344136, 0.714136 and 1.772 in 1/65536, rounded. `flip` 255 turns each round: inks are the lack of light. */
function fromYcc(luma: Uint8Array, blueness: Uint8Array, redness: Uint8Array, flip: number, rgba: Uint8Array): void {
  for (let x = 0, to = 0; x < luma.length; x++, to += 4) {
    const y = ((luma[x] as number) << 16) + 32768;
    const cb = (blueness[x] as number) - 128;
    const cr = (redness[x] as number) - 128;
    rgba[to] = within((y + 91881 * cr) >> 16) ^ flip;
    rgba[to + 1] = within((y - 22554 * cb - 46802 * cr) >> 16) ^ flip;
    rgba[to + 2] = within((y + 116130 * cb) >> 16) ^ flip;
    rgba[to + 3] = 255;
  }
}

function within(sample: number): number {
  return sample < 0 ? 0 : sample > 255 ? 255 : sample;
}

function underBlack(black: Uint8Array, isLight: boolean, rgba: Uint8Array): void {
  for (let x = 0, to = 0; x < black.length; x++, to += 4) {
    const light = isLight ? (black[x] as number) : 255 - (black[x] as number);
    for (let part = to; part < to + 3; part++) {
      const ink = isLight ? (rgba[part] as number) : 255 - (rgba[part] as number);
      rgba[part] = Math.round((ink * light) / 255);
    }
  }
}
