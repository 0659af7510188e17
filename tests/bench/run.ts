/**
 * `npm run bench`: how fast the program is, as ratios that hold on any machine,
 * each beside its bar. `npm run bench -- dragging` measures that subject alone.
 */
import { cpus, loadavg } from 'node:os';
import { barLine, isMet, type Bar } from './bar.ts';
import { measureBars, planBars, repeatBars, runningOrderBars } from './computing.ts';
import { anchorsBars } from './anchors.ts';
import { placingBars } from './placing.ts';
import { readingBars } from './reading.ts';
import { openingBars } from './opening.ts';
import { chartImageBars } from './chart-image.ts';
import { sheetBars } from './sheet.ts';
import { startingBars } from './starting.ts';
import { memoryBars } from './memory.ts';
import { firstLoadKb, MOST_KB } from './loading.ts';

const processors = cpus();
console.log(`Node ${process.version}, ${processors.length} × ${processors[0]?.model ?? 'unknown processor'}`);
const load = loadavg()[0] ?? 0;
if (load > processors.length / 2) {
  console.log(`The machine is busy (load ${load.toFixed(1)}): frames and plans wait for it, and figures are rough.`);
}
console.log('');
let met = 0;
let all = 0;
const subjects: { readonly [subject: string]: () => Bar[] | Promise<Bar[]> } = {
  memory: memoryBars,
  repeat: repeatBars,
  measure: measureBars,
  plan: planBars,
  order: runningOrderBars,
  anchors: anchorsBars,
  opening: openingBars,
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
  previewing: async () => (await import('./previewing.ts')).previewingBars(),
  knitting: async () => (await import('./knitting.ts')).knittingBars(),
};
const asked = process.argv.slice(2);
for (const [subject, barsOf] of Object.entries(subjects)) {
  if (asked.length > 0 && !asked.includes(subject)) continue;
  for (const bar of await barsOf()) {
    console.log(barLine(bar));
    if (bar.limit !== null) all++;
    if (isMet(bar) === true) met++;
  }
}
if (asked.length === 0 || asked.includes('loading')) {
  const kilobytes = await firstLoadKb();
  const isLight = kilobytes <= MOST_KB;
  console.log(
    `${(isLight ? 'met' : 'not met').padEnd(8)} ${`${kilobytes.toFixed(0)} kB (at most ${MOST_KB})`.padEnd(24)} first load, as the browser host sends it`,
  );
  all++;
  if (isLight) met++;
}
console.log(`\n${met} of ${all} bars met`);
