/** What `npm test` is asked, and what it says at the end. */
import { readdirSync } from 'node:fs';
import { resolve, sep } from 'node:path';
import { describe, expect, it } from 'vitest';
import { optionsOf, PARTS } from '../../runner/options.ts';
import { countLine, failed, failureLines, sumOf } from '../../runner/result.ts';

const SEED = 7;
const ALL = { parts: PARTS, repeat: 1, isBusy: false, seed: null, isAlone: false };

describe('npm test', () => {
  it.each([
    [[], ALL],
    [['--only', 'e2e'], { ...ALL, parts: ['e2e'] }],
    [['--only=e2e, lint', '--only', 'unit'], { ...ALL, parts: ['lint', 'unit', 'e2e'] }],
    [['--repeat', '5', '--busy'], { ...ALL, repeat: 5, isBusy: true }],
    [['--shuffle'], { ...ALL, seed: SEED }],
    [['--shuffle=0', '--alone'], { ...ALL, seed: 0, isAlone: true }],
  ])('understands %j', (args, options) => {
    expect(optionsOf(args, SEED)).toEqual(options);
  });

  it('runs every folder that has tests', () => {
    const tests = resolve(import.meta.dirname, '../..');
    const files = readdirSync(tests, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.test.ts'));
    const folders = new Set(files.map((name) => name.split(sep)[0]));
    expect([...folders].filter((folder) => !PARTS.some((part) => part === folder))).toEqual([]);
    expect(folders.size).toBeGreaterThan(1);
  });

  it.each([
    [['--only', 'nothing'], 'There is no part "nothing".'],
    [['--repeat', '0'], '--repeat takes a whole number from 1, not "0".'],
    [['--repeat', 'often'], '--repeat takes a whole number from 1, not "often".'],
    [['--shuffle=x'], '--shuffle takes a whole number from 0, not "x".'],
    [['--fast'], expect.stringContaining('--fast')],
    [['e2e'], expect.stringContaining('e2e')],
  ])('refuses %j in a sentence', (args, sentence) => {
    expect(optionsOf(args, SEED)).toEqual(sentence);
  });
});

describe('the end of a run', () => {
  const broken = { name: 'e2e/sheet.spec.ts › writes', pictures: ['test-results/round-1/a.png'] };
  const again = { ...broken, pictures: ['test-results/round-2/a.png'] };

  it('counts what was run, over all rounds', () => {
    const rounds = [
      { passed: 3, failures: [broken], skipped: 1 },
      failed('lint'),
      { passed: 4, failures: [], skipped: 1 },
    ];
    expect(countLine(sumOf(rounds))).toBe('7 passed, 2 failed, 2 skipped');
    expect(countLine(sumOf([]))).toBe('0 passed, 0 failed, 0 skipped');
  });

  it('names each failure once, with all its pictures', () => {
    expect(failureLines([broken, { name: 'lint', pictures: [] }, again])).toEqual([
      '  e2e/sheet.spec.ts › writes (2 times)',
      '    picture: test-results/round-1/a.png',
      '    picture: test-results/round-2/a.png',
      '  lint',
    ]);
  });
});
