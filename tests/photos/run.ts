/**
 * `npm run photos`: photographs of charts by seed, read back.
 *
 *     npm run photos -- --many 2000 --seed 1     so many, from this seed on
 *     npm run photos -- --off 10                 corners each up to 10 pixels off
 *     npm run photos -- --find                   with nothing said about them: are corners and counts found?
 *     npm run photos -- --calibrate --seed 10000 --many 220   the weights of how sure a reading is
 *     npm run photos -- --only 34 --to 34.png    one of them, written as a picture
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { encode } from 'fast-png';
import { photographOf } from '../generate/charts/photographs.ts';
import { foundMany, MOST_OFF } from './found.ts';
import { calibrated } from './calibrate.ts';
import { tried, triedMany } from './tried.ts';

const { values } = parseArgs({
  options: {
    many: { type: 'string', default: '2000' },
    seed: { type: 'string', default: '0' },
    off: { type: 'string', default: '0' },
    find: { type: 'boolean', default: false },
    calibrate: { type: 'boolean', default: false },
    only: { type: 'string' },
    to: { type: 'string' },
  },
});
if (values.calibrate) {
  console.log(calibrated(Number(values.seed), Number(values.many)));
} else if (values.only !== undefined) {
  const photograph = photographOf(Number(values.only));
  const { kind, lamp, yarns, grid, picture } = photograph;
  console.log(
    `${kind}, light: ${lamp}, ${yarns} yarns, ${grid.width} × ${grid.height}, ${picture.width} × ${picture.height} pixels`,
  );
  if (values.to !== undefined) {
    const { width, height, rgba } = picture;
    writeFileSync(values.to, encode({ width, height, data: rgba, channels: 4, depth: 8 }));
  }
  console.log(tried(photograph, Number(values.off)));
} else if (values.find) {
  const [from, many] = [Number(values.seed), Number(values.many)];
  const photographs = (function* () {
    for (let seed = from; seed < from + many; seed++) yield photographOf(seed);
  })();
  const text = foundMany(photographs, ({ seed, kind }, { counts, off, sure, why }) => {
    if (counts && off < MOST_OFF) return;
    console.log(
      `${seed}: ${kind}: ${off.toFixed(2)} cells off${counts ? '' : ', counts wrong'}${sure ? ', and sure' : ` (${why.join(', ')})`}`,
    );
  });
  console.log(text);
} else {
  const text = triedMany(Number(values.seed), Number(values.many), Number(values.off), (photograph, outcome) => {
    if (outcome.unmarked === 0 && outcome.refused === null && outcome.countsRight) return;
    const { seed, kind, lamp } = photograph;
    console.log(
      `${seed}: ${kind}, ${lamp}: ${outcome.refused ?? `${outcome.wrong} of ${outcome.cells} wrong, ${outcome.unmarked} unmarked${outcome.countsRight ? '' : ', counts wrong'}`}`,
    );
  });
  console.log(text);
}
