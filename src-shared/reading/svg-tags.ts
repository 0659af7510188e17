/**
 * The elements of a drawing, read in one walk that never looks back, so that no
 * text takes longer than its length.
 *
 * This is no XML parser: it reads what a browser would draw, and refuses what is
 * not well formed, which a browser would not draw either (XML 1.0, 2.1).
 */
import { problemError, type ProblemError } from '../problem/index.ts';

export interface SvgTag {
  /** Without its prefix. */
  readonly name: string;
  /** By name without prefix; of two with different values the later by its full name, so one without prefix keeps its own. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: SvgTag[];
  /** The letters directly in it. */
  text: string;
}

/** Elements within elements; a browser's own bound is 5000. */
const DEEPEST = 256;

const NAME = /[^\s<>/="']+/y;
const ATTRIBUTE = /\s+([^\s<>/="']+)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/y;
const TAG_END = /\s*(\/?)>/y;

/** The outermost element. Throws `picture-broken`, or what `count` throws; it is called for each element. */
export function svgRoot(text: string, count: () => void): SvgTag {
  const open: SvgTag[] = [];
  let root: SvgTag | null = null;
  for (let at = 0; at < text.length;) {
    const next = text.indexOf('<', at);
    const end = next < 0 ? text.length : next;
    const inside = open.at(-1);
    if (inside) inside.text += unescaped(text.slice(at, end));
    if (next < 0) break;
    if (text.startsWith('<!--', next)) at = after(text, '-->', next + 4);
    else if (text.startsWith('<?', next)) at = after(text, '?>', next + 2);
    else if (text.startsWith('<![CDATA[', next)) {
      at = after(text, ']]>', next + 9);
      if (inside) inside.text += text.slice(next + 9, at - 3);
    } else if (text.startsWith('</', next)) {
      at = after(text, '>', next + 2);
      if (open.pop()?.name !== localName(text.slice(next + 2, at - 1).trim())) throw malformed();
    } else {
      const [tag, isClosed, past] = tagAt(text, next + 1);
      count();
      if (inside) inside.children.push(tag);
      else if (root === null) root = tag;
      else throw malformed();
      if (!isClosed && open.push(tag) > DEEPEST) throw malformed();
      at = past;
    }
  }
  if (root === null || open.length > 0) throw malformed();
  return root;
}

function tagAt(text: string, at: number): [tag: SvgTag, isClosed: boolean, past: number] {
  const name = match(NAME, text, at);
  if (name === null) throw malformed();
  const attributes = new Map<string, string>();
  at += name[0].length;
  for (;;) {
    const attribute = match(ATTRIBUTE, text, at);
    if (attribute === null) break;
    const full = attribute[1] as string;
    const value = unescaped(attribute[2] ?? (attribute[3] as string));
    const local = localName(full);
    attributes.set((attributes.get(local) ?? value) === value ? local : full, value);
    at += attribute[0].length;
  }
  const end = match(TAG_END, text, at);
  if (end === null) throw malformed();
  return [{ name: localName(name[0]), attributes, children: [], text: '' }, end[1] === '/', at + end[0].length];
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function localName(name: string): string {
  return name.slice(name.lastIndexOf(':') + 1);
}

function after(text: string, mark: string, from: number): number {
  const at = text.indexOf(mark, from);
  if (at < 0) throw malformed();
  return at + mark.length;
}

function malformed(): ProblemError {
  return problemError('picture-broken', { kind: 'SVG', damage: 'drawing' });
}

/** Character references of XML (XML 1.0, 4.1 and 4.6), resolved. */

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** The text as a parser hands it on. */
export function unescaped(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(amp|lt|gt|quot|apos));/gi, (whole, hex, decimal, name) => {
    if (typeof name === 'string') return NAMED[name.toLowerCase()] ?? whole;
    const code = typeof hex === 'string' ? Number.parseInt(hex, 16) : Number(decimal);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}
