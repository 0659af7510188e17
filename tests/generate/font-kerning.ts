/**
 * Writes how much nearer two characters stand together in the sheet's font, so
 * that a PDF is set without the font's own tables: `npx tsx tests/generate/font-kerning.ts`.
 */
import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { format, resolveConfig } from 'prettier';
import { openFont, type OpenFont, type Weight } from './font-widths.ts';

/** Printable ASCII, and what else the words of a sheet have. */
const CHARACTERS = [...Array.from({ length: 95 }, (_, at) => String.fromCharCode(32 + at)), ...'°·×½éöü–’“”…•÷²−√☐✓'];

/** Become one glyph, for which a character stands here that no text has. */
const LIGATURES: Readonly<Record<string, string>> = { ff: '\ue000', ft: '\ue001' };

export interface ShapingFont extends OpenFont {
  glyphForCodePoint(codePoint: number): { readonly id: number; readonly advanceWidth: number };
  layout(text: string): {
    readonly advanceWidth: number;
    readonly glyphs: readonly Own[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  };
}

export interface Kerning {
  /** That are set one by one, each as the glyph that the font has for it. */
  readonly characters: string;
  /** What else is set as one glyph: the character that stands for it in the pairs, and the glyph's number in the font. */
  readonly ligatures: Readonly<Record<string, { readonly standsIn: string; readonly glyph: number }>>;
  /**
   * `A\t-20 CO\t-8 Vv`: a line for each first of two characters, which begins with it; then so much is added between
   * (1/1000 em), and the second characters that it holds for.
   */
  readonly pairs: string;
}

/** As the font's own reader sets them. Throws where characters are set as other glyphs than their own and the ligatures. */
export function kerningOf(weight: Weight): Kerning {
  const font = openFont(weight) as ShapingFont;
  const characters = CHARACTERS.filter((one) => font.hasGlyphForCodePoint(one.codePointAt(0) as number));
  const own = new Map<string, Own>(
    characters.map((one) => [one, font.glyphForCodePoint(one.codePointAt(0) as number)]),
  );
  const ligatures: Record<string, { standsIn: string; glyph: number }> = {};
  for (const [text, standsIn] of Object.entries(LIGATURES)) {
    const [glyph, ...others] = font.layout(text).glyphs;
    if (!glyph || others.length > 0) throw new Error(`“${text}” is not set as one glyph`);
    own.set(text, glyph);
    ligatures[text] = { standsIn, glyph: glyph.id };
  }
  const pairs: string[] = [];
  for (const first of own.keys()) {
    const seconds = new Map<number, string>();
    for (const second of own.keys()) {
      if (Object.hasOwn(LIGATURES, first + second)) continue;
      // Three of them become yet other glyphs, which no word of a sheet has.
      if (/ff[ft]/.test(first + second)) continue;
      const between = betweenAll(font, [first, second], own);
      if (between !== 0) seconds.set(between, (seconds.get(between) ?? '') + (LIGATURES[second] ?? second));
    }
    if (seconds.size === 0) continue;
    const groups = [...seconds].map(([added, after]) => `${added} ${after}`);
    pairs.push([LIGATURES[first] ?? first, ...groups].join('\t'));
  }
  return { characters: characters.join(''), ligatures, pairs: pairs.join('\n') };
}

interface Own {
  readonly id: number;
  readonly advanceWidth: number;
}

/** What stands between two, in 1/1000 em, each beyond its own width. Throws where they are not set as their own glyphs. */
function betweenAll(font: ShapingFont, parts: readonly [string, string], own: ReadonlyMap<string, Own>): number {
  const { glyphs, positions } = font.layout(parts.join(''));
  const [first, second] = parts.map((part) => own.get(part) as Own) as [Own, Own];
  const [one, other] = positions;
  const isOwn = glyphs.length === 2 && glyphs[0]?.id === first.id && glyphs[1]?.id === second.id;
  const isLevel = positions.every(({ xOffset, yOffset }) => xOffset === 0 && yOffset === 0);
  if (!one || !isOwn || !isLevel || other?.xAdvance !== second.advanceWidth)
    throw new Error(`“${parts.join('')}” is not set as two glyphs of its own`);
  return ((one.xAdvance - first.advanceWidth) * 1000) / font.unitsPerEm;
}

if (process.argv[1] === import.meta.filename) {
  const file = resolve(import.meta.dirname, '../../src-main/services/export/kerning.ts');
  const { regular, semibold } = { regular: kerningOf('regular'), semibold: kerningOf('semibold') };
  const text =
    '// Written by tests/generate/font-kerning.ts from Source Sans 3 (SIL Open Font License 1.1). Do not edit.\n' +
    `export const KERNING = ${JSON.stringify({ regular, semibold })} as const;\n`;
  writeFileSync(file, await format(text, { ...(await resolveConfig(file)), parser: 'typescript' }));
}
