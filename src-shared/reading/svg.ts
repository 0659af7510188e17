/**
 * Drawings as SVG text, let in only if they can do nothing but be drawn.
 *
 * A drawing is later shown as an image, where browsers run no scripts and
 * fetch nothing. This gate comes before that, so that nothing rests on the
 * browser alone. It looks at the text rather than at what a parser would make
 * of it: what merely looks like a script is refused too.
 */
import { problemError } from '../problem/index.ts';
import type { SvgDanger } from './problems.ts';
import { unescaped, svgRoot, type SvgTag } from './svg-tags.ts';
import { assertSvgWork, MOST_SVG_WORK } from './svg-work.ts';

export interface SvgDrawing {
  readonly text: string;
  /** The size to draw it at: as it states its proportion, with the longer side {@link SVG_SIDE} pixels. */
  readonly width: number;
  readonly height: number;
}

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

/**
 * `text` was UTF-8. Throws `svg-unsafe`, `svg-too-much`, or `picture-broken` for
 * one that says it was not UTF-8, is not well formed, or holds a broken picture.
 */
export function readSvg(text: string): SvgDrawing {
  // In another encoding the browser would read other letters than were looked at here.
  const encoding = /^\s*<\?xml[^>]*\bencoding\s*=\s*["']([^"']*)["']/i.exec(text)?.[1];
  if (encoding !== undefined && !/^(?:utf-8|us-ascii)$/i.test(encoding)) {
    throw problemError('picture-broken', { kind: 'SVG', damage: 'encoding' });
  }
  const danger = dangerIn(text);
  if (danger !== null) throw problemError('svg-unsafe', { danger });
  let elements = 0;
  const root = svgRoot(text.replace(/^\ufeff/, ''), () => {
    if (++elements > MOST_SVG_WORK) throw problemError('svg-too-much', {});
  });
  assertSvgWork(root);
  return { text, ...sizeOf(root) };
}

function dangerIn(text: string): SvgDanger | null {
  // Comments and CDATA marks can hide a word by standing in it, or be hidden in one another: look with and without them.
  const bare = withoutComments(text).replace(/<!\[CDATA\[|\]\]>/g, '');
  for (const seen of [unescaped(text), unescaped(bare)]) {
    if (DOCUMENT_TYPE.test(seen)) return 'document-type';
    if (SCRIPTS.test(seen)) return 'script';
    if (HANDLER.test(seen)) return 'handler';
    if (FOREIGN.test(seen)) return 'foreign';
    if (STYLE_REFERENCES.test(seen) || leavesDrawing(seen)) return 'outside';
  }
  return null;
}

/** By hand: a pattern would look for the end of each `<!--` anew, though there is none. */
function withoutComments(text: string): string {
  const kept: string[] = [];
  for (let at = 0; ;) {
    const start = text.indexOf('<!--', at);
    const end = start < 0 ? -1 : text.indexOf('-->', start + 4);
    if (end < 0) return kept.join('') + text.slice(at);
    kept.push(text.slice(at, start));
    at = end + 3;
  }
}

function leavesDrawing(text: string): boolean {
  return REFERENCES.some((reference) =>
    [...text.matchAll(reference)].some(
      ([, ...quoted]) => !INSIDE.test(quoted.find((part) => part !== undefined) ?? ''),
    ),
  );
}

/** The proportion comes from the view box, else from width and height where they are plain lengths, else it is square. */
function sizeOf(root: SvgTag): { width: number; height: number } {
  const attribute = (name: string): string | undefined => root.attributes.get(name);
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
