import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { characterWidth, hasCharacter, richWidthMm, widthMm } from '@shared/output/font/metrics.ts';
import { hasMissing, MISSING_MARK, printable } from '@shared/output/font/printable.ts';
import { ENCODED_WIDTHS } from '@shared/output/font/widths.ts';
import { shorten, wrap } from '@shared/output/font/wrap.ts';
import { plain, rich, strong, textOf } from '@shared/words/index.ts';
import { encodeWidths, openFont, type Weight } from '../../generate/font-widths.ts';

describe('widths of characters', () => {
  it.each<[Weight, boolean]>([
    ['regular', false],
    ['semibold', true],
  ])('are those of the %s font file, for every character it has', (weight, isStrong) => {
    const font = openFont(weight);
    expect(font.characterSet.length).toBeGreaterThan(1500);
    for (const codePoint of font.characterSet) {
      const expected = (font.glyphForCodePoint(codePoint).advanceWidth * 1000) / font.unitsPerEm;
      expect(characterWidth(codePoint, isStrong)).toBeCloseTo(expected, 0);
    }
    // Written anew from the font, the table is the one that is shipped.
    expect(encodeWidths(font)).toBe(ENCODED_WIDTHS[weight]);
  });

  it('give a line no narrower than what the font sets with kerning, or by less than half a hundredth', () => {
    const font = openFont('regular');
    for (const text of [
      'Set up with the row counter at 59: row 60 is knitted plain while the needles for row 61 are selected.',
      'Switch end-needle selection off, or the contrast floats to the edges.',
      'AVATAR To Ty Va We LTAV',
    ]) {
      const set = (font.layout(text).advanceWidth / font.unitsPerEm) * 10 * (25.4 / 72);
      expect(widthMm(text, 10) / set).toBeGreaterThan(0.995);
    }
  });

  it('are the same for every figure, so that numbers stand in columns', () => {
    for (const isStrong of [false, true]) {
      const widths = new Set(
        [...'0123456789'].map((digit) => characterWidth(digit.codePointAt(0) as number, isStrong)),
      );
      expect(widths.size).toBe(1);
    }
  });

  it('are asked for only where the font has the character', () => {
    expect(() => widthMm('漢', 10)).toThrow(RangeError);
    expect(hasCharacter(MISSING_MARK.codePointAt(0) as number)).toBe(true);
  });
});

describe('text that the font lacks', () => {
  it.each([
    ['漢字', '□□'],
    ['tea \u{1f375}!', 'tea □!'],
    ['a\u0301', 'á'],
    ['one\ntwo\tthree', 'one two three'],
    ['in\u200bvisible\u2060', 'invisible'],
    ['half \ud800 pair', 'half □ pair'],
    ['Žižkov, Ελλάδα, Київ', 'Žižkov, Ελλάδα, Київ'],
    ['L48–R13 → ✓', 'L48–R13 → ✓'],
  ])('%j is shown as %j', (given, shown) => {
    expect(printable(given)).toBe(shown);
    expect(hasMissing(given)).toBe(shown.includes(MISSING_MARK));
  });

  it('never gets past printing, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        expect(() => widthMm(printable(text), 10)).not.toThrow();
        expect(printable(printable(text))).toBe(printable(text));
      }),
    );
  });

  it('is not reported where the person wrote the mark', () => {
    expect(hasMissing('□')).toBe(false);
  });
});

describe('breaking text into lines', () => {
  it('keeps every word, in order, on lines that fit', () => {
    const word = fc.string({ unit: fc.constantFrom(...'abW1–-漢'), minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(fc.array(word, { maxLength: 30 }), fc.integer({ min: 8, max: 80 }), (words, width) => {
        const spans = words.map((text, index) => ({ text: `${text} `, isStrong: index % 3 === 0 }));
        const lines = wrap(spans, width, 10);
        for (const line of lines) expect(richWidthMm(line, 10)).toBeLessThanOrEqual(width + 1e-9);
        const squeezed = (text: string): string => text.replaceAll(' ', '');
        expect(squeezed(lines.map(textOf).join(''))).toBe(squeezed(printable(words.join(''))));
      }),
    );
  });

  it('breaks a needle run that is too long after its dash', () => {
    expect(wrap(plain('L100–R100'), 12, 9).map(textOf)).toEqual(['L100–', 'R100']);
  });

  it('keeps what is strong strong', () => {
    const lines = wrap(rich`Set up with the row counter at ${strong(59)}.`, 40, 10);
    expect(lines.flat().filter(({ isStrong }) => isStrong)).toEqual([{ text: '59', isStrong: true }]);
    expect(lines.map(textOf).join(' ')).toBe('Set up with the row counter at 59.');
  });

  it('gives one empty line for no text', () => {
    expect(wrap([], 40, 10)).toEqual([[]]);
  });

  it('shortens to one line with an ellipsis', () => {
    const short = shorten('a yarn with a rather long name', 20, 10);
    expect(short).toMatch(/^a yarn.*…$/);
    expect(widthMm(short, 10)).toBeLessThanOrEqual(20);
    expect(shorten('slate', 20, 10)).toBe('slate');
  });
});
