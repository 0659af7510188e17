/**
 * The picture of the tube, computed pixel by pixel.
 *
 * Towards the sides many stitches share a pixel, so each pixel is the mean of
 * what it covers: turning stays calm, and no stitch comes and goes. What a
 * pixel covers of a ring depends on the ring's radius alone, so it is worked
 * out once for each radius; turning then costs about one step a pixel, and
 * rows taller than a pixel are copied: 200 × 1000 stitches take 2 ms.
 */
import type { Fabric } from '@shared/fabric/index.ts';
import { rowsBelow, runOf, type LaidRun, type Ring, type Tube } from '@shared/piece/index.ts';

/** Where the tube lies on the picture, in device pixels. */
export interface PixelPlace {
  readonly width: number;
  readonly height: number;
  /** From the left edge to the axis. */
  readonly axis: number;
  /** From the top to the lower edge of the tube. */
  readonly foot: number;
  readonly pixelsPerMm: number;
}

/** What a line of pixels covers of a ring, from the leftmost pixel that it touches. */
interface Cover {
  readonly from: number;
  /** Places where pixels begin and end, as shares of once round; 0 faces us. */
  readonly edges: Float64Array;
  /** How much of each pixel lies on the tube, 0 … 1. */
  readonly share: Float32Array;
  /** The light on each pixel, 0 … 1. */
  readonly light: Float32Array;
}

/** Light at the very sides; the middle has 1. */
const SIDE_LIGHT = 0.5;

/**
 * Light on what turns away: a soft round form, nowhere brighter than the yarn
 * is, so that colours in the middle are those of the flat drawing.
 */
export function lightOn(facing: number): number {
  return SIDE_LIGHT + (1 - SIDE_LIGHT) * Math.sqrt(facing);
}

export class TubePixels {
  readonly #tube: Tube;
  readonly #fabric: Fabric;
  readonly #colours: readonly (readonly [number, number, number])[];
  #place: PixelPlace | null = null;
  #covers = new Map<number, Cover>();
  /** Red, green, blue and share of each pixel of a line. */
  #line = new Float32Array(0);

  /** `colours`: `#rrggbb` of each palette index. */
  constructor(tube: Tube, fabric: Fabric, colours: readonly string[]) {
    this.#tube = tube;
    this.#fabric = fabric;
    this.#colours = colours.map((colour) => {
      const rgb = Number.parseInt(colour.slice(1), 16);
      return [rgb >> 16, (rgb >> 8) & 255, rgb & 255];
    });
  }

  /** Writes the picture, `turn` degrees to the right, into pixels of red, green, blue and alpha; beside the tube it is open. */
  paint(place: PixelPlace, turn: number, pixels: Uint8ClampedArray): void {
    this.#prepare(place);
    const { rings } = this.#tube;
    const bytes = place.width * 4;
    let [paintedFrom, paintedTo] = [-1, -1];
    for (let y = 0; y < place.height; y++) {
      const { from, to } = this.#ringsOn(place, y);
      const start = y * bytes;
      if (from >= to) {
        pixels.fill(0, start, start + bytes);
      } else if (from === paintedFrom && to === paintedTo) {
        pixels.copyWithin(start, start - bytes, start);
      } else {
        this.#line.fill(0);
        for (let index = from; index < to; index++) this.#add(rings[index] as Ring, turn, 1 / (to - from));
        this.#write(pixels, start);
        [paintedFrom, paintedTo] = [from, to];
      }
    }
  }

  /** The rings that a line of pixels shows, `to` not included: rows lower than a pixel share it; others fill the pixels whose middle they hold. */
  #ringsOn({ foot, pixelsPerMm }: PixelPlace, y: number): { readonly from: number; readonly to: number } {
    const { rings, laid } = this.#tube;
    const rowsAt = (pixel: number): number => rowsBelow(laid, (foot - pixel) / pixelsPerMm);
    const at = Math.floor(rowsAt(y + 0.5));
    if (at < 0) return { from: 0, to: 0 };
    const lowest = (laid[0] as LaidRun).first;
    if (runOf(laid, lowest + at).rowMm * pixelsPerMm < 1) {
      const from = Math.max(0, Math.ceil(rowsAt(y + 1) - 0.5));
      const to = Math.min(rings.length, Math.ceil(rowsAt(y) - 0.5));
      if (from < to) return { from, to };
    }
    // Where rows of two heights meet, a pixel may hold the middle of none.
    return { from: at, to: Math.min(rings.length, at + 1) };
  }

  #prepare(place: PixelPlace): void {
    const before = this.#place;
    if (before?.width !== place.width) this.#line = new Float32Array(place.width * 4);
    if (before?.axis !== place.axis || before.pixelsPerMm !== place.pixelsPerMm || before.width !== place.width) {
      this.#covers = new Map();
    }
    this.#place = place;
  }

  /** Adds a ring to the line, so strongly. */
  #add(ring: Ring, turn: number, weight: number): void {
    const { row, first, stitches } = ring;
    if (stitches === 0) return;
    const { from, edges, share, light } = this.#coverOf(ring);
    const { cells, width, first: start } = this.#fabric;
    const base = (row - 1) * width + first - start;
    const [origin, step] = this.#tube.isMirrored ? [base + stitches - 1, -1] : [base, 1];
    const colours = this.#colours;
    const line = this.#line;
    const seam = turn / 360;
    for (let pixel = 0; pixel < share.length; pixel++) {
      const begins = (edges[pixel] as number) - seam;
      const round = begins - Math.floor(begins);
      let at = round * stitches;
      const end = at + ((edges[pixel + 1] as number) - (edges[pixel] as number)) * stitches;
      const strength = ((share[pixel] as number) * weight) / (end - at);
      const lit = strength * (light[pixel] as number);
      const slot = (from + pixel) * 4;
      while (at < end) {
        const place = Math.floor(at);
        const next = Math.min(end, place + 1);
        const colour = colours[cells[origin + step * (place % stitches)] as number];
        if (colour) {
          const part = (next - at) * lit;
          line[slot] = (line[slot] as number) + colour[0] * part;
          line[slot + 1] = (line[slot + 1] as number) + colour[1] * part;
          line[slot + 2] = (line[slot + 2] as number) + colour[2] * part;
          line[slot + 3] = (line[slot + 3] as number) + (next - at) * strength;
        }
        at = next;
      }
    }
  }

  #coverOf({ radiusMm }: Ring): Cover {
    let cover = this.#covers.get(radiusMm);
    if (!cover) this.#covers.set(radiusMm, (cover = coverOf(radiusMm, this.#place as PixelPlace)));
    return cover;
  }

  #write(pixels: Uint8ClampedArray, start: number): void {
    const line = this.#line;
    for (let at = 0; at < line.length; at += 4) {
      const share = line[at + 3] as number;
      // The colours of an ImageData are not multiplied by its alpha.
      for (let channel = 0; channel < 3; channel++) {
        pixels[start + at + channel] = share > 0 ? (line[at + channel] as number) / share : 0;
      }
      pixels[start + at + 3] = share * 255;
    }
  }
}

function coverOf(radiusMm: number, { axis, width, pixelsPerMm }: PixelPlace): Cover {
  const radius = radiusMm * pixelsPerMm;
  const from = Math.max(0, Math.floor(axis - radius));
  const count = Math.max(0, Math.min(width, Math.ceil(axis + radius)) - from);
  const onTube = (x: number): number => Math.min(1, Math.max(-1, (x - axis) / radius));
  const edges = Float64Array.from({ length: count + 1 }, (_, at) => Math.asin(onTube(from + at)) / (2 * Math.PI));
  const share = Float32Array.from({ length: count }, (_, at) => radius * (onTube(from + at + 1) - onTube(from + at)));
  const light = Float32Array.from({ length: count }, (_, at) => {
    const x = (onTube(from + at) + onTube(from + at + 1)) / 2;
    return lightOn(Math.sqrt(1 - x * x));
  });
  return { from, edges, share, light };
}
