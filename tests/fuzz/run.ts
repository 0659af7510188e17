/**
 * `npm run fuzz`: 20,000 spoiled inputs for each reader.
 *
 *     npm run fuzz -- jpeg webp          these readers alone
 *     npm run fuzz -- --seed 7           other inputs; the seed is printed
 *     npm run fuzz -- --count 500        fewer
 *     npm run fuzz -- jpeg --seed 7 --only 123   one input again, written to fuzz-input
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { Found, fuzz, inputOf } from './fuzz.ts';
import { READERS } from './readers.ts';

const { values, positionals } = parseArgs({
  options: { seed: { type: 'string' }, count: { type: 'string' }, only: { type: 'string' } },
  allowPositionals: true,
});
const seed = Number(values.seed ?? Date.now() % 1_000_000);
const count = Number(values.count ?? 20_000);
const unknown = positionals.filter((name) => !READERS.some((reader) => reader.name === name));
if (unknown.length > 0 || !Number.isInteger(seed) || !(count >= 1)) {
  console.error(
    `Readers: ${READERS.map(({ name }) => name).join(', ')}. --seed, --count and --only take whole numbers.`,
  );
  process.exit(1);
}
const asked = READERS.filter(({ name }) => positionals.length === 0 || positionals.includes(name));
console.log(`seed ${seed}; the same again: npm run fuzz -- --seed ${seed}`);
let failures = 0;
for (const reader of asked) {
  try {
    if (values.only !== undefined) {
      const input = inputOf(reader, seed, Number(values.only));
      writeFileSync('fuzz-input', input);
      await reader.read(input);
      console.log(`${reader.name}: read`);
      continue;
    }
    const { read, refused, problems, longestMs, grownMb } = await fuzz(reader, seed, count);
    console.log(
      `${reader.name.padEnd(14)} ${read} read, ${refused} refused; longest ${longestMs.toFixed(0)} ms, ${grownMb.toFixed(0)} MB more; ` +
        [...problems]
          .sort((a, b) => b[1] - a[1])
          .map(([code, times]) => `${code} ${times}`)
          .join(', '),
    );
  } catch (thrown) {
    failures++;
    console.error(thrown instanceof Found ? thrown.message : thrown);
    if (thrown instanceof Found) {
      const index = /input (\d+)/.exec(thrown.message)?.[1] ?? '0';
      console.error(`  again: npm run fuzz -- ${reader.name} --seed ${seed} --only ${index}`);
    }
  }
}
console.log(failures === 0 ? 'Nothing was found.' : `${failures} readers failed.`);
process.exitCode = failures === 0 ? 0 : 1;
