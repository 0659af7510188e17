/** Panning over the purl side and over the flat piece with its overlays, against drawing the same pictures on a bare canvas. */
import { median, quantile, type Bar } from './bar.ts';
import { withPage } from './in-page.ts';
import type { PaintingBench } from './page/painting-page.ts';
import type { From, PanTimes, Side } from './page/panning.ts';

const ROUNDS = 3;
const FRAMES = 60;

declare const bench: PaintingBench;

const SIDES: { readonly [Of in Side]: string } = {
  purl: 'the purl side',
  flat: 'the flat piece with floats and feeders',
};
const SEEN: { readonly [Of in From]: string } = {
  near: 'from near',
  crowded: 'where strands are smallest',
  whole: 'as a whole',
};

export async function purlSideBars(): Promise<Bar[]> {
  return await withPage(async (page) => {
    const bars: Bar[] = [];
    for (const side of ['purl', 'flat'] as const) {
      for (const from of ['near', 'crowded', 'whole'] as const) {
        const rounds: PanTimes[] = [];
        for (let round = 0; round < ROUNDS; round++) {
          rounds.push(
            await page.evaluate(([of, at, frames]) => bench.panInTurn(of, at, frames), [side, from, FRAMES] as const),
          );
        }
        const late = (times: readonly number[]): number => quantile(times, 0.95);
        bars.push({
          name: `panning over ${SIDES[side]}, an all-over of 200 × 1000 seen ${SEEN[from]}, from another view to the pixels, 95 of 100 frames, against a bare 2D canvas`,
          kind: 'at most',
          limit: 1.4,
          ratio: median(rounds.map(({ program, bare }) => late(program) / late(bare))),
          ours: median(rounds.map(({ program }) => late(program))),
          against: median(rounds.map(({ bare }) => late(bare))),
        });
      }
    }
    return bars;
  });
}
