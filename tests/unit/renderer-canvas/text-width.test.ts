/** The widths of texts on drawings: each is measured once, and again once another font is there. */
import { afterEach, describe, expect, it, vi } from 'vitest';

/** A context that gives each letter so many pixels, and tells what it measured in which font. */
function contextWith(letter: number): { readonly context: CanvasRenderingContext2D; readonly measured: string[] } {
  const measured: string[] = [];
  const context = {
    font: '',
    measureText(text: string) {
      measured.push(`${this.font}: ${text}`);
      return { width: text.length * letter };
    },
  };
  return { context: context as unknown as CanvasRenderingContext2D, measured };
}

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

describe('the width of a text', () => {
  it('is measured once in each font', async () => {
    const { textWidth } = await import('../../../src-renderer/canvas/text-width.ts');
    const { context, measured } = contextWith(7);
    const asked = ['12', '12', '345', '12'].map((text) => textWidth(context, '400 12px serif', text));
    expect(asked).toEqual([14, 14, 21, 14]);
    expect(textWidth(context, '600 12px serif', '12')).toBe(14);
    expect(measured).toEqual(['400 12px serif: 12', '400 12px serif: 345', '600 12px serif: 12']);
  });

  it('is measured again once a font has come that was stood in for', async () => {
    const fonts = new EventTarget();
    vi.stubGlobal('document', { fonts });
    const { textWidth } = await import('../../../src-renderer/canvas/text-width.ts');
    const wide = contextWith(9);
    expect(textWidth(contextWith(7).context, 'serif', '12')).toBe(14);
    expect(textWidth(wide.context, 'serif', '12')).toBe(14);
    fonts.dispatchEvent(new Event('loadingdone'));
    expect(textWidth(wide.context, 'serif', '12')).toBe(18);
  });

  it('is right however many texts there were', async () => {
    const { textWidth } = await import('../../../src-renderer/canvas/text-width.ts');
    const { context } = contextWith(1);
    const texts = Array.from({ length: 9000 }, (_, at) => 'x'.repeat(at % 7) + String(at));
    for (const text of [...texts, ...texts]) expect(textWidth(context, 'serif', text)).toBe(text.length);
  });
});
