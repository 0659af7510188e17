/**
 * `npm test`: everything that must hold, and at the end one line with the
 * counts. Lint, formatting, types and build count as one check each; they use
 * one processor each, so two go side by side. A check that fails does not keep
 * the others from running.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { findChromium, HOW_TO_GET_CHROMIUM, installChromium } from './chromium.ts';

interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

const root = resolve(import.meta.dirname, '..');
const scratch = mkdtempSync(join(tmpdir(), 'walewright-test-'));

/** Runs a program of node_modules/.bin; true if it ended well. */
function run(title: string, program: string, args: readonly string[], env: Record<string, string> = {}): boolean {
  console.log(`\n── ${title}`);
  const done = spawnSync(process.execPath, [resolve(root, binary(program)), ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  return done.status === 0;
}

/** The script behind a command, so that no shell is needed on any platform. */
function binary(program: string): string {
  const [name, command = name] = program.split('#') as [string, string?];
  const manifest = JSON.parse(readFileSync(resolve(root, 'node_modules', name, 'package.json'), 'utf8')) as {
    bin: string | Record<string, string>;
  };
  const entry = typeof manifest.bin === 'string' ? manifest.bin : manifest.bin[command.split('/').at(-1) as string];
  if (entry === undefined) throw new Error(`${name} has no command ${command}`);
  return join('node_modules', name, entry);
}

/** Runs a program beside others, and shows what it said once it has ended. */
async function check(title: string, program: string, args: readonly string[]): Promise<Counts> {
  const done = spawn(process.execPath, [resolve(root, binary(program)), ...args], { cwd: root });
  const said: Buffer[] = [];
  for (const stream of [done.stdout, done.stderr]) stream.on('data', (part: Buffer) => said.push(part));
  const status = await new Promise<number | null>((end) => done.on('error', () => end(null)).on('close', end));
  console.log(`\n── ${title}`);
  process.stdout.write(Buffer.concat(said));
  const isGood = status === 0;
  return { passed: isGood ? 1 : 0, failed: isGood ? 0 : 1, skipped: 0 };
}

async function inTurn(checks: readonly (() => Promise<Counts>)[]): Promise<Counts[]> {
  const results: Counts[] = [];
  for (const next of checks) results.push(await next());
  return results;
}

function unitTests(): Counts {
  const report = join(scratch, 'vitest.json');
  run('unit, property, reference and fault tests', 'vitest', [
    'run',
    '--config=tests/vitest.config.ts',
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  const read = readReport<{
    numPassedTests: number;
    numFailedTests: number;
    numPendingTests: number;
    success: boolean;
  }>(report);
  if (!read) return { passed: 0, failed: 1, skipped: 0 };
  // A file that does not even load fails the run without counting as a test.
  const failed = Math.max(read.numFailedTests, read.success ? 0 : 1);
  return { passed: read.numPassedTests, failed, skipped: read.numPendingTests };
}

function endToEndTests(): Counts {
  installChromium();
  if (findChromium() === null) {
    console.error(HOW_TO_GET_CHROMIUM);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const report = join(scratch, 'playwright.json');
  const isGood = run(
    'end-to-end tests',
    '@playwright/test#playwright',
    ['test', '--config=tests/playwright.config.ts', '--reporter=list,json'],
    { PLAYWRIGHT_JSON_OUTPUT_NAME: report },
  );
  const read = readReport<{ stats: { expected: number; unexpected: number; flaky: number; skipped: number } }>(report);
  if (!read) return { passed: 0, failed: 1, skipped: 0 };
  const { expected, unexpected, flaky, skipped } = read.stats;
  return { passed: expected, failed: Math.max(unexpected + flaky, isGood ? 0 : 1), skipped };
}

function readReport<T>(path: string): T | null {
  try {
    return JSON.parse(readFileSync(path, 'utf8')) as T;
  } catch {
    return null;
  }
}

const quick = await Promise.all([
  inTurn([
    () => check('lint', 'eslint', ['.']),
    () => check('formatting', 'prettier', ['--check', '--log-level=warn', '.']),
  ]),
  inTurn([
    ...['src-shared', 'src-main', 'tests'].map(
      (layer) => () => check(`types of ${layer}`, 'typescript#tsc', ['-p', layer]),
    ),
    () =>
      check('types of src-renderer', 'svelte-check', [
        '--tsconfig',
        'src-renderer/tsconfig.json',
        '--fail-on-warnings',
      ]),
    () => check('build', 'electron-vite', ['build', '--logLevel=warn']),
  ]),
]);
const results: Counts[] = [...quick.flat(), unitTests(), endToEndTests()];
rmSync(scratch, { recursive: true, force: true });

const sum = (pick: (counts: Counts) => number): number => results.reduce((total, counts) => total + pick(counts), 0);
const failed = sum((counts) => counts.failed);
console.log(`\n${sum((counts) => counts.passed)} passed, ${failed} failed, ${sum((counts) => counts.skipped)} skipped`);
process.exitCode = failed === 0 ? 0 : 1;
