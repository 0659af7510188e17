/**
 * `npm run photos`: photographs of charts by seed, read back.
 *
 *     npm run photos -- --many 2000 --seed 1     so many, from this seed on
 *     npm run photos -- --keep photos.jsonl      kept there one by one: stopped and begun again, it goes on
 *     npm run photos -- --known                  with corners known alone
 *     npm run photos -- --find                   with nothing said alone: are corners and counts found?
 *     npm run photos -- --off 10                 known corners each up to 10 pixels off
 *     npm run photos -- --kind 'felt pen'        of one kind alone
 *     npm run photos -- --screen                 charts on a screen, photographed off it
 *     npm run photos -- --legend                 with a written legend beside them
 *     npm run photos -- --anew                   kept ones again that another reader has read
 *     npm run photos -- --calibrate --seed 10000 --many 220   the weights of how sure a reading is
 *     npm run photos -- --only 34 --to 34.png    one of them, written as a picture
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { encode } from 'fast-png';
import { kindOf, photographOf } from '../generate/charts/photographs.ts';
import { calibrated } from './calibrate.ts';
import { foundAndRead, foundTable, MOST_OFF, type Found } from './found.ts';
import { KeptOutcomes, type KeptOutcome } from './kept.ts';
import { tableOf } from './sums.ts';
import { tried, type Outcome } from './tried.ts';

const { values } = parseArgs({
  options: {
    many: { type: 'string', default: '2000' },
    seed: { type: 'string', default: '0' },
    off: { type: 'string', default: '0' },
    keep: { type: 'string' },
    kind: { type: 'string' },
    known: { type: 'boolean', default: false },
    find: { type: 'boolean', default: false },
    screen: { type: 'boolean', default: false },
    legend: { type: 'boolean', default: false },
    anew: { type: 'boolean', default: false },
    calibrate: { type: 'boolean', default: false },
    only: { type: 'string' },
    to: { type: 'string' },
  },
});
const [from, many, off] = [Number(values.seed), Number(values.many), Number(values.off)];
const setting = { isOnScreen: values.screen, hasLegend: values.legend };

if (values.calibrate) console.log(calibrated(from, many));
else if (values.only !== undefined) one(Number(values.only));
else all();

function one(seed: number): void {
  const photograph = photographOf(seed, setting);
  const { kind, lamp, yarns, grid, picture } = photograph;
  console.log(
    `${kind}, light: ${lamp}, ${yarns} yarns, ${grid.width} × ${grid.height}, ${picture.width} × ${picture.height} pixels`,
  );
  if (values.to !== undefined) {
    const { width, height, rgba } = picture;
    writeFileSync(values.to, encode({ width, height, data: rgba, channels: 4, depth: 8 }));
  }
  console.log(tried(photograph, off));
  console.log(foundAndRead(photograph).found);
}

function all(): void {
  const wants = { known: !values.find, found: !values.known };
  const what = [values.screen ? 'on a screen' : 'on paper', ...(values.legend ? ['with a legend'] : [])].join(', ');
  const kept = new KeptOutcomes(values.keep ?? null, `${what}, corners ${off} off`);
  const seeds = Array.from({ length: many }, (_, i) => from + i).filter(
    (seed) => values.kind === undefined || kindOf(seed, setting) === values.kind,
  );
  for (const seed of seeds) {
    const before = values.anew && !kept.isOfToday(seed) ? null : kept.get(seed);
    const isKnownMissing = wants.known && !before?.known;
    const isFoundMissing = wants.found && !before?.found;
    if (!isKnownMissing && !isFoundMissing) continue;
    const photograph = photographOf(seed, setting);
    const { kind, lamp } = photograph;
    const known = isKnownMissing ? tried(photograph, off) : (before?.known ?? null);
    const { found, read } = isFoundMissing
      ? foundAndRead(photograph)
      : { found: before?.found ?? null, read: before?.asFound ?? null };
    const outcome = { seed, kind, lamp, known, found, asFound: read };
    kept.keep(outcome);
    sayWhatIsAmiss(outcome);
  }
  const outcomes = seeds.flatMap((seed) => kept.get(seed) ?? []);
  const older = seeds.filter((seed) => kept.get(seed) !== null && !kept.isOfToday(seed)).length;
  if (older > 0) console.log(`${older} of these were read before the reader or the drawing last changed.`);
  if (wants.known) {
    const rows = outcomes.flatMap(({ kind, known }) => (known ? [{ kind, outcome: known }] : []));
    console.log(`\nWith corners and counts given:\n${tableOf(rows)}`);
  }
  if (wants.found) {
    const rows = outcomes.flatMap(({ kind, found }) => (found ? [{ kind, found }] : []));
    const read = outcomes.flatMap(({ kind, asFound }) => (asFound ? [{ kind, outcome: asFound }] : []));
    console.log(`\nWith nothing said:\n${foundTable(rows)}\n\nThose found, read as they were found:\n${tableOf(read)}`);
  }
}

function sayWhatIsAmiss({ seed, kind, lamp, known, found, asFound }: KeptOutcome): void {
  const amiss = [
    known && missedIn(known),
    found && missedAs(found),
    asFound && asFound.unmarked > 0 ? `read as found: ${missedIn(asFound) ?? ''}` : null,
  ].filter((text) => text !== null);
  if (amiss.length > 0) console.log(`${seed}: ${kind}, ${lamp}: ${amiss.join('; ')}`);
}

function missedIn({ unmarked, refused, countsRight, wrong, cells }: Outcome): string | null {
  if (unmarked === 0 && refused === null && countsRight) return null;
  return refused ?? `${wrong} of ${cells} wrong, ${unmarked} unmarked${countsRight ? '' : ', counts wrong'}`;
}

function missedAs({ counts, off: cellsOff, sure, why }: Found): string | null {
  if (counts && cellsOff < MOST_OFF) return null;
  return `found ${cellsOff.toFixed(2)} cells off${counts ? '' : ', counts wrong'}${sure ? ', and sure' : ` (${why.join(', ')})`}`;
}
