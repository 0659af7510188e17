/** The tests in a real Chromium, run by Playwright. */
import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { findChromium, HOW_TO_GET_CHROMIUM, installChromium } from '../chromium.ts';
import type { Options } from './options.ts';
import { readReport, root, run } from './programs.ts';
import { failed, sumOf, type Failure, type Result } from './result.ts';

interface Suite {
  readonly title: string;
  readonly suites?: readonly Suite[];
  readonly specs?: readonly {
    readonly title: string;
    readonly file: string;
    readonly tests: readonly {
      readonly status: 'expected' | 'unexpected' | 'flaky' | 'skipped';
      readonly results: readonly {
        readonly attachments: readonly { readonly name: string; readonly path?: string }[];
      }[];
    }[];
  }[];
}

interface Report {
  readonly stats: { readonly expected: number; readonly skipped: number };
  readonly suites: readonly Suite[];
}

/** `folder` is where pictures of this run go, from the project's folder. */
export async function endToEndTests(options: Options, scratch: string, folder: string): Promise<Result | null> {
  if (!options.parts.includes('e2e')) return null;
  installChromium();
  if (findChromium() === null) {
    console.error(HOW_TO_GET_CHROMIUM);
    return failed('end-to-end tests: no Chromium');
  }
  if (!options.isAlone) return playwright('end-to-end tests', [], options, scratch, folder);
  const results: Result[] = [];
  for (const file of readdirSync(join(root, 'tests', 'e2e')).filter((name) => name.endsWith('.spec.ts'))) {
    results.push(await playwright(`${file} alone`, [`/${file}`], options, scratch, join(folder, file)));
  }
  return sumOf(results);
}

async function playwright(
  title: string,
  files: readonly string[],
  { seed }: Options,
  scratch: string,
  folder: string,
): Promise<Result> {
  const report = join(scratch, 'playwright.json');
  const isGood = await run({
    title,
    program: '@playwright/test#playwright',
    args: [
      'test',
      '--config=tests/playwright.config.ts',
      '--reporter=list,json',
      `--output=${join(root, folder)}`,
      ...(seed === null ? [] : [`--shuffle=${seed}`]),
      ...files,
    ],
    env: { PLAYWRIGHT_JSON_OUTPUT_NAME: report },
    shows: 'at once',
  });
  const read = readReport<Report>(report);
  if (!read) return failed(title);
  const failures = read.suites.flatMap((suite) => failuresIn(suite, []));
  // A file that does not load, or a browser that does not start, fails the run without a test of its own.
  if (failures.length === 0 && !isGood) failures.push({ name: title, pictures: [] });
  return { passed: read.stats.expected, failures, skipped: read.stats.skipped };
}

function failuresIn(suite: Suite, above: readonly string[]): Failure[] {
  const titles = [...above, suite.title];
  const here = (suite.specs ?? []).flatMap(({ title, tests }) =>
    tests
      .filter(({ status }) => status === 'unexpected' || status === 'flaky')
      .map(({ results }) => ({
        name: `e2e/${[...titles, title].join(' › ')}`,
        pictures: results
          .flatMap(({ attachments }) => attachments)
          .flatMap(({ name, path }) => (name === 'screenshot' && path ? [relative(root, path)] : [])),
      })),
  );
  return [...here, ...(suite.suites ?? []).flatMap((inner) => failuresIn(inner, titles))];
}
