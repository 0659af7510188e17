import { describe, expect, it } from 'vitest';
import { gridToText, type Grid } from '@shared/grid/index.ts';
import { PIXEL_FONTS, setText, type PixelFont, type Setting } from '@shared/motif/lettering/index.ts';
import { readPixelFont, SOURCES } from '../../generate/pixel-fonts.ts';

const fontCalled = (id: string): PixelFont => {
  const font = PIXEL_FONTS.find((candidate) => candidate.id === id);
  if (!font) throw new Error(id);
  return font;
};
/** The ink of a text; there is some. */
const inkOf = (text: string, setting: Setting): Grid => {
  const { ink } = setText(text, setting);
  if (!ink) throw new Error('No ink');
  return ink;
};
const plain = { font: fontCalled('silkscreen'), letterSpacing: 0, lineSpacing: 0, align: 'left' } as const;

describe('setting text in cells', () => {
  it('draws the letters of the typeface, trimmed to the ink', () => {
    expect(gridToText(inkOf('ABC', plain), '.#')).toEqual([
      '.##...###....##.',
      '#..#..#..#..#..#',
      '####..####..#...',
      '#..#..#..#..#..#',
      '#..#..###....##.',
    ]);
  });

  it('adds cells between letters and rows between lines', () => {
    const tight = inkOf('AB', plain);
    expect(inkOf('AB', { ...plain, letterSpacing: 2 }).width).toBe(tight.width + 2);
    expect(inkOf('A\nB', { ...plain, lineSpacing: 3 }).height).toBe(inkOf('A\nB', plain).height + 3);
  });

  it.each(['left', 'right', 'centre'] as const)('aligns lines: %s', (align) => {
    const [line] = gridToText(inkOf('I\nWIDE', { ...plain, align }), '.#');
    expect({ touchesLeft: line?.startsWith('#'), touchesRight: line?.endsWith('#') }).toEqual({
      touchesLeft: align === 'left',
      touchesRight: align === 'right',
    });
  });

  it('leaves the odd cell at the right of a line that is centred', () => {
    expect(gridToText(inkOf('I\nA', { ...plain, align: 'centre' }), '.#')[0]).toBe('.#..');
  });

  it('lets lines begin with their ink, though the typeface leaves a cell before most letters and none before some', () => {
    const rows = gridToText(inkOf('A\nÎ', plain), '.#');
    // The ends of the circumflex reach further to the left than any other letter.
    expect(rows[4]).toBe('#..#');
    expect(rows.slice(5).some((row) => row.startsWith('#'))).toBe(true);
  });

  it('blanks before and after a line leave no ink', () => {
    expect(inkOf('  A  ', plain)).toEqual(inkOf('A', plain));
  });

  it('says which letters the typeface lacks', () => {
    expect(setText('A☃B漢\nB☃', plain).missing).toEqual(['☃', '漢']);
    expect(setText('AB', plain).missing).toEqual([]);
    // Names that every object has are no signs of a typeface.
    expect(setText('valueOf', plain).missing).toEqual([]);
  });

  it('sets the rest as if what it lacks were not there, and nothing where nothing is left', () => {
    expect(setText('A☃B', plain).ink).toEqual(inkOf('AB', plain));
    expect(setText('☃', plain).ink).toBeNull();
    expect(setText('   ', plain).ink).toBeNull();
  });
});

describe('the typefaces', () => {
  it.each(SOURCES)('$name is what its package draws', (source) => {
    expect(fontCalled(source.id)).toEqual(readPixelFont(source));
  });

  it.each(PIXEL_FONTS.map((font) => ({ name: font.name, font })))('$name has all of ASCII', ({ font }) => {
    for (let code = 0x20; code < 0x7f; code++) expect(font.glyphs).toHaveProperty([String.fromCharCode(code)]);
  });
});
