/**
 * `npm run soak -- [minutes] [seed]`: the built program in Chromium, used at
 * random, 15 minutes if nothing else is said.
 */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';

const [minutes = '15', seed = '1'] = process.argv.slice(2);
if (!(Number(minutes) > 0) || !Number.isInteger(Number(seed))) {
  console.error('npm run soak -- [minutes, more than 0] [seed, a whole number]');
  process.exit(2);
}
const playwright = createRequire(import.meta.url).resolve('@playwright/test/cli');
const config = resolve(import.meta.dirname, 'playwright.config.ts');
const { status } = spawnSync(process.execPath, [playwright, 'test', `--config=${config}`], {
  stdio: 'inherit',
  env: { ...process.env, WALEWRIGHT_SOAK: JSON.stringify({ minutes: Number(minutes), seed: Number(seed) }) },
});
process.exitCode = status ?? 1;
