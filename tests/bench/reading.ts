/**
 * Straightening and sampling a 12-megapixel photo, against decoding it.
 *
 * The photo is a chart of 60 × 80 cells as a camera with 4000 × 3000 pixels
 * packs it, painted here from its cells.
 */
import { decode, encode } from 'jpeg-js';
import { finish, photoOf, readCells, type Corners, type Picture } from '@shared/reading/index.ts';
import { median, type Bar } from './bar.ts';
import { holdUp } from './slowed.ts';

const WIDTH = 4000;
const HEIGHT = 3000;
const COLUMNS = 80;
const ROWS = 60;
const CELL = 44;
const LEFT = 240;
const TOP = 180;
const ROUNDS = 3;
const MOST_TIMES = 3;

const corners: Corners = [
  { x: LEFT, y: TOP },
  { x: LEFT + COLUMNS * CELL, y: TOP },
  { x: LEFT + COLUMNS * CELL, y: TOP + ROWS * CELL },
  { x: LEFT, y: TOP + ROWS * CELL },
];

/** How long `work` takes, ms. */
function timed<T>(work: () => T): { ms: number; result: T } {
  const start = performance.now();
  const result = work();
  return { ms: performance.now() - start, result };
}

/** The photo, decoded. */
function chartPhoto(): Picture {
  const rgba = new Uint8Array(WIDTH * HEIGHT * 4);
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const column = Math.floor((x - LEFT) / CELL);
      const row = Math.floor((y - TOP) / CELL);
      const isLine = (x - LEFT) % CELL < 3 || (y - TOP) % CELL < 3;
      const isFigure = (column * 7 + row * 5 + column * row) % 3 === 0;
      // Grain, as sensors have it: without it the file would unpack faster than photos do.
      const value = (isLine ? 150 : isFigure ? 60 : 225) + ((x * 31 + y * 57 + x * y) % 11);
      const at = (y * WIDTH + x) * 4;
      rgba[at] = value;
      rgba[at + 1] = value - 4;
      rgba[at + 2] = value - 10;
      rgba[at + 3] = 255;
    }
  }
  return { width: WIDTH, height: HEIGHT, rgba };
}

/** Reading from the decoded photo to its cells, levels of the photo included, counts given. */
export function readingBars(): Bar[] {
  const { width, height, rgba } = chartPhoto();
  const file = encode({ width, height, data: rgba }, 85).data;
  const decoding: number[] = [];
  const reading: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const decoded = timed(() => decode(file, { useTArray: true, maxMemoryUsageInMB: 1024 }));
    const { width: across, height: up, data } = decoded.result;
    const read = timed(() => {
      const done = finish(
        readCells(photoOf({ width: across, height: up, rgba: data }), corners, COLUMNS, ROWS, {
          kind: 'colours',
          count: null,
        }),
      );
      holdUp(MOST_TIMES, decoded.ms);
      return done;
    });
    if (read.result.colours.length !== 2) throw new Error(`Read ${read.result.colours.length} colours, not 2`);
    decoding.push(decoded.ms);
    reading.push(read.ms);
  }
  const [ours, against] = [median(reading), median(decoding)];
  return [
    {
      name: `straightening and sampling a ${(WIDTH * HEIGHT) / 1e6}-megapixel photo against decoding it`,
      ratio: median(reading.map((ms, round) => ms / (decoding[round] as number))),
      limit: MOST_TIMES,
      kind: 'at most',
      ours,
      against,
    },
  ];
}
