/** `npm run bench`: how fast the program is, as ratios that hold on any machine, each beside its bar. */
import { cpus } from 'node:os';
import { barLine, isMet } from './bar.ts';
import { planBars, repeatBars } from './computing.ts';
import { paintingBars } from './painting.ts';

console.log(`Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}\n`);
let met = 0;
let all = 0;
for (const group of [paintingBars, repeatBars, planBars]) {
  for (const bar of await group()) {
    console.log(barLine(bar));
    if (bar.limit !== null) all++;
    if (isMet(bar) === true) met++;
  }
}
console.log(`\n${met} of ${all} bars met`);
