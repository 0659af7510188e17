/**
 * The page's policy forbids code that is made of text, and browsers report each
 * attempt; so nothing may as much as ask whether it could be made.
 */
import { Worker } from 'node:worker_threads';
import { expect, it } from 'vitest';
import '@shared/schema/index.ts';
import { asked } from './asked.mjs';

it('the library asks whether code may be made, left to itself', async () => {
  const worker = new Worker(new URL('asked.mjs', import.meta.url), { workerData: 'ask' });
  const made = await new Promise((resolve, reject) => worker.once('message', resolve).once('error', reject));
  expect(made).toContainEqual(['']);
});

it('and does not where the program has set it up', async () => {
  expect(await asked()).toEqual([]);
});
