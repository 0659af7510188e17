/**
 * `npm test`: everything that must hold, and at the end the names of what
 * failed, where its pictures are, and one line with the counts. A check that
 * fails does not keep the others from running.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { keepBusy } from './runner/busy.ts';
import { computingTests } from './runner/computing.ts';
import { endToEndTests } from './runner/end-to-end.ts';
import { optionsOf, USAGE, type Options } from './runner/options.ts';
import { quickChecks } from './runner/quick.ts';
import { countLine, failureLines, sumOf, type Result } from './runner/result.ts';

/** Everything once. `pictures` is the folder for pictures of failures, from the project's folder. */
async function runOnce(options: Options, scratch: string, pictures: string): Promise<Result> {
  const quick = await quickChecks(options.parts);
  const computing = await computingTests(options, scratch);
  const endToEnd = await endToEndTests(options, scratch, pictures);
  return sumOf([...quick, ...[computing, endToEnd].filter((result) => result !== null)]);
}

async function main(options: Options): Promise<void> {
  const scratch = mkdtempSync(join(tmpdir(), 'walewright-test-'));
  const stopBusy = options.isBusy ? keepBusy() : null;
  const rounds: Result[] = [];
  try {
    for (let round = 1; round <= options.repeat; round++) {
      const isOne = options.repeat === 1;
      // Each round in another order, told by the seed and the number of the round.
      const seed = options.seed === null ? null : options.seed + round - 1;
      if (!isOne) console.log(`\n══ Round ${round} of ${options.repeat}${seed === null ? '' : `, seed ${seed}`}`);
      const pictures = isOne ? 'test-results' : join('test-results', `round-${round}`);
      const started = Date.now();
      const result = await runOnce({ ...options, seed }, scratch, pictures);
      rounds.push(result);
      const seconds = Math.round((Date.now() - started) / 1000);
      if (!isOne) console.log(`\nRound ${round} of ${options.repeat}, ${seconds} s: ${countLine(result)}`);
    }
  } finally {
    stopBusy?.();
    rmSync(scratch, { recursive: true, force: true });
  }
  const all = sumOf(rounds);
  if (all.failures.length > 0) console.log(`\nFailed:\n${failureLines(all.failures).join('\n')}`);
  console.log(`\n${countLine(all)}`);
  process.exitCode = all.failures.length === 0 ? 0 : 1;
}

const options = optionsOf(process.argv.slice(2), Date.now() % 1_000_000);
if (typeof options === 'string') {
  console.error(`${options}\n\n${USAGE}`);
  process.exitCode = 2;
} else {
  await main(options);
}
