/** Drawings that say little and ask for much are refused before they are drawn, in a time that goes with their length. */
import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { outcome } from '@shared/problem/index.ts';
import { checkPictureFile, MOST_SVG_BYTES, MOST_SVG_WORK, readSvg } from '@shared/reading/index.ts';
import { rawPng } from '../picture/pictures.ts';

const svg = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20">${inside}</svg>`;
const problemIn = (text: string): unknown => {
  const read = outcome(() => readSvg(text));
  return read.ok ? null : read.problem.code;
};
/** Shapes in shapes: each level uses the one before it ten times. */
const nested = (levels: number, use: (id: string) => string): string =>
  Array.from({ length: levels }, (_, level) =>
    level === 0 ? '<g id="l0"><rect/></g>' : `<g id="l${level}">${use(`l${level - 1}`).repeat(10)}</g>`,
  ).join('');
const png = (bytes: Uint8Array): string => `data:image/png;base64,${Buffer.from(bytes).toString('base64')}`;
const small = encode({ width: 2, height: 2, data: new Uint8Array(16), channels: 4 });

describe('what there is to draw in an SVG', () => {
  it('of a chart of 200 × 200 cells is drawn', () => {
    expect(problemIn(svg('<rect x="1" y="2" width="1" height="1" fill="#123456"/>'.repeat(40_000)))).toBeNull();
    expect(problemIn(svg(`${nested(1, String)}${'<use href="#l0" x="3"/>'.repeat(40_000)}`))).toBeNull();
  });

  it.each<[what: string, text: string, code: string]>([
    ['shapes used in shapes', svg(nested(9, (id) => `<use href="#${id}"/>`)), 'svg-too-much'],
    ['the same in the old way', svg(nested(9, (id) => `<use xlink:href="#${id}"/>`)), 'svg-too-much'],
    ['the same in numbers', svg(nested(9, (id) => `<use href="&#35;${id}"/>`)), 'svg-too-much'],
    [
      'the same beside a harmless one',
      svg(nested(9, (id) => `<use href="#${id}" xlink:href="#none"/>`)),
      'svg-too-much',
    ],
    ['patterns in patterns', svg(nested(9, (id) => `<rect fill="url(#${id})"/>`)), 'svg-too-much'],
    ['masks in masks', svg(nested(4, (id) => `<rect style="mask:url(#${id})"/>`)), 'svg-too-much'],
    [
      'markers at every corner',
      svg(`${nested(4, (id) => `<use href="#${id}"/>`)}<path marker-mid="url(#l3)" d="${'1 2 '.repeat(400)}"/>`),
      'svg-too-much',
    ],
    ['an outline without end', svg(`<path d="${'1 2 '.repeat(300_000)}"/>`), 'svg-too-much'],
    ['clouds', svg('<filter id="f"><feTurbulence numOctaves="200"/></filter>'), 'svg-too-much'],
    ['a hundred thousand effects', svg('<g filter="blur(4px)"/>'.repeat(1000)), 'svg-too-much'],
    ['effects for all by a rule', svg(`<style>g{filter:blur(4px)}</style>${'<g/>'.repeat(1000)}`), 'svg-too-much'],
    ['more elements than are drawn', svg('<g/>'.repeat(MOST_SVG_WORK + 1)), 'svg-too-much'],
    [
      'a picture used without end',
      svg(`<g id="l0"><image href="${png(wide())}"/></g>${'<use href="#l0"/>'.repeat(60)}`),
      'svg-too-much',
    ],
    [
      'markers at every corner of what is inside',
      svg(
        `${nested(3, (id) => `<use href="#${id}"/>`)}<g marker-mid="url(#l2)"><path d="${'1 2 '.repeat(3000)}"/></g>`,
      ),
      'svg-too-much',
    ],
    [
      'markers at every corner of what is used inside',
      svg(
        `${nested(3, (id) => `<use href="#${id}"/>`)}<path id="p" d="${'1 2 '.repeat(3000)}"/><g style="marker:url(#l2)"><use href="#p"/></g>`,
      ),
      'svg-too-much',
    ],
    [
      'markers at every corner by a rule',
      svg(
        `<style>path{marker-mid:url(#l2)}</style>${nested(3, (id) => `<use href="#${id}"/>`)}<path d="${'1 2 '.repeat(3000)}"/>`,
      ),
      'svg-too-much',
    ],
    [
      'markers by way of a variable',
      svg(
        `${nested(3, (id) => `<use href="#${id}"/>`)}<g style="--m:url(#l2)"><path style="marker-mid:var(--m)" d="${'1 2 '.repeat(3000)}"/></g>`,
      ),
      'svg-too-much',
    ],
    [
      'a pattern in every shape inside',
      svg(`${nested(4, (id) => `<use href="#${id}"/>`)}<g fill="url(#l3)">${'<rect/>'.repeat(300)}</g>`),
      'svg-too-much',
    ],
    [
      'a picture as background',
      svg(`<g style="background:url('${png(declaring(10_000, 10_000))}')"/>`),
      'photo-too-large',
    ],
    [
      'a picture as background by a rule',
      svg(`<style>svg{background:url(${png(declaring(10_000, 10_000))})}</style>`),
      'photo-too-large',
    ],
    [
      'a picture beside a harmless one',
      svg(`<image a:href="${png(small)}" xlink:href="${png(declaring(10_000, 10_000))}"/>`),
      'photo-too-large',
    ],
    ['something that moves', svg('<rect><set attributeName="href" to="#a"/></rect>'), 'picture-animated'],
    ['a rule that moves something', svg('<style>@keyframes a{}</style>'), 'picture-animated'],
    ['a picture of 100 million pixels', svg(`<image href="${png(declaring(10_000, 10_000))}"/>`), 'photo-too-large'],
    ['a broken picture', svg(`<image href="${png(small.subarray(0, 40))}"/>`), 'picture-truncated'],
    ['a picture that is no base64', svg('<image href="data:image/png;base64,§§"/>'), 'picture-broken'],
    ['elements without end', svg('<g>'.repeat(300)), 'picture-broken'],
    ['elements that cross', '<svg><a><b></a></b></svg>', 'picture-broken'],
  ])('is refused for %s', (_, text, code) => {
    expect(problemIn(text)).toBe(code);
  });

  it('holds pictures, and a shape that uses itself', () => {
    expect(problemIn(svg(`<image href="${png(small)}"/><g id="a"><use href="#a"/></g>`))).toBeNull();
  });

  // Each of these took the square of its length, minutes, while patterns looked for an end that is not there.
  it.each(['<!--', '<svg ', '<![CDATA[', "href='", 'url(', '<?xml ', '&#x', '<a b="', ' onload', '<g>'])(
    'is found out in 4 MB of %s',
    (part) => {
      const text = svg(part.repeat(Math.floor((MOST_SVG_BYTES - 200) / part.length)));
      expect(checkPictureFile(new TextEncoder().encode(text)).kind).toBe('SVG');
      expect(problemIn(text)).not.toBe('unexpected');
    },
    20_000,
  );
});

function wide(): Uint8Array {
  return rawPng({ width: 4000, height: 1000, depth: 1, colourType: 0, rows: [[0]] });
}

function declaring(width: number, height: number): Uint8Array {
  return rawPng({ width, height, depth: 1, colourType: 0, rows: [[0]] });
}
