/**
 * Writes the advance widths of the sheet's font, so that text can be laid out
 * without a font file: `npx tsx tests/generate/font-widths.ts`.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import PDFDocument from 'pdfkit';

/** What is used here of the font that pdfkit opens. */
export interface OpenFont {
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly characterSet: readonly number[];
  glyphForCodePoint(codePoint: number): { readonly advanceWidth: number };
  hasGlyphForCodePoint(codePoint: number): boolean;
  layout(text: string): { readonly advanceWidth: number };
}

const require = createRequire(import.meta.url);
const FILES = { regular: '400Regular/SourceSans3_400Regular.ttf', semibold: '600SemiBold/SourceSans3_600SemiBold.ttf' };

export type Weight = keyof typeof FILES;

/** The font file of a weight, opened by pdfkit's own reader. */
export function openFont(weight: Weight): OpenFont {
  const bytes = readFileSync(require.resolve(`@expo-google-fonts/source-sans-3/${FILES[weight]}`));
  const document = new PDFDocument({ autoFirstPage: false }).font(bytes as unknown as PDFKit.Mixins.PDFFontSource);
  return (document as unknown as { _font: { font: OpenFont } })._font.font;
}

/** `20 200 289|a0 200`: for each run of characters its first code point (hexadecimal) and their widths in 1/1000 em. */
export function encodeWidths(font: OpenFont): string {
  const runs: string[] = [];
  let next = -1;
  for (const codePoint of [...font.characterSet].sort((a, b) => a - b)) {
    const width = Math.round((font.glyphForCodePoint(codePoint).advanceWidth * 1000) / font.unitsPerEm);
    if (codePoint === next) runs[runs.length - 1] += ` ${width}`;
    else runs.push(`${codePoint.toString(16)} ${width}`);
    next = codePoint + 1;
  }
  return runs.join('|');
}

if (process.argv[1] === import.meta.filename) {
  const lines = (Object.keys(FILES) as Weight[]).map(
    (weight) => `  ${weight}:\n    '${encodeWidths(openFont(weight))}',\n`,
  );
  writeFileSync(
    resolve(import.meta.dirname, '../../src-shared/output/font/widths.ts'),
    `// Written by tests/generate/font-widths.ts from Source Sans 3 (SIL Open Font License 1.1). Do not edit.\n` +
      `export const ENCODED_WIDTHS = {\n${lines.join('')}} as const;\n`,
  );
}
