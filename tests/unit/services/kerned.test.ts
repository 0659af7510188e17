/** What a PDF sets by itself, against the font's own reader, which is asked nothing when files are written. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { localDay } from '@shared/day/index.ts';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject } from '@shared/project/index.ts';
import { kerningOf } from '../../../src-main/services/export/kerned.ts';
import { KERNING } from '../../../src-main/services/export/kerning.ts';
import { kerningOf as lookedUp, type ShapingFont } from '../../generate/font-kerning.ts';
import { openFont, type Weight } from '../../generate/font-widths.ts';

const WEIGHTS: readonly Weight[] = ['regular', 'semibold'];

/** Whatever is said in a part of a sheet. */
function textsIn(part: unknown): Set<string> {
  const said = new Set<string>();
  JSON.stringify(part, (_, value: unknown) => {
    if (typeof value === 'object' && value !== null && 'isStrong' in value && 'text' in value)
      said.add(String(value.text));
    return value;
  });
  return said;
}

describe('how near characters stand together', () => {
  it.each(WEIGHTS)('is, written anew from the %s font file, what is shipped', (weight) => {
    expect(lookedUp(weight)).toEqual(KERNING[weight]);
  });

  it.each(WEIGHTS)('comes to the width that the %s font has any word of them', (weight) => {
    const font = openFont(weight) as ShapingFont;
    const kerning = kerningOf(weight);
    const word = fc.string({
      unit: fc.constantFrom(...[...KERNING[weight].characters].filter((character) => character !== ' ')),
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(word, (text) => {
        const set = kerning.set(text);
        fc.pre(set !== null);
        const layout = font.layout(text);
        const glyphs = layout.glyphs.map(({ id }) => id);
        const own = ({ unit }: (typeof set)[number]): number =>
          unit.glyph ?? font.glyphForCodePoint(unit.text.codePointAt(0) as number).id;
        expect(set.map(own)).toEqual(glyphs);
        const advances = layout.glyphs.reduce((sum, { advanceWidth }) => sum + advanceWidth, 0);
        const between = set.reduce((sum, { before }) => sum + before, 0);
        expect(layout.advanceWidth - advances).toBeCloseTo((between * font.unitsPerEm) / 1000, 6);
      }),
    );
  });

  it('is known of what the font joins, and not of three that it joins, or of characters that no sheet has', () => {
    const set = (text: string): string[] | null =>
      kerningOf('regular')
        .set(text)
        ?.map(({ unit }) => unit.text) ?? null;
    expect(set('left off')).toEqual(['l', 'e', 'ft', ' ', 'o', 'ff']);
    expect(set('waffft')).toBeNull();
    expect(set('Київ')).toBeNull();
  });

  it('is known of all that a sheet says, so that the rules of the font are not read for it', () => {
    const project = projectAt(sampleProject());
    const { pages } = placementSheet(sheetFacts(project), makePlan(pieceIn(project)), {
      paper: 'a4',
      date: localDay(new Date(2026, 0, 2)),
    });
    const said = textsIn(pages);
    expect(said.size).toBeGreaterThan(300);
    expect([...said].filter((text) => kerningOf('regular').set(text) === null)).toEqual([]);
  });

  it('is that of the words themselves: nothing is added behind a blank', () => {
    const before = (text: string): number | undefined => kerningOf('regular').set(text)?.at(-1)?.before;
    expect(before('AV')).toBeLessThan(0);
    expect(before(' V')).toBe(0);
  });
});
