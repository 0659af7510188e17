/** A short turn of the soak: random use of all benches, and nothing to complain of. `npm run soak` goes on for 15 minutes. */
import { soak } from '../soak/soak.ts';
import { expect, test } from './app.ts';

/** Deeds that fit into a test on a machine with much else to do. */
const DEEDS = 6;

test('random use of all benches goes on without a complaint', async ({ page, start }) => {
  await start();
  const { deeds, measured } = await soak(page, {
    seed: 7,
    isOver: (done) => done >= DEEDS,
    isMeasured: () => true,
  });
  expect(deeds).toBeGreaterThanOrEqual(DEEDS);
  expect(measured).not.toHaveLength(0);
  for (const { heapMb, nodes, listeners } of measured) {
    expect(heapMb).toBeGreaterThan(1);
    expect(Math.min(nodes, listeners)).toBeGreaterThan(10);
  }
});
