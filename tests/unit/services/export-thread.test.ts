/** Making files in a thread, so that the host goes on. */
import { expect, it } from 'vitest';
import { problemOf } from '@shared/problem/index.ts';
import { projectAt, projectToText, sampleProject, START_PLACE } from '@shared/project/index.ts';
import { fileTextOf } from '../../written-projects.ts';
import { TEST_DAY } from '../../day.ts';
import { makeExportsInThread } from '../../../src-main/services/export/in-thread.ts';
import { makeExports } from '../../../src-main/services/export/index.ts';

const at = START_PLACE;
const wanted = { kinds: ['chart-svg', 'rows-csv'], paper: 'a4', date: TEST_DAY, lengthUnit: 'cm' } as const;

it('the thread makes the same files, and throws the same problems', async () => {
  const project = sampleProject();
  expect(await makeExportsInThread({ ...wanted, at, project: projectToText(project) })).toEqual(
    await makeExports({ ...wanted, project: projectAt(project) }),
  );
  const refused = await makeExportsInThread({ ...wanted, at, project: '{}' }).then(() => null, problemOf);
  expect(refused).toMatchObject({ code: 'project-not-ours' });
});

it('the host is never held up for long while files are made', async () => {
  const sample = projectAt(sampleProject());
  const [motif] = sample.motifs;
  if (!motif) throw new Error('The sample has a motif');
  const grid = { width: 200, height: 1000, cells: Uint8Array.from({ length: 200_000 }, (_, i) => ((i * 7) % 11) % 2) };
  const project = fileTextOf({ ...sample, motifs: [{ ...motif, grid }], patterns: [] });
  const start = performance.now();
  let last = start;
  let longest = 0;
  const ticks = setInterval(() => {
    longest = Math.max(longest, performance.now() - last);
    last = performance.now();
  }, 5);
  await makeExportsInThread({ ...wanted, kinds: ['chart-png'], at, project });
  longest = Math.max(longest, performance.now() - last);
  clearInterval(ticks);
  const whole = performance.now() - start;
  // Made on the event loop, nearly all of it is one hold-up.
  expect(longest / whole, `${longest} of ${whole} ms`).toBeLessThan(0.4);
});
