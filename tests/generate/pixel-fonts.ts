/**
 * Reads two pixel typefaces into cells, once, so that lettering is pure:
 * `npx tsx tests/generate/pixel-fonts.ts` writes src-shared/motif/lettering/fonts/.
 *
 * A pixel typeface draws squares on a grid; a cell is ink if the middle of its
 * square lies in the outline (non-zero winding).
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import type { Glyph, PixelFont } from '@shared/motif/lettering/font.ts';

interface Outline {
  readonly advanceWidth: number;
  readonly path: { readonly commands: readonly { readonly command: string; readonly args: readonly number[] }[] };
}
interface Typeface {
  readonly unitsPerEm: number;
  hasGlyphForCodePoint(code: number): boolean;
  glyphForCodePoint(code: number): Outline;
}
interface Source {
  readonly id: string;
  readonly name: string;
  readonly file: string;
  /** Size of a square, and the middle of the square at column 0, row 0, in font units. */
  readonly square: number;
  readonly middle: readonly [number, number];
  readonly lineHeight: number;
}

const root = resolve(import.meta.dirname, '../..');
const fontkit = createRequire(import.meta.url)('fontkit') as { create(data: Uint8Array): Typeface };

export const SOURCES: readonly Source[] = [
  {
    id: 'silkscreen',
    name: 'Silkscreen',
    file: '@fontsource/silkscreen/files/silkscreen-latin-400-normal.woff',
    square: 125,
    middle: [62.5, 62.5],
    lineHeight: 8,
  },
  {
    id: 'pixelify-sans',
    name: 'Pixelify Sans',
    file: '@fontsource/pixelify-sans/files/pixelify-sans-latin-400-normal.woff',
    square: 1000 / 11,
    middle: [110.5 - 1000 / 11, 44.5],
    lineHeight: 12,
  },
];

/** Letters, digits and signs of Latin-1. */
const LETTERS = [...range(0x20, 0x7e), ...range(0xa1, 0xff)].filter((code) => code !== 0xad);

function range(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

/** The typeface as cells. */
export function readPixelFont(source: Source): PixelFont {
  const face = fontkit.create(readFileSync(resolve(root, 'node_modules', source.file)));
  const glyphs: Record<string, Glyph> = {};
  for (const code of LETTERS) {
    if (face.hasGlyphForCodePoint(code)) {
      glyphs[String.fromCodePoint(code)] = readGlyph(face.glyphForCodePoint(code), source);
    }
  }
  return { id: source.id, name: source.name, lineHeight: source.lineHeight, glyphs };
}

function readGlyph(outline: Outline, { square, middle }: Source): Glyph {
  const loops = loopsOf(outline);
  const ink: [number, number][] = [];
  for (let row = -4; row < 12; row++) {
    for (let column = -1; column < 16; column++) {
      if (winding(loops, middle[0] + column * square, middle[1] + row * square) !== 0) ink.push([column, row]);
    }
  }
  const advance = Math.round(outline.advanceWidth / square);
  if (ink.length === 0) return [advance, 0, 0, 0, []];
  const columns = ink.map(([column]) => column);
  const rows = ink.map(([, row]) => row);
  const left = Math.min(...columns);
  const bottom = Math.min(...rows);
  const bits = new Array<number>(Math.max(...rows) - bottom + 1).fill(0);
  for (const [column, row] of ink) bits[row - bottom] = (bits[row - bottom] as number) | (1 << (column - left));
  return [advance, left, bottom, Math.max(...columns) - left + 1, bits];
}

function loopsOf(outline: Outline): [number, number][][] {
  const loops: [number, number][][] = [];
  for (const { command, args } of outline.path.commands) {
    if (command === 'moveTo') loops.push([]);
    if (command === 'moveTo' || command === 'lineTo') loops.at(-1)?.push([args[0] as number, args[1] as number]);
    else if (command !== 'closePath') throw new Error(`A pixel typeface has straight sides only, not ${command}`);
  }
  return loops;
}

/** How often the loops go round a point. */
function winding(loops: readonly (readonly [number, number][])[], x: number, y: number): number {
  let turns = 0;
  for (const loop of loops) {
    loop.forEach(([x1, y1], i) => {
      const [x2, y2] = loop[(i + 1) % loop.length] as [number, number];
      if (y1 <= y === y2 <= y) return;
      if (x1 + ((y - y1) / (y2 - y1)) * (x2 - x1) > x) turns += y2 > y1 ? 1 : -1;
    });
  }
  return turns;
}

/** The text of the file that holds a typeface. */
export function fontFile(font: PixelFont): string {
  const lines = Object.entries(font.glyphs).map(
    ([letter, glyph]) => `    ${JSON.stringify(letter)}: ${JSON.stringify(glyph)},`,
  );
  return [
    '// Made by tests/generate/pixel-fonts.ts; do not edit. The typeface is under the SIL Open Font License 1.1.',
    "import type { PixelFont } from '../font.ts';",
    '',
    `export const ${font.id.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase())}: PixelFont = {`,
    `  id: '${font.id}',`,
    `  name: '${font.name}',`,
    `  lineHeight: ${font.lineHeight},`,
    '  // prettier-ignore',
    '  glyphs: {',
    ...lines,
    '  },',
    '};',
    '',
  ].join('\n');
}

if (process.argv[1] === import.meta.filename) {
  for (const source of SOURCES) {
    writeFileSync(resolve(root, `src-shared/motif/lettering/fonts/${source.id}.ts`), fontFile(readPixelFont(source)));
  }
}
