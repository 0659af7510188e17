/** What is found out about a picture file before anything in it is decoded. */
import { describe, expect, it } from 'vitest';
import { encode as encodePng } from 'fast-png';
import { encode as encodeJpeg } from 'jpeg-js';
import { outcome, type ProblemCode } from '@shared/problem/index.ts';
import { checkPictureFile, isSvg, readSvg, SVG_SIDE, type SvgDanger } from '@shared/reading/index.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const svg = (inside: string, attributes = ''): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`;

function codeOf(run: () => unknown): ProblemCode | null {
  const result = outcome(run);
  return result.ok ? null : result.problem.code;
}

const jpeg = encodeJpeg({ width: 8, height: 8, data: new Uint8Array(256).fill(200) }, 80).data;
const png = encodePng({ width: 4, height: 4, data: new Uint8Array(64).fill(255), channels: 4 });

/** RFC 9649: an extended WebP of 16 × 16 pixels; the second bit of its flags says that it is animated. */
function webp(flags: number, longer = 0): Uint8Array {
  const size = [15, 0, 0, 15, 0, 0];
  const picture = [0x2f, 15, 0xc0, 3, 0, 0];
  const chunks = [
    ...bytesOf('WEBPVP8X'),
    10,
    0,
    0,
    0,
    flags,
    0,
    0,
    0,
    ...size,
    ...bytesOf('VP8L'),
    6,
    0,
    0,
    0,
    ...picture,
  ];
  return Uint8Array.from([...bytesOf('RIFF'), chunks.length + longer, 0, 0, 0, ...chunks]);
}

/** A chunk as it stands in a PNG; its checksum is not looked at here. */
function withChunk(name: string, length: number): Uint8Array {
  const chunk = new Uint8Array(12 + length);
  chunk[3] = length;
  chunk.set(bytesOf(name), 4);
  return Uint8Array.from([...png.subarray(0, 33), ...chunk, ...png.subarray(33)]);
}

/** The frame header of a JPEG states 16 bits of height and width (ITU-T T.81, B.2.2). */
function declaring(width: number, height: number): Uint8Array {
  const changed = Uint8Array.from(jpeg);
  const frame = changed.findIndex((byte, at) => byte === 0xff && changed[at + 1] === 0xc0);
  changed.set([height >> 8, height & 255, width >> 8, width & 255], frame + 5);
  return changed;
}

describe('a picture file before it is decoded', () => {
  it.each([
    { kind: 'PNG', bytes: png },
    { kind: 'JPEG', bytes: jpeg },
    { kind: 'JPEG', bytes: Uint8Array.from([...jpeg, 1, 2, 3]) },
    { kind: 'WebP', bytes: webp(0) },
    { kind: 'PBM', bytes: bytesOf('P1 2 1 0 1') },
    { kind: 'SVG', bytes: bytesOf(svg('')) },
    { kind: 'SVG', bytes: bytesOf(`\ufeff<?xml version="1.0"?>\n<!-- a chart -->\n${svg('')}`) },
  ])('is known for a $kind', ({ kind, bytes }) => {
    expect(checkPictureFile(bytes).kind).toBe(kind);
  });

  it.each<{ what: string; bytes: Uint8Array; code: ProblemCode }>([
    { what: 'an animated WebP', bytes: webp(2), code: 'picture-animated' },
    { what: 'an animated PNG', bytes: withChunk('acTL', 8), code: 'picture-animated' },
    { what: 'a WebP that was cut off', bytes: webp(0, 200), code: 'picture-truncated' },
    { what: 'a JPEG that was cut off', bytes: jpeg.subarray(0, -20), code: 'picture-truncated' },
    { what: 'a PNG that was cut off', bytes: png.subarray(0, -12), code: 'picture-truncated' },
    { what: 'a JPEG of 100 megapixels', bytes: declaring(10_000, 10_000), code: 'photo-too-large' },
    { what: 'a drawing of 5 MB', bytes: bytesOf(svg(' '.repeat(5e6))), code: 'file-too-large' },
    { what: 'a page of the web', bytes: bytesOf('<!doctype html><p>chart</p>'), code: 'photo-unknown-kind' },
    { what: 'nothing', bytes: new Uint8Array(), code: 'picture-empty' },
  ])('is refused if it is $what', ({ bytes, code }) => {
    expect(codeOf(() => checkPictureFile(bytes))).toBe(code);
  });

  it('is left alone where a chunk of a PNG only tells something', () => {
    expect(checkPictureFile(withChunk('tEXt', 8)).kind).toBe('PNG');
  });
});

describe('a drawing as SVG', () => {
  it.each<{ what: string; text: string; danger: SvgDanger }>([
    { what: 'a script', text: svg('<script>alert(1)</script>'), danger: 'script' },
    { what: 'a script under a prefix', text: svg('<s:script xmlns:s="x"/>'), danger: 'script' },
    {
      what: 'a script between two that look like a comment',
      text: svg(`<![CDATA[<!--]]><script/><![CDATA[-->]]>`),
      danger: 'script',
    },
    { what: 'a link that runs', text: svg('<a href="java&#115;cript:alert(1)"/>'), danger: 'script' },
    { what: 'a handler', text: svg('', 'onload="alert(1)"'), danger: 'handler' },
    { what: 'a handler on a new line', text: svg('<rect\nonclick = "1"/>'), danger: 'handler' },
    { what: 'a page inside', text: svg('<foreignObject/>'), danger: 'foreign' },
    { what: 'a document type', text: `<!DOCTYPE svg>${svg('')}`, danger: 'document-type' },
    { what: 'an entity', text: `<!DOCTYPE svg [<!ENTITY a "b">]>${svg('&a;')}`, danger: 'document-type' },
    {
      what: 'a style sheet from elsewhere',
      text: `<?xml-stylesheet href="a.css"?>${svg('')}`,
      danger: 'document-type',
    },
    { what: 'a picture from elsewhere', text: svg('<image href="https://chart.invalid/a.png"/>'), danger: 'outside' },
    { what: 'one in the old way', text: svg('<image xlink:href="//chart.invalid/a.png"/>'), danger: 'outside' },
    { what: 'one beside it', text: svg("<image href='a.png'/>"), danger: 'outside' },
    {
      what: 'one written in numbers',
      text: svg('<rect style="fill:url&#x28;http://chart.invalid/a)"/>'),
      danger: 'outside',
    },
    { what: 'a drawing in the address', text: svg('<image href="data:image/svg+xml,x"/>'), danger: 'outside' },
    { what: 'an import', text: svg('<style>@import "a.css";</style>'), danger: 'outside' },
    {
      what: 'a word cut by a comment',
      text: svg('<style>a{fill:u<!-- -->rl(http://chart.invalid/a)}</style>'),
      danger: 'outside',
    },
    {
      what: 'a word cut by a mark',
      text: svg('<style>a{fill:u<![CDATA[r]]>l(http://chart.invalid/a)}</style>'),
      danger: 'outside',
    },
    {
      what: 'a word spelt differently',
      text: svg('<style>a{fill:\\75rl(http://chart.invalid/a)}</style>'),
      danger: 'outside',
    },
  ])('is refused with $what', ({ text, danger }) => {
    const result = outcome(() => readSvg(text));
    expect(result).toMatchObject({ ok: false, problem: { code: 'svg-unsafe', facts: { danger } } });
  });

  it('may point into itself and hold pictures', () => {
    const text = svg(
      '<!-- made with care --><defs><g id="a"/></defs><use href="#a"/><rect fill="url(#p)" style="stroke: url(\'#q\')"/>' +
        `<image xlink:href="data:image/png;base64,${Buffer.from(png).toString('base64')}"/>` +
        '<text>2 &lt; 3 &amp; more</text>',
    );
    expect(readSvg(text).text).toBe(text);
  });

  it.each([
    { attributes: 'viewBox="0 0 40 20"', size: [SVG_SIDE, SVG_SIDE / 2] },
    { attributes: 'width="30mm" height="60mm"', size: [SVG_SIDE / 2, SVG_SIDE] },
    { attributes: 'width="100%" height="100%"', size: [SVG_SIDE, SVG_SIDE] },
    { attributes: 'viewBox="0 0 0 20"', size: [SVG_SIDE, SVG_SIDE] },
    { attributes: '', size: [SVG_SIDE, SVG_SIDE] },
  ])('with $attributes is drawn at $size', ({ attributes, size }) => {
    const { width, height } = readSvg(svg('', attributes));
    expect([width, height]).toEqual(size);
  });

  it('in another encoding is refused', () => {
    expect(codeOf(() => readSvg(`<?xml version="1.0" encoding="utf-7"?>${svg('')}`))).toBe('picture-broken');
  });

  it('is told from a page of the web', () => {
    expect(isSvg(bytesOf('<html><body>svg</body></html>'))).toBe(false);
  });
});
