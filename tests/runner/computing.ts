/** The tests that need no browser, run by Vitest. */
import { join, relative } from 'node:path';
import type { Options, Part } from './options.ts';
import { readReport, root, run } from './programs.ts';
import { failed, type Result } from './result.ts';

interface Report {
  readonly numPassedTests: number;
  readonly numPendingTests: number;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
  }[];
}

const FOLDERS: readonly Part[] = ['unit', 'property', 'reference', 'faults', 'fuzz'];

export async function computingTests({ parts, seed }: Options, scratch: string): Promise<Result | null> {
  const folders = FOLDERS.filter((folder) => parts.includes(folder));
  if (folders.length === 0) return null;
  const title = `${folders.join(', ')} tests`;
  const report = join(scratch, 'vitest.json');
  const isGood = await run({
    title,
    program: 'vitest',
    args: [
      'run',
      '--config=tests/vitest.config.ts',
      '--reporter=dot',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...(seed === null ? [] : ['--sequence.shuffle.files', '--sequence.shuffle.tests', `--sequence.seed=${seed}`]),
      ...folders.map((folder) => `tests/${folder}/`),
    ],
    shows: 'at once',
  });
  const read = readReport<Report>(report);
  if (!read) return failed(title);
  const names = read.testResults.flatMap(({ name, status, assertionResults }) => {
    const file = relative(join(root, 'tests'), name);
    const wrong = assertionResults
      .filter((test) => test.status === 'failed')
      .map(({ fullName }) => `${file} › ${fullName}`);
    // A file that does not even load fails without a test of its own.
    return wrong.length === 0 && status === 'failed' ? [file] : wrong;
  });
  // Something beside the tests may have failed the run, such as an error that nobody caught.
  if (names.length === 0 && !isGood) names.push(title);
  return {
    passed: read.numPassedTests,
    failures: names.map((name) => ({ name, pictures: [] })),
    skipped: read.numPendingTests,
  };
}
