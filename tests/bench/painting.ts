/** Painting with the pointer in a headless Chromium, against simpler ways to draw the same. */
import { median, quantile, type Bar } from './bar.ts';
import { withPage } from './in-page.ts';
import type { FollowingFrames, FollowingTimes } from './page/following.ts';
import type { FrameTimes } from './page/painter.ts';
import type { PaintingBench, PaintingTimes } from './page/painting-page.ts';

const ROUNDS = 9;
/** Rounds at the pace of the screen. */
const ROUNDS_SHOWN = 3;
const FRAMES = 200;
const FRAMES_OF_NODES = 5;

declare const bench: PaintingBench;

export async function paintingBars(): Promise<Bar[]> {
  return await withPage(async (page) => {
    const rounds: PaintingTimes[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      rounds.push(await page.evaluate((frames) => bench.paintInTurn(frames), FRAMES));
    }
    const following: FollowingTimes[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      following.push(await page.evaluate((frames) => bench.paintFollowing(frames), FRAMES));
    }
    const shown: FollowingFrames[] = [];
    for (let round = 0; round < ROUNDS_SHOWN; round++) {
      shown.push(await page.evaluate((frames) => bench.showFollowing(frames), FRAMES));
    }
    const nodes = await page.evaluate((frames) => bench.paintNodes(frames), FRAMES_OF_NODES);
    const late = (times: readonly number[]): number => quantile(times, 0.95);
    const compared = (program: keyof FrameTimes, against: 'bare' | 'bareCell') => ({
      ratio: median(rounds.map((times) => late(times.program[program]) / late(times[against].draw))),
      ours: median(rounds.map((times) => late(times.program[program]))),
      against: median(rounds.map((times) => late(times[against].draw))),
    });
    const usualMs = median(rounds.map(({ program }) => median(program.whole)));
    const nodesMs = median(nodes.whole);
    return [
      {
        name: 'drawing while painting on 200 × 1000, 95 of 100 frames, against the view drawn on a bare 2D canvas',
        kind: 'at most',
        limit: 1.3,
        ...compared('draw', 'bare'),
      },
      {
        name: 'the same from the pointer event on, with the change and its undo step',
        kind: 'figure',
        limit: null,
        ...compared('whole', 'bare'),
      },
      {
        name: 'drawing, against a bare 2D canvas that draws no more than the changed cell',
        kind: 'figure',
        limit: null,
        ...compared('draw', 'bareCell'),
      },
      {
        name: 'painting with symmetry, tiling and measure on 200 × 1000, frame after frame on the screen, 95 of 100, against a bare 2D canvas',
        kind: 'at most',
        limit: 1.3,
        ratio: median(shown.map(({ program, bare }) => late(program) / late(bare))),
        ours: median(shown.map(({ program }) => late(program))),
        against: median(shown.map(({ bare }) => late(bare))),
      },
      {
        name: 'the work in such a frame from the pointer event on, 95 of 100, against that of the bare 2D canvas',
        kind: 'figure',
        limit: null,
        ratio: median(following.map(({ program, bare }) => late(program) / late(bare))),
        ours: median(following.map(({ program }) => late(program))),
        against: median(following.map(({ bare }) => late(bare))),
      },
      {
        name: 'painting on 200 × 1000 from the pointer event on, median frame, against one Konva node a cell',
        kind: 'at least',
        limit: 300,
        ratio: nodesMs / usualMs,
        ours: usualMs,
        against: nodesMs,
      },
    ];
  });
}
