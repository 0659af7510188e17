/** Pictures that ask for more than they say: the window refuses them by name, goes on, and takes a good one after. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { chunk, rawPng } from '../unit/picture/pictures.ts';
import { expect, test } from './app.ts';
import { FilePanel } from './file-panel.ts';

const good = Buffer.from(
  rawPng({
    width: 200,
    height: 2,
    depth: 8,
    colourType: 0,
    rows: [0, 255].map((grey) => new Array<number>(200).fill(grey)),
  }),
);
const HEADER_ENDS = 33;
/** The picture with more chunks after its header, or with other pixels. */
const withChunks = (...chunks: readonly Buffer[]): Buffer =>
  Buffer.concat([good.subarray(0, HEADER_ENDS), ...chunks, good.subarray(HEADER_ENDS)]);
const swollen = deflateSync(Buffer.alloc(100_000_000));

/** 200 × 2 pixels that unpack to 100 MB. */
const swollenPixels = (): Buffer =>
  Buffer.concat([good.subarray(0, HEADER_ENDS), chunk('IDAT', [...swollen]), chunk('IEND', [])]);

const svg = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30">${inside}</svg>`;
const nested = Array.from({ length: 9 }, (_, level) =>
  level === 0
    ? '<g id="l0"><rect width="9" height="9"/></g>'
    : `<g id="l${level}">${`<use href="#l${level - 1}"/>`.repeat(10)}</g>`,
).join('');

/** 24 bits a pixel, red: Microsoft's BITMAPFILEHEADER and BITMAPINFOHEADER. */
function bmp(width: number, height: number): Buffer {
  const rows = Buffer.alloc(Math.ceil((width * 24) / 32) * 4 * height);
  for (let at = 2; at < rows.length; at += 3) rows[at] = 0xcc;
  const head = Buffer.alloc(54);
  head.write('BM');
  head.writeUInt32LE(54 + rows.length, 2);
  head.writeUInt32LE(54, 10);
  head.writeUInt32LE(40, 14);
  head.writeInt32LE(width, 18);
  head.writeInt32LE(height, 22);
  head.writeUInt16LE(1, 26);
  head.writeUInt16LE(24, 28);
  return Buffer.concat([head, rows]);
}

test('refuses pictures that ask for more than they say', async ({ page, start, home }) => {
  await start();
  for (const { name, content, complaint } of [
    { name: 'pixels.png', content: swollenPixels(), complaint: 'cannot be unpacked' },
    { name: 'header.png', content: withChunks(good.subarray(8, HEADER_ENDS)), complaint: 'more than once' },
    {
      name: 'note.png',
      content: withChunks(chunk('zTXt', [65, 0, 0, ...swollen])),
      complaint: 'more than any note should',
    },
    { name: 'nested.svg', content: svg(nested), complaint: 'more to draw than a chart' },
    { name: 'comment.svg', content: svg('<!--'.repeat(500_000)), complaint: 'cannot be drawn' },
    { name: 'huge.bmp', content: bmp(40, 30).subarray(0, 60), complaint: 'ends too early' },
  ]) {
    writeFileSync(join(home, name), content);
    await page.keyboard.press('Control+Shift+G');
    await new FilePanel(page).open(name);
    await expect(page.getByRole('alert')).toContainText(complaint);
    await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();
  }
});

test('takes a BMP in, which only the browser decodes', async ({ page, start, home }) => {
  await start();
  writeFileSync(join(home, 'red.bmp'), bmp(400, 300));
  await page.keyboard.press('Control+Shift+G');
  await new FilePanel(page).open('red.bmp');
  await expect(page.getByRole('button', { name: /^top left corner/ })).toBeVisible();
});
