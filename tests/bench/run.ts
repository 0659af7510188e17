/**
 * `npm run bench`: how fast the program is, as ratios that hold on any machine,
 * each beside its bar. `npm run bench -- dragging` measures that subject alone;
 * `--into FILE` says where the results are written, `--against FILE` tells what
 * moved since those in that file. `--slowed` tests the bench itself: what is
 * measured is held up on purpose, and a bar that is met all the same is told.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus, hostname, loadavg } from 'node:os';
import { dirname } from 'node:path';
import { parseArgs } from 'node:util';
import { barLine, isMet, type Bar } from './bar.ts';
import { measureBars, planBars, repeatBars, runningOrderBars } from './computing.ts';
import { anchorsBars } from './anchors.ts';
import { findingsBars } from './findings.ts';
import { growthBars } from './growth.ts';
import { placingBars } from './placing.ts';
import { readingBars } from './reading.ts';
import { openingBars } from './opening.ts';
import { chartImageBars } from './chart-image.ts';
import { sheetBars } from './sheet.ts';
import { startingBars } from './starting.ts';
import { memoryBars } from './memory.ts';
import { loadingBars } from './loading.ts';
import { slowDown } from './slowed.ts';
import { movedLines, resultsFromText, resultsToText } from './results.ts';

const { values, positionals: asked } = parseArgs({
  options: {
    into: { type: 'string', default: 'out/bench.json' },
    against: { type: 'string' },
    slowed: { type: 'boolean', default: false },
  },
  allowPositionals: true,
});
const { into } = values;
// Read at once: it may be the file that is written at the end.
const before = values.against === undefined ? null : resultsFromText(readFileSync(values.against, 'utf8'));
if (values.slowed) slowDown();
const started = new Date();
const processors = cpus();
console.log(`Node ${process.version}, ${processors.length} × ${processors[0]?.model ?? 'unknown processor'}`);
const load = loadavg()[0] ?? 0;
if (load > processors.length / 2) {
  console.log(`The machine is busy (load ${load.toFixed(1)}): frames and plans wait for it, and figures are rough.`);
}
console.log('');
const subjects: { readonly [subject: string]: () => Bar[] | Promise<Bar[]> } = {
  memory: memoryBars,
  repeat: repeatBars,
  measure: measureBars,
  plan: planBars,
  order: runningOrderBars,
  anchors: anchorsBars,
  findings: findingsBars,
  opening: openingBars,
  growth: growthBars,
  placing: placingBars,
  reading: readingBars,
  sheet: sheetBars,
  'chart-image': chartImageBars,
  starting: startingBars,
  // Loaded late: the bundler and the browser's driver fill the memory that plans are timed in.
  painting: async () => (await import('./painting.ts')).paintingBars(),
  dragging: async () => (await import('./dragging.ts')).draggingBars(),
  'purl-side': async () => (await import('./purl-side.ts')).purlSideBars(),
  gauges: async () => (await import('./gauges.ts')).gaugesBars(),
  motifs: async () => (await import('./many-motifs.ts')).manyMotifsBars(),
  remedies: async () => (await import('./remedies.ts')).remediesBars(),
  visiting: async () => (await import('./visiting.ts')).visitingBars(),
  hand: async () => (await import('./hand.ts')).handBars(),
  previewing: async () => (await import('./previewing.ts')).previewingBars(),
  'sheets-shown': async () => (await import('./sheets-shown.ts')).sheetsShownBars(),
  typing: async () => (await import('./typing.ts')).typingBars(),
  beginning: async () => (await import('./beginning.ts')).beginningBars(),
  keeping: async () => (await import('./keeping.ts')).keepingBars(),
  photo: async () => (await import('./photo.ts')).photoBars(),
  knitting: async () => (await import('./knitting.ts')).knittingBars(),
  loading: loadingBars,
};
for (const name of asked) {
  if (!Object.hasOwn(subjects, name))
    throw new Error(`There is no ${name}; there are ${Object.keys(subjects).join(', ')}`);
}
const bars: Bar[] = [];
for (const [subject, barsOf] of Object.entries(subjects)) {
  if (asked.length > 0 && !asked.includes(subject)) continue;
  for (const bar of await barsOf()) {
    console.log(barLine(bar));
    bars.push(bar);
  }
}
const told = bars.map(isMet).filter((met) => met !== null);
if (values.slowed) {
  // Sizes are no slower.
  const timed = bars.filter((bar) => isMet(bar) !== null && bar.unit === undefined);
  const missed = timed.filter((bar) => isMet(bar) === true);
  console.log(`\n${timed.length - missed.length} of ${timed.length} bars notice that what they measure is slower`);
  for (const { name } of missed) console.log(`not noticed: ${name}`);
  // What was slowed on purpose is no result to keep.
  process.exit(missed.length === 0 ? 0 : 1);
}
console.log(`\n${told.filter((met) => met).length} of ${told.length} bars met`);

const git = (...given: readonly string[]): string => execFileSync('git', given, { encoding: 'utf8' }).trim();
const changed = git('status', '--porcelain') === '' ? '' : ' changed';
const about = {
  machine: `${hostname()}, ${processors.length} × ${processors[0]?.model ?? 'unknown processor'}`,
  node: process.version,
  commit: `${git('rev-parse', '--short', 'HEAD')}${changed}`,
  at: started.toISOString(),
  load,
};
mkdirSync(dirname(into), { recursive: true });
writeFileSync(into, resultsToText(about, bars));
console.log(`Written to ${into}`);
if (before) {
  const lines = movedLines(before, bars, asked.length > 0);
  console.log(`\nAgainst ${before.commit} on ${before.machine}, ${before.at} (load ${before.load.toFixed(1)}):`);
  console.log(lines.length > 0 ? lines.join('\n') : 'nothing moved by more than a fifth');
}
