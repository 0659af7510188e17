import { describe, expect, it } from 'vitest';
import { branchesTooRare } from '../../digests/coverage.ts';
import { BATCHES, differingIn, digestOf, digestOfBatch } from '../../digests/digest.ts';
import { fixtureNames, fixtureText } from '../../digests/fixtures.ts';
import { generatedFile, VERSIONS, type Version } from '../../digests/generated/project-file.ts';
import { readRecord } from '../../digests/record.ts';
import { canonical, sampleText, saidOf } from '../../digests/said.ts';

const recorded = readRecord();

/** A share of the batches; `npm run digests` asks all. */
const SHARE: readonly (readonly [Version, number])[] = [
  [1, 0],
  [2, 0],
  [2, 1],
  [3, 0],
  [3, 1],
  [3, 2],
  [4, 0],
  [4, 1],
  [5, 0],
  [5, 1],
  [6, 0],
  [6, 1],
  [7, 0],
  [7, 1],
];

describe('what is said of a project is what was recorded: npm run digests -- --find shows what differs', () => {
  it.each(fixtureNames())('of %s', (name) => {
    expect(digestOf(saidOf(fixtureText(name)))).toEqual(recorded.fixtures[name]);
  });

  it('of the sample, which is the one that is kept as a file', () => {
    expect(digestOf(saidOf(sampleText()))).toEqual(recorded.fixtures['skerry-sleeve-3.walewright']);
  });

  it.each(SHARE)('of projects as version %i has them, batch %i', (version, batch) => {
    expect(digestOfBatch(version, batch)).toEqual(recorded.generated[version][batch]);
  });

  it('and nothing is recorded that is not there', () => {
    expect(Object.keys(recorded.fixtures)).toEqual(fixtureNames());
    for (const version of VERSIONS) expect(recorded.generated[version]).toHaveLength(BATCHES[version]);
  });
});

describe('generated projects', () => {
  it.each(VERSIONS)('of version %i take every branch of what a file may hold', (version) => {
    expect(branchesTooRare(version)).toEqual([]);
  });

  it('are the same each time, and others for other numbers', () => {
    expect(generatedFile(3, 7)).toEqual(generatedFile(3, 7));
    expect(generatedFile(3, 7)).not.toEqual(generatedFile(3, 8));
    expect(generatedFile(2, 7)).not.toEqual({ ...generatedFile(3, 7), version: 2 });
  });

  it('are planned in all their sizes', () => {
    const file = Array.from({ length: 50 }, (_, number) => generatedFile(3, number) as SizedFile).find(
      ({ sizes }) => sizes.smaller.length > 0 && sizes.larger.length > 0,
    ) as SizedFile;
    const { smaller, larger } = file.sizes;
    expect(saidOf(JSON.stringify(file)).plans).toHaveLength(smaller.length + 1 + larger.length);
  });
});

interface SizedFile {
  readonly sizes: { readonly smaller: readonly unknown[]; readonly larger: readonly unknown[] };
}

describe('a digest', () => {
  const answers = saidOf(fixtureText('two-groups-3.walewright'));

  it('is another one where a plan or the saved file is another one', () => {
    const own = digestOf(answers);
    const plans = answers.plans.map((plan) => plan.replace('"row":4', '"row":5'));
    expect(digestOf({ ...answers, plans })).toEqual({ ...own, plans: expect.not.stringMatching(own.plans) as string });
    const file = answers.file.replace('"small"', '"Small"');
    expect(digestOf({ ...answers, file })).toEqual({ ...own, files: expect.not.stringMatching(own.files) as string });
  });

  it('does not depend on the order in which fields were made', () => {
    expect(canonical({ b: [{ d: 1, c: 2 }], a: null })).toBe('{"a":null,"b":[{"c":2,"d":1}]}');
  });

  it('of a batch tells which project differs', () => {
    const each = Array.from({ length: 50 }, (_, index) => String(100_000 + index)).join('');
    const batch = { plans: '', files: '', each };
    expect(differingIn(batch, batch)).toEqual([]);
    expect(differingIn(batch, { ...batch, each: each.replace('100017', 'abcdef') })).toEqual([17]);
  });
});
