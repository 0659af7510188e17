/** The titles that the runners list. Nothing is run. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { binary, readReport, root } from '../runner/programs.ts';
import type { Title } from './compare.ts';

/** What Vitest says of a test; the suites that it stands in and itself, ` > ` between them. */
interface Listed {
  readonly name: string;
  readonly file: string;
}

/** What Playwright says of a file or a `describe`. */
interface Suite {
  readonly title: string;
  readonly suites?: readonly Suite[];
  readonly specs?: readonly { readonly title: string; readonly tests: readonly unknown[] }[];
}

/** All titles in order. Throws `Error` if a runner lists none. */
export function listedTitles(): Title[] {
  const scratch = mkdtempSync(join(tmpdir(), 'walewright-titles-'));
  try {
    return [
      ...vitestTitles(join(scratch, 'vitest.json')),
      ...playwrightTitles(join(scratch, 'playwright.json')),
    ].sort();
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

function vitestTitles(report: string): Title[] {
  const listed = reportOf<readonly Listed[]>('vitest', report, [
    'list',
    '--config=tests/vitest.config.ts',
    `--json=${report}`,
  ]);
  return listed.map(({ name, file }) => {
    const path = relative(join(root, 'tests'), file).replaceAll('\\', '/');
    return oneLine(`${path} › ${name.replaceAll(' > ', ' › ')}`);
  });
}

function playwrightTitles(report: string): Title[] {
  const { suites } = reportOf<{ readonly suites: readonly Suite[] }>('@playwright/test#playwright', report, [
    'test',
    '--list',
    '--config=tests/playwright.config.ts',
    '--reporter=json',
  ]);
  return suites.flatMap((suite) => titlesIn(suite, 'e2e/'));
}

function titlesIn({ title, suites = [], specs = [] }: Suite, above: string): Title[] {
  const path = `${above}${title}`;
  return [
    ...specs.flatMap((spec) => spec.tests.map(() => oneLine(`${path} › ${spec.title}`))),
    ...suites.flatMap((suite) => titlesIn(suite, `${path} › `)),
  ];
}

function reportOf<T>(program: string, report: string, args: readonly string[]): T {
  const { status, stderr } = spawnSync(process.execPath, [binary(program), ...args], {
    cwd: root,
    env: { ...process.env, PLAYWRIGHT_JSON_OUTPUT_NAME: report },
    encoding: 'utf8',
    maxBuffer: 1e9,
  });
  const read = status === 0 ? readReport<T>(report) : null;
  if (read === null) throw new Error(`${program} lists no tests:\n${stderr}`);
  return read;
}

/** A title is one line of the list. */
function oneLine(title: string): Title {
  return title.replace(/\s*\n\s*/g, ' ');
}
