/**
 * What stands on the pages of a sheet's PDF, against the PDF library drawing the
 * same by its own calls, both read by a reader that is none of ours.
 */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import PDFDocument from 'pdfkit';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placementSheet, sheetFacts, type SheetDocument } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { sheetToPdf } from '../../src-main/services/export/index.ts';
import { FONT_FILES } from '../../src-main/services/export/fonts.ts';
import { PdfFont } from '../../src-main/services/export/pdf-font.ts';
import { callsOf, drawnBy } from '../by-library.ts';
import { TEST_DAY } from '../day.ts';
import { readPdf } from '../pdf.ts';
import { PROJECTS } from '../unit/output/projects.ts';

const require = createRequire(import.meta.url);
const standardFontDataUrl = join(dirname(require.resolve('pdfjs-dist/package.json')), 'standard_fonts/');

const FILLS: readonly number[] = [OPS.fill, OPS.fillStroke];
const STROKES: readonly number[] = [OPS.stroke, OPS.fillStroke];

/** Every painted path of each page in its order, with the colours, the width and the dashes that it is painted in. */
async function pathsOf(bytes: Uint8Array): Promise<unknown[][]> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), standardFontDataUrl, verbosity: 0 }).promise;
  const pages: unknown[][] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const { fnArray, argsArray } = await (await pdf.getPage(number)).getOperatorList();
    let state: { fill?: unknown; stroke?: unknown; width?: unknown; dash?: unknown } = {};
    const saved: (typeof state)[] = [];
    const paths: unknown[] = [];
    fnArray.forEach((operator, index) => {
      const args = argsArray[index] as unknown[];
      if (operator === OPS.save) saved.push(state);
      else if (operator === OPS.restore) state = saved.pop() ?? {};
      else if (operator === OPS.setFillRGBColor) state = { ...state, fill: args[0] };
      else if (operator === OPS.setStrokeRGBColor) state = { ...state, stroke: args[0] };
      else if (operator === OPS.setLineWidth) state = { ...state, width: args[0] };
      else if (operator === OPS.setDash) state = { ...state, dash: args };
      else if (operator === OPS.constructPath) {
        const [paint, path] = args as [number, [Float32Array]];
        const { fill, stroke, width, dash } = state;
        paths.push({
          path: Array.from(path[0]),
          ...(FILLS.includes(paint) ? { fill } : {}),
          ...(STROKES.includes(paint) ? { stroke, width, dash } : {}),
        });
      }
    });
    pages.push(paths);
  }
  await pdf.destroy();
  return pages;
}

function sheetOf(name: string): SheetDocument {
  const project = (PROJECTS[name] as (typeof PROJECTS)[string])();
  return placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper: 'a4', date: TEST_DAY });
}

describe('a sheet written as PDF', () => {
  it.each(['hem', 'crowded'])('of the %s project has the lines and areas of each page', async (name) => {
    const sheet = sheetOf(name);
    const drawn = await pathsOf(await sheetToPdf(sheet));
    expect(drawn.flat().length).toBeGreaterThan(50);
    expect(drawn).toEqual(await pathsOf(await drawnBy(callsOf(sheet))));
  });

  it.each(['hem', 'crowded'])('of the %s project has each text where it stands', async (name) => {
    const sheet = sheetOf(name);
    const [ours, theirs] = await Promise.all([
      readPdf(await sheetToPdf(sheet)),
      readPdf(await drawnBy(callsOf(sheet))),
    ]);
    const all = [ours, theirs].map((pages) =>
      pages.flatMap((page, number) => page.texts.map((text) => ({ number, ...text }))),
    );
    const [own = [], others = []] = all;
    expect(own.map(({ number, text }) => [number, text])).toEqual(others.map(({ number, text }) => [number, text]));
    const farthest = own.map((text, index) =>
      Math.max(
        ...(['x', 'y', 'widthMm', 'sizePt'] as const).map((of) => Math.abs(text[of] - (others[index]?.[of] ?? NaN))),
      ),
    );
    // Both round to a millionth of a point, at other times.
    expect(Math.max(...farthest)).toBeLessThan(1e-5);
  });
});

describe('a string shaped in parts', () => {
  const pdf = new PDFDocument({ autoFirstPage: false });
  const font = pdf.font(FONT_FILES.regular) as unknown as {
    readonly _font: { encode(text: string): [string[], { readonly xAdvance: number }[]] };
  };
  const shaped = PdfFont.of(pdf, FONT_FILES.regular, 'regular');
  const word = fc.oneof(
    fc.constantFrom(
      'L',
      'R',
      '–',
      'AV',
      'To',
      'fi',
      'ft',
      'ff',
      'Київ ',
      '.',
      ', ',
      '/',
      '½',
      '×',
      '°',
      'é',
      'Wa',
      '(',
      ')',
    ),
    fc.integer({ min: 0, max: 99_999 }).map(String),
  );

  it('has the glyphs and the width of the whole', () => {
    fc.assert(
      fc.property(fc.array(word, { maxLength: 8 }), (words) => {
        const text = words.join('');
        const [glyphs, positions] = font._font.encode(text);
        const made = shaped.shape(text);
        expect([...(made?.glyphs ?? '').matchAll(/[0-9a-f]{4}/g)].map(([glyph]) => glyph)).toEqual(glyphs);
        expect(made?.width).toBeCloseTo(
          positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0),
          6,
        );
      }),
    );
  });
});
