/**
 * `npm run kills`: the host killed 200 times while it saves, host and browser 50
 * times together while a hand draws, and 200 times while rows are counted.
 * `-- saving 20`, `-- drawing 5` or `-- knitting 5` does a part, `-- --seed 7`
 * other moments.
 */
import { parseArgs } from 'node:util';
import { chanceOf } from './chance.ts';
import { killWhileDrawing } from './while-drawing.ts';
import { killWhileKnitting } from './while-knitting.ts';
import { killWhileSaving } from './while-saving.ts';

const { values, positionals } = parseArgs({
  options: { seed: { type: 'string', default: String(Date.now() % 1_000_000) } },
  allowPositionals: true,
});
const [part, count] = positionals;
const seed = Number(values.seed);
console.log(`seed ${seed}`);

if (part === undefined || part === 'saving') {
  const { kills, saves } = await killWhileSaving(Number(count ?? 200), chanceOf(seed));
  console.log(`${kills} kills while saving, ${saves} saves: one whole version each time, and no litter`);
}
if (part === undefined || part === 'drawing') {
  const { kills, worstMs } = await killWhileDrawing(Number(count ?? 50), chanceOf(seed));
  console.log(`${kills} kills of host and browser while drawing: at most ${worstMs} ms were missing`);
}
if (part === undefined || part === 'knitting') {
  const { kills, rows, inHand } = await killWhileKnitting(Number(count ?? 200), chanceOf(seed));
  console.log(
    `${kills} kills of host and browser while ${rows} rows were counted: none lost, ${inHand} times the row in hand was there`,
  );
}
