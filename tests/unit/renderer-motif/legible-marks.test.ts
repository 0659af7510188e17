/** Hatching and guides are seen on what they lie on: 3 : 1 by WCAG 2.2, 1.4.11. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { projectAt, sampleProject } from '@shared/project/index.ts';
import { motifLook } from '../../../src-renderer/motif/drawing/look.ts';
import { lookOf } from '../../../src-renderer/piece/drawing/look.ts';

const css = readFileSync(resolve(import.meta.dirname, '../../../src-renderer/ui/tokens.css'), 'utf8');
const [light = '', dark = ''] = css.split(":root[data-theme='dark']");
const tokensOf =
  (part: string) =>
  (name: string): string =>
    new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(part)?.[1] ?? '';

/** WCAG's formula, written from its text: https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio */
function contrast(one: string, other: string): number {
  const luminance = (colour: string): number => {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
      const channel = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
      return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [dim, bright] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (bright + 0.05) / (dim + 0.05);
}

const colour = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`);
const themes = [
  { theme: 'light', token: tokensOf(light) },
  { theme: 'dark', token: tokensOf(dark) },
];

describe.each(themes)('in $theme', ({ token }) => {
  it('hatching stands out from any main yarn', () => {
    fc.assert(
      fc.property(colour, colour, (main, figure) => {
        expect(contrast(motifLook([main, figure], main, token).hatch, main)).toBeGreaterThanOrEqual(3);
      }),
    );
  });

  it('one of the two lines of a guide stands out from whatever it crosses', () => {
    const project = projectAt(sampleProject());
    fc.assert(
      fc.property(colour, (ground) => {
        for (const { inner, outer } of [motifLook([ground], ground, token).guide, lookOf(project, token).guide])
          expect(Math.max(contrast(inner, ground), contrast(outer, ground))).toBeGreaterThanOrEqual(3);
      }),
    );
  });

  it('the lines of groups stand out from any main yarn', () => {
    const project = projectAt(sampleProject());
    fc.assert(
      fc.property(colour, (main) => {
        const yarns = project.yarns.map((yarn) => ({ ...yarn, colour: main }));
        const look = lookOf({ ...project, yarns }, token);
        expect(contrast(look.accentOnMain, main)).toBeGreaterThanOrEqual(3);
        expect(contrast(look.onMain, main)).toBeGreaterThanOrEqual(3);
      }),
    );
  });

  it('hatching in the pictures of placings stands out from the card it lies on', () => {
    for (const ground of ['raised', 'surface'])
      expect(contrast(token('control'), token(ground))).toBeGreaterThanOrEqual(3);
  });
});
