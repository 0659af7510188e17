/**
 * How much there is to draw in an SVG, counted before it is drawn.
 *
 * A few lines can stand for billions of shapes: one that is used ten times, in
 * one that is used ten times, and so on. So everything counts as often as it
 * would be drawn: by being used, or as pattern, marker, mask or clip of others.
 */
import { problemError, type ProblemError } from '../problem/index.ts';
import { checkPictureFile } from './picture-file.ts';
import type { SvgTag } from './svg-tags.ts';

/** Shapes, or four bytes each of outlines and lettering: a chart of 300 × 300 cells twice over. */
export const MOST_SVG_WORK = 200_000;

/** What an effect on a part of the drawing counts: it is drawn aside and laid on, some millions of pixels. */
const EFFECT = 2000;

/** Pixels of a picture inside that count as one shape. */
const PIXELS = 500;

/** Effects whose cost no count of shapes says anything about. */
const COSTLY =
  /^fe(?:Turbulence|ConvolveMatrix|Morphology|DiffuseLighting|SpecularLighting|DisplacementMap|Image|Tile)$/;

const MOVING = /^(?:set|animate\w*|mpath)$/;
const MOVING_STYLE = /@keyframes|\banimation\b|\btransition\b/i;

const REFERENCE = /url\(\s*["']?\s*#([^"')\s]+)/g;
const PICTURE = /url\(\s*(?:"\s*(data:[^"]*)"|'\s*(data:[^']*)'|(data:[^)\s]*))/gi;
const EFFECTS = /(?:^|[\s;{"'])(?:filter|backdrop-filter|mask|mix-blend-mode)\s*[:=]/;

/** Throws `svg-too-much`, or what `checkPictureFile` throws for a picture inside. */
export function assertSvgWork(root: SvgTag): void {
  const byId = new Map<string, SvgTag>();
  const styles: string[] = [];
  let elements = 0;
  const note = (tag: SvgTag): void => {
    elements++;
    const id = tag.attributes.get('id');
    if (id !== undefined && !byId.has(id)) byId.set(id, tag);
    if (tag.name === 'style') styles.push(tag.text);
    if (COSTLY.test(tag.name)) throw tooMuch();
    // What moves could begin as little and become much; and which of its moments is meant?
    if (MOVING.test(tag.name)) throw problemError('picture-animated', { kind: 'SVG' });
    tag.children.forEach(note);
  };
  note(root);

  const known = new Map<SvgTag, Weight>();
  /** What is being counted: a shape that uses itself is not drawn. */
  const open = new Set<SvgTag>();
  const weightOf = (tag: SvgTag): Weight => {
    const found = known.get(tag);
    if (found !== undefined) return found;
    if (open.has(tag)) return NOTHING;
    if (open.size > 500) throw tooMuch();
    open.add(tag);
    let [work, shapes] = [ownWork(tag), 1];
    for (const part of [...tag.children, ...used(tag)]) {
      const weight = weightOf(part);
      work += weight.work;
      shapes += weight.shapes;
      if (work > MOST_SVG_WORK) throw tooMuch();
    }
    // Whatever is inside takes on its fill and its markers.
    for (const [name, value] of tag.attributes) {
      for (const [, id] of value.matchAll(REFERENCE)) {
        work += timesDrawn(`${name} ${value}`, work, shapes) * referred(id as string);
        if (work > MOST_SVG_WORK) throw tooMuch();
      }
    }
    open.delete(tag);
    const weight = { work, shapes };
    known.set(tag, weight);
    return weight;
  };
  const used = (tag: SvgTag): SvgTag[] =>
    addressesIn(tag).flatMap((address) => (address.startsWith('#') ? (byId.get(address.slice(1)) ?? []) : []));
  const referred = (id: string): number => {
    const tag = byId.get(id);
    return tag === undefined ? 0 : weightOf(tag).work;
  };

  let { work } = weightOf(root);
  // Rules may go for any element.
  for (const style of styles) {
    if (MOVING_STYLE.test(style)) throw problemError('picture-animated', { kind: 'SVG' });
    if (style.includes('path(')) work += (style.length / 4) * elements;
    if (EFFECTS.test(style)) work += EFFECT * elements;
    work += pixelsInUrls(style) / PIXELS;
    for (const [, id] of style.matchAll(REFERENCE)) work += timesDrawn(style, work, elements) * referred(id as string);
  }
  if (work > MOST_SVG_WORK) throw tooMuch();
}

/** What there is to draw of an element and all in it. */
interface Weight {
  readonly work: number;
  /** Elements, each as often as it is used. */
  readonly shapes: number;
}

const NOTHING: Weight = { work: 0, shapes: 0 };

/**
 * How often what `said` refers to is drawn: in each shape, but a marker at every
 * corner of every outline; and a variable may stand for one.
 */
function timesDrawn(said: string, work: number, shapes: number): number {
  return said.includes('marker') || said.includes('--') ? work : shapes;
}

/** What an element refers to by `href`, with whatever prefix. */
function addressesIn({ attributes }: SvgTag): string[] {
  return [...attributes].flatMap(([name, value]) => (name === 'href' || name.endsWith(':href') ? [value.trim()] : []));
}

function ownWork(tag: SvgTag): number {
  let work = 1 + outline(tag) + tag.text.length / 4;
  const style = tag.attributes.get('style') ?? '';
  if (tag.attributes.has('filter') || tag.attributes.has('mask') || EFFECTS.test(` ${style}`)) work += EFFECT;
  if (style.includes('path(')) work += style.length / 4;
  // Dashes are drawn one by one, at most a million of them.
  if (tag.attributes.has('stroke-dasharray') || style.includes('dasharray')) work += 100;
  if (tag.name.startsWith('fe')) work += EFFECT;
  if (tag.name === 'image') for (const address of addressesIn(tag)) work += pixelsIn(address) / PIXELS;
  for (const value of tag.attributes.values()) work += pixelsInUrls(value) / PIXELS;
  return work;
}

function outline({ attributes }: SvgTag): number {
  return ((attributes.get('d')?.length ?? 0) + (attributes.get('points')?.length ?? 0)) / 4;
}

/** Of the pictures that a style names: backgrounds, for the most part. */
function pixelsInUrls(style: string): number {
  let pixels = 0;
  for (const [, ...quoted] of style.matchAll(PICTURE))
    pixels += pixelsIn(quoted.find((part) => part !== undefined) ?? '');
  return pixels;
}

/** Of a picture that stands in the drawing itself; `readSvg` lets no other through. */
function pixelsIn(address: string): number {
  const comma = address.indexOf(',');
  if (comma < 0) return 0;
  const bytes = /;\s*base64\s*$/i.test(address.slice(0, comma)) ? base64Bytes(address.slice(comma + 1)) : null;
  if (bytes === null) throw problemError('picture-broken', { kind: 'SVG', damage: 'encoding' });
  const file = checkPictureFile(bytes);
  if (file.kind === 'SVG') throw problemError('svg-unsafe', { danger: 'outside' });
  return file.width * file.height;
}

function tooMuch(): ProblemError {
  return problemError('svg-too-much', {});
}

/** Bytes written as base64 (RFC 4648). */

const DIGITS = new Map(
  [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'].map((letter, value) => [
    letter.charCodeAt(0),
    value,
  ]),
);

/** The bytes, blanks and line ends between the letters let be; null for anything else. */
function base64Bytes(text: string): Uint8Array | null {
  const bytes = new Uint8Array(Math.ceil((text.length * 3) / 4));
  let length = 0;
  let bits = 0;
  let held = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 0x20 || (code >= 0x09 && code <= 0x0d)) continue;
    if (code === 0x3d) return /^[=\s]*$/.test(text.slice(at)) ? bytes.subarray(0, length) : null;
    const value = DIGITS.get(code);
    if (value === undefined) return null;
    bits = (bits << 6) | value;
    held += 6;
    if (held >= 8) {
      held -= 8;
      bytes[length++] = (bits >> held) & 255;
    }
  }
  return bytes.subarray(0, length);
}
