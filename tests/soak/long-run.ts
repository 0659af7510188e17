/**
 * The program used at random for a long time. Fails if the page complains of
 * anything, or if what it keeps in memory in the last quarter is more than 10 %
 * above the second.
 */
import { expect, test } from '../e2e/app.ts';
import { growths } from './memory.ts';
import { soak } from './soak.ts';

const MOST_GROWTH = 1.1;
/** Measures in a run, so that each quarter has ten. */
const MEASURES = 40;

const { minutes, seed } = JSON.parse(process.env['WALEWRIGHT_SOAK'] ?? '{"minutes":15,"seed":1}') as {
  readonly minutes: number;
  readonly seed: number;
};

test(`${minutes} minutes of random use, seed ${seed}`, async ({ page, start }) => {
  await start();
  const started = performance.now();
  const elapsed = (): number => (performance.now() - started) / 60_000;
  let due = minutes / MEASURES;
  const { deeds, measured } = await soak(page, {
    seed,
    isOver: () => elapsed() >= minutes,
    isMeasured: () => elapsed() >= due,
    onmeasure: ({ heapMb, nodes, listeners }, done) => {
      while (due <= elapsed()) due += minutes / MEASURES;
      const at = `${elapsed().toFixed(1)} min`.padStart(9);
      console.log(`${at} ${done} deeds: ${heapMb.toFixed(2)} MB, ${nodes} nodes, ${listeners} listeners`);
    },
  });
  const found = growths(measured);
  console.log(`${deeds} deeds. Medians of the second and of the last quarter:`);
  for (const { name, second, last, ratio } of found) {
    console.log(`  ${name.padEnd(9)} ${second.toFixed(2)} → ${last.toFixed(2)}, ${ratio.toFixed(3)} times`);
  }
  for (const { name, ratio } of found) expect(ratio, `${name} in the last quarter`).toBeLessThanOrEqual(MOST_GROWTH);
});
