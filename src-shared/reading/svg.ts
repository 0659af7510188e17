/**
 * Drawings as SVG text, let in only if they can do nothing but be drawn.
 *
 * A drawing is later shown as an image, where browsers run no scripts and
 * fetch nothing. This gate comes before that, so that nothing rests on the
 * browser alone. It looks at the text rather than at what a parser would make
 * of it: what merely looks like a script is refused too.
 */
import { problemError, type SvgDanger } from '../problem/index.ts';

export interface SvgDrawing {
  readonly text: string;
  /** The size to draw it at: as it states its proportion, with the longer side {@link SVG_SIDE} pixels. */
  readonly width: number;
  readonly height: number;
}

/** Longer drawings are refused: 4 MB of lines and curves are no chart. */
export const MOST_SVG_BYTES = 4 * 1024 * 1024;

/** A drawing has no pixels of its own; this many along its longer side show every cell of a chart. */
export const SVG_SIDE = 1600;

/** Elements that run, or bring in a document of their own. */
const SCRIPTS = /<\s*(?:[\w.-]+:)?(?:script|handler|listener)\b|javascript:/i;
const FOREIGN = /<\s*(?:[\w.-]+:)?(?:foreignobject|iframe|object|embed|audio|video|canvas)\b/i;
const HANDLER = /[\s"'/]on[a-z]+\s*=/i;
const DOCUMENT_TYPE = /<!\s*(?:doctype|entity|element|attlist)|<\?xml-stylesheet/i;

/** References may only point into the drawing itself or hold a picture. */
const INSIDE = /^\s*(?:#|data:image\/(?:png|jpeg|webp);)/i;
const REFERENCES = [/\b(?:href|src)\s*=\s*(?:"([^"]*)"|'([^']*)')/gi, /url\(\s*(?:"([^"]*)"|'([^']*)'|([^)]*))/gi];
/** Style sheets have more ways to name a file, and backslashes spell any of them differently. */
const STYLE_REFERENCES = /@import|image-set\s*\(|\bsrc\s*\(|\\/i;

/** True for bytes that begin as an SVG does: with its element, or with what may stand before it. */
export function isSvg(bytes: Uint8Array): boolean {
  const start = String.fromCharCode(...bytes.subarray(0, 4096)).replace(/^(?:\xef\xbb\xbf)?\s*/, '');
  return start.startsWith('<') && /<(?:[\w.-]+:)?svg[\s>/]/.test(start);
}

/** Throws `file-too-large`. */
export function assertSvgLength(bytes: Uint8Array): void {
  if (bytes.length > MOST_SVG_BYTES)
    throw problemError('file-too-large', { bytes: bytes.length, most: MOST_SVG_BYTES });
}

/** `text` was UTF-8. Throws `svg-unsafe`, or `picture-broken` for one that says it was not. */
export function readSvg(text: string): SvgDrawing {
  // In another encoding the browser would read other letters than were looked at here.
  const encoding = /^\s*<\?xml[^>]*\bencoding\s*=\s*["']([^"']*)["']/i.exec(text)?.[1];
  if (encoding !== undefined && !/^(?:utf-8|us-ascii)$/i.test(encoding)) {
    throw problemError('picture-broken', { kind: 'SVG', damage: 'encoding' });
  }
  const danger = dangerIn(text);
  if (danger !== null) throw problemError('svg-unsafe', { danger });
  return { text, ...sizeOf(text) };
}

function dangerIn(text: string): SvgDanger | null {
  // Comments and CDATA marks can hide a word by standing in it, or be hidden in one another: look with and without them.
  const bare = text.replace(/<!--[\s\S]*?-->/g, '').replace(/<!\[CDATA\[|\]\]>/g, '');
  for (const seen of [unescaped(text), unescaped(bare)]) {
    if (DOCUMENT_TYPE.test(seen)) return 'document-type';
    if (SCRIPTS.test(seen)) return 'script';
    if (HANDLER.test(seen)) return 'handler';
    if (FOREIGN.test(seen)) return 'foreign';
    if (STYLE_REFERENCES.test(seen) || leavesDrawing(seen)) return 'outside';
  }
  return null;
}

function leavesDrawing(text: string): boolean {
  return REFERENCES.some((reference) =>
    [...text.matchAll(reference)].some(
      ([, ...quoted]) => !INSIDE.test(quoted.find((part) => part !== undefined) ?? ''),
    ),
  );
}

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** The text with its character references resolved. */
function unescaped(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(amp|lt|gt|quot|apos));/gi, (whole, hex, decimal, name) => {
    if (typeof name === 'string') return NAMED[name.toLowerCase()] ?? whole;
    const code = typeof hex === 'string' ? Number.parseInt(hex, 16) : Number(decimal);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}

/** The proportion comes from the view box, else from width and height where they are plain lengths, else it is square. */
function sizeOf(text: string): { width: number; height: number } {
  const root = /<(?:[\w.-]+:)?svg\b[^>]*>/.exec(text)?.[0] ?? '';
  const attribute = (name: string): string | undefined =>
    new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(root)?.[1];
  const box = attribute('viewBox')
    ?.trim()
    .split(/[\s,]+/)
    .map(Number);
  const length = (name: string): number =>
    Number(/^\s*([\d.]+)(?:px|mm|cm|in|pt|pc)?\s*$/.exec(attribute(name) ?? '')?.[1]);
  const [width, height] = box?.length === 4 ? [box[2], box[3]] : [length('width'), length('height')];
  const isSize =
    width !== undefined && height !== undefined && width > 0 && height > 0 && Number.isFinite(width / height);
  const aspect = isSize ? Math.min(50, Math.max(1 / 50, width / height)) : 1;
  return aspect >= 1
    ? { width: SVG_SIDE, height: Math.round(SVG_SIDE / aspect) }
    : { width: Math.round(SVG_SIDE * aspect), height: SVG_SIDE };
}
