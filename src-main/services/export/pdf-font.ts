/**
 * The fonts of a PDF, asked for strings as its pages hold them.
 *
 * The library shapes and measures a string up to three times whenever it sets
 * it, by rules of the font that it first has to read; and a sheet of many pages
 * says the same few words and numbers over and over. Here each string is shaped
 * once for all pages, and what is of known characters alone by how near these
 * stand together, which was looked up in the font beforehand.
 */
import type PDFDocument from 'pdfkit';
import { kerningOf, type Kerning, type Unit } from './kerned.ts';

type Pdf = InstanceType<typeof PDFDocument>;

/** A string as an operator `TJ` takes it (ISO 32000, 9.4.3). */
export interface Shaped {
  readonly glyphs: string;
  /** In 1/1000 of the size of the font. */
  readonly width: number;
}

interface Glyph {
  readonly id: number;
  readonly advanceWidth: number;
  readonly codePoints: number[];
}

/** What the library has of an embedded font; its types leave it out. */
interface EmbeddedFont {
  readonly id: string;
  /** The font's own units as 1/1000 of its size. */
  readonly scale: number;
  readonly font: {
    glyphForCodePoint(codePoint: number): Glyph;
    getGlyph(id: number, codePoints: readonly number[]): Glyph;
    /** The bytes of the file, and where its tables begin in them. */
    readonly stream: { readonly buffer: Uint8Array };
    readonly directory: { readonly tables: { readonly post: { readonly offset: number } } };
    /** The tables that were read. */
    readonly _tables: { post?: unknown };
  };
  /** What is embedded: the glyphs that were included, by the number that they have in it. */
  readonly subset: { includeGlyph(id: number): number };
  readonly widths: (number | undefined)[];
  readonly unicode: (number[] | undefined)[];
  /** The font's object in the file. */
  ref(): unknown;
  /** Glyphs as four hexadecimal digits each, and where they go. The glyphs become part of what is embedded. */
  encode(text: string): [glyphs: string[], positions: Position[]];
}

interface Position {
  readonly xAdvance: number;
  /** Without kerning. */
  readonly advanceWidth: number;
  readonly xOffset: number;
  readonly yOffset: number;
}

interface WithFonts {
  readonly _font: EmbeddedFont;
  readonly page: { readonly fonts: Record<string, unknown> };
}

/** A glyph as it is embedded. */
interface Included {
  readonly glyph: string;
  /** In 1/1000 of the size of the font. */
  readonly advance: number;
}

/**
 * Where a string may be parted before it is shaped: the library itself shapes
 * word by word, each with the space behind it, and no two figures of this font
 * are drawn nearer together, being made for tables. Most words of a sheet are
 * needles and rows: there are three times as many as there are parts of them.
 */
const BETWEEN_PARTS = /(?<=[ \t])|(?<=\d)(?=\d)/;

export class PdfFont {
  private readonly strings = new Map<string, Shaped | null>();
  private readonly parts = new Map<string, Shaped | null>();
  private readonly units = new Map<Unit, Included>();

  private constructor(
    private readonly pdf: WithFonts,
    private readonly font: EmbeddedFont,
    private readonly kerning: Kerning,
  ) {}

  /** The font of this name, which `pdf` has been given, and of this weight. */
  static of(pdf: Pdf, name: string, weight: 'regular' | 'semibold'): PdfFont {
    const withFonts = pdf.font(name) as unknown as WithFonts;
    withoutNames(withFonts._font);
    return new PdfFont(withFonts, withFonts._font, kerningOf(weight));
  }

  /** Its name in what a page holds. The page that is drawn on has it from then on. */
  onPage(): string {
    const { fonts } = this.pdf.page;
    fonts[this.font.id] ??= this.font.ref();
    return this.font.id;
  }

  /** Null for a string with glyphs that stand above or below others, which the library sets itself. */
  shape(text: string): Shaped | null {
    return once(this.strings, text, () => this.set(text) ?? this.shapeByParts(text));
  }

  /** Glyph by glyph; null where it is not known how near some of them stand together. */
  private set(text: string): Shaped | null {
    const set = this.kerning.set(text);
    if (set === null) return null;
    let glyphs = '';
    let width = 0;
    for (const { unit, before } of set) {
      const { glyph, advance } = once(this.units, unit, () => this.included(unit));
      // What `TJ` is given is taken from where the next glyph would stand.
      if (before !== 0) glyphs += `>${numberText(-before)}<`;
      glyphs += glyph;
      width += before + advance;
    }
    return { glyphs: glyphs === '' ? '' : `<${glyphs}>`, width };
  }

  /** As the library's `encode` includes a glyph, which would look for rules that hold for it. */
  private included({ text, glyph }: Unit): Included {
    const { font, subset, widths, unicode, scale } = this.font;
    const codePoints = [...text].map((character) => character.codePointAt(0) as number);
    const own = glyph === null ? font.glyphForCodePoint(codePoints[0] as number) : font.getGlyph(glyph, codePoints);
    const number = subset.includeGlyph(own.id);
    const advance = own.advanceWidth * scale;
    widths[number] ??= advance;
    unicode[number] ??= own.codePoints;
    return { glyph: number.toString(16).padStart(4, '0'), advance };
  }

  private shapeByParts(text: string): Shaped | null {
    let glyphs = '';
    let width = 0;
    for (const part of text.split(BETWEEN_PARTS)) {
      const shaped = once(this.parts, part, () => this.set(part) ?? shapedBy(this.font, part));
      if (shaped === null) return null;
      glyphs += shaped.glyphs;
      width += shaped.width;
    }
    return { glyphs: glyphs.replaceAll('><', ''), width };
  }
}

/**
 * Reads the two things that are embedded of the table `post` (OpenType 1.9). The library reads the
 * names of all 2,000 glyphs with them, which nobody asks for.
 */
function withoutNames({ font }: EmbeddedFont): void {
  const { buffer } = font.stream;
  const table = new DataView(buffer.buffer, buffer.byteOffset + font.directory.tables.post.offset);
  font._tables.post = { italicAngle: table.getInt32(4) / 0x10000, isFixedPitch: table.getUint32(12) };
}

function once<Key, Value>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = make();
  known.set(key, made);
  return made;
}

function shapedBy(font: EmbeddedFont, text: string): Shaped | null {
  const [glyphs, positions] = font.encode(text);
  let width = 0;
  let set = '';
  for (const [index, { xAdvance, advanceWidth, xOffset, yOffset }] of positions.entries()) {
    if (xOffset !== 0 || yOffset !== 0) return null;
    width += xAdvance;
    set += `<${glyphs[index] as string}>`;
    // What `TJ` is given is taken from where the next glyph would stand.
    if (xAdvance !== advanceWidth) set += numberText(advanceWidth - xAdvance);
  }
  return { glyphs: set, width };
}

/** At most six decimals, which JavaScript still writes without an exponent: a PDF knows none. */
export function numberText(value: number): string {
  return String(Math.round(value * 1e6) / 1e6 || 0);
}
