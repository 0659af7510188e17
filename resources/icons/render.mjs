/**
 * Draws the program's icon: a W of contrast stitches on a plain ground, as the
 * knit side shows them. Writes icon.svg and the PNG sizes beside it.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';

const CHART = ['.......', '.#...#.', '.#...#.', '.#.#.#.', '.#.#.#.', '..#.#..', '.......'];
const SIDE = 1024;
const MARGIN = 96;
const CORNER = 200;
const SIZES = [16, 24, 32, 48, 64, 128, 256, 512, 1024];
const PAPER = '#f6f4ee';
const GROUND = '#c9cfd8';
const FIGURE = '#2b4a8b';

const columns = CHART[0].length;
const cell = (SIDE - 2 * MARGIN) / columns;

/** One stitch: two legs that lean together, reaching a little into the stitch below. */
function stitch(column, row, colour) {
  const x = MARGIN + column * cell;
  const y = MARGIN + row * cell;
  const at = (dx, dy) => `${(x + dx * cell).toFixed(1)} ${(y + dy * cell).toFixed(1)}`;
  const leg = (mirror) => {
    const m = (dx) => (mirror ? 1 - dx : dx);
    return `M${at(m(0.06), 0.02)}L${at(m(0.3), 0.02)}L${at(m(0.48), 0.62)}L${at(m(0.48), 1.1)}L${at(m(0.3), 0.94)}Z`;
  };
  return `<path d="${leg(false)}${leg(true)}" fill="${colour}" stroke="${colour}" stroke-width="10" stroke-linejoin="round"/>`;
}

const stitches = CHART.flatMap((line, row) =>
  [...line].map((mark, column) => stitch(column, row, mark === '#' ? FIGURE : GROUND)),
);
const svg = [
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SIDE} ${SIDE}" width="${SIDE}" height="${SIDE}">`,
  `<rect width="${SIDE}" height="${SIDE}" rx="${CORNER}" fill="${PAPER}"/>`,
  ...stitches,
  '</svg>',
  '',
].join('\n');

const folder = import.meta.dirname;
writeFileSync(join(folder, 'icon.svg'), svg);
mkdirSync(join(folder, 'png'), { recursive: true });
for (const size of SIZES) {
  const picture = new Resvg(svg, { fitTo: { mode: 'width', value: size } }).render().asPng();
  writeFileSync(join(folder, 'png', `${size}x${size}.png`), picture);
}
