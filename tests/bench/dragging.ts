/** Dragging a group of a large piece in a headless Chromium, against drawing the same picture on a bare canvas. */
import { median, quantile, type Bar } from './bar.ts';
import { withPage } from './in-page.ts';
import type { Distance, DragTimes } from './page/dragging.ts';
import type { PaintingBench } from './page/painting-page.ts';

const ROUNDS = 5;
const FRAMES = 240;

declare const bench: PaintingBench;

const SEEN: { readonly [From in Distance]: string } = { near: 'from near', whole: 'as a whole' };

export async function draggingBars(): Promise<Bar[]> {
  return await withPage(async (page) => {
    const bars: Bar[] = [];
    for (const distance of ['near', 'whole'] as const) {
      const rounds: DragTimes[] = [];
      for (let round = 0; round < ROUNDS; round++) {
        rounds.push(
          await page.evaluate(([from, frames]) => bench.dragInTurn(from, frames), [distance, FRAMES] as const),
        );
      }
      const late = (times: readonly number[]): number => quantile(times, 0.95);
      bars.push({
        name: `dragging a group on 200 × 1000 with floats, wraps, guides and spaces, seen ${SEEN[distance]}, from the pointer event to the pixels, 95 of 100 frames, against a bare 2D canvas`,
        kind: 'at most',
        limit: 1.4,
        ratio: median(rounds.map(({ program, bare }) => late(program) / late(bare))),
        ours: median(rounds.map(({ program }) => late(program))),
        against: median(rounds.map(({ bare }) => late(bare))),
      });
    }
    return bars;
  });
}
