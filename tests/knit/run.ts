/**
 * `npm run knit`: random projects, each knitted in every size from its running
 * order by the simulated knitter. `-- --many 3000` says how many are knitted, `--seed 7` which ones,
 * `--look 12` prints the running order of one of them.
 */
import { parseArgs } from 'node:util';
import { knitPlan } from './knit-plan.ts';
import { kindsText, knitMany, projectsOf, rareKinds, triedText } from './tried.ts';

const { values } = parseArgs({
  options: {
    many: { type: 'string', default: '3000' },
    seed: { type: 'string', default: '13' },
    look: { type: 'string' },
  },
});
const seed = Number(values.seed);
if (values.look !== undefined) {
  const number = Number(values.look);
  const project = projectsOf(number + 1, seed)[number];
  console.log(JSON.stringify(project && knitPlan(project), null, 2));
} else {
  const tried = knitMany(Number(values.many), seed);
  const rare = rareKinds(tried);
  console.log(triedText(tried));
  console.log(kindsText(tried));
  if (rare.length > 0) console.log(`Too seldom: ${rare.join(', ')}`);
  process.exitCode = tried.wrong.length > 0 || rare.length > 0 ? 1 : 0;
}
