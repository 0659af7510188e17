/**
 * `npm run digests`: whether the program says of all recorded projects what it
 * said when they were recorded. `-- --find` shows what differs in the first
 * one that does; `-- --renew` records what is said now.
 */
import { branchesTooRare, LEAST } from './coverage.ts';
import { BATCH, BATCHES, differingIn, digestOf, digestOfBatch, numbersOf, type BatchDigest } from './digest.ts';
import { fixtureNames, fixtureText } from './fixtures.ts';
import { VERSIONS, type Version } from './generated/project-file.ts';
import { readRecord, writeRecord, type Record } from './record.ts';
import { saidOf } from './said.ts';
import { whatDiffers } from './what-differs.ts';

/** At least this share of sizes must be planned, or the digests tell little more than errors. */
const LEAST_PLANNED = 0.4;

/** What is said now. Throws `Error` if the generated projects ask too little. */
function saidNow(): Record {
  const fixtures = fixtureNames().map((name) => [name, digestOf(saidOf(fixtureText(name)))]);
  return {
    fixtures: Object.fromEntries(fixtures),
    generated: {
      1: batchesOf(1),
      2: batchesOf(2),
      3: batchesOf(3),
      4: batchesOf(4),
      5: batchesOf(5),
      6: batchesOf(6),
      7: batchesOf(7),
    },
  };
}

function batchesOf(version: Version): BatchDigest[] {
  const rare = branchesTooRare(version);
  if (rare.length > 0) throw new Error(`Version ${version}: taken fewer than ${LEAST} times:\n${rare.join('\n')}`);
  let [planned, sizes] = [0, 0];
  const batches = Array.from({ length: BATCHES[version] }, (_, batch) =>
    digestOfBatch(version, batch, (_file, answers) => {
      planned += answers.planned;
      sizes += answers.plans.length;
    }),
  );
  console.log(`version ${version}: ${batches.length * BATCH} projects, ${planned} of ${sizes} sizes can be knitted`);
  if (planned < sizes * LEAST_PLANNED) throw new Error(`Version ${version}: too few sizes can be knitted`);
  return batches;
}

/** Names of what differs, each with what `say.ts` takes to print it. */
function differences(recorded: Record, now: Record): { readonly name: string; readonly asked: readonly string[] }[] {
  const names = new Set([...Object.keys(recorded.fixtures), ...Object.keys(now.fixtures)]);
  const fixtures = [...names]
    .filter((name) => JSON.stringify(recorded.fixtures[name]) !== JSON.stringify(now.fixtures[name]))
    .map((name) => ({ name, asked: [name] }));
  const generated = VERSIONS.flatMap((version) =>
    now.generated[version].flatMap((own, batch) => {
      const before = recorded.generated[version]?.[batch];
      const places = before ? differingIn(before, own) : numbersOf(batch).map((_, index) => index);
      return places.map((place) => {
        const number = String(numbersOf(batch)[place]);
        return { name: `version ${version}, batch ${batch}, project ${number}`, asked: [String(version), number] };
      });
    }),
  );
  return [...fixtures, ...generated];
}

const given = process.argv.slice(2);
const now = saidNow();
if (given.includes('--renew')) {
  writeRecord(now);
} else {
  const found = differences(readRecord(), now);
  const [first] = found;
  if (first) {
    console.log(
      `\n${found.length} differ:\n${found
        .slice(0, 20)
        .map(({ name }) => `  ${name}`)
        .join('\n')}`,
    );
    if (found.length > 20) console.log(`  … and ${found.length - 20} more`);
    console.log(
      given.includes('--find') ? `\n${first.name}\n${whatDiffers(first.asked)}` : '\n-- --find shows the first',
    );
    process.exitCode = 1;
  } else {
    console.log('\nAll as recorded');
  }
}
