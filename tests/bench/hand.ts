/**
 * What the main thread works for a move of the hand in the built window (the pen
 * on a small and on a large drawing, the pointer over motif and piece), against
 * a bare page with a canvas and a line of text.
 */
import type { Page } from 'playwright';
import { projectAround, sampleProject, START_YARNS, type Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { Chart } from '../e2e/chart.ts';
import { bareChart } from './bare-chart.ts';
import { quantile, type Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { drawingBox, sweep, type Sweep } from './moves.ts';
import { roundsOf } from './slowed.ts';
import { workByPen } from './tasks.ts';
import { gridOf, numbers } from './timing.ts';

/** In turns; the best of each counts, which a busy machine has held up least. */
const ROUNDS = 5;
const LINES = 3;
/** A hand does not move by less than this from frame to frame, in pixels: a large drawing is looked at so close that its cells have it. */
const LEAST_STEP = 4;

interface Move {
  readonly name: string;
  readonly limit: number;
  readonly project: Project;
  readonly isOnPiece?: true;
  readonly draws: boolean;
}

/** A project of one motif of so many stitches and rows. */
export function drawingOf(width: number, height: number): Project {
  const random = numbers();
  const grid = gridOf(width, height, () => (random() < 0.4 ? 1 : 0));
  return projectAround(`Of ${width} × ${height}`, 'drawn', grid, 0, 'worn', START_YARNS);
}

export async function handBars(): Promise<Bar[]> {
  const small = drawingOf(24, 20);
  const moves: readonly Move[] = [
    { name: 'the pen on 24 × 20', limit: 2, project: small, draws: true },
    { name: 'the pen on 200 × 1000', limit: 4, project: drawingOf(200, 1000), draws: true },
    { name: 'the pointer over a motif', limit: 2, project: small, draws: false },
    { name: 'the pointer over a piece', limit: 2, project: sampleProject(), isOnPiece: true, draws: false },
  ];
  return withWindows(async (open) => {
    const bars: Bar[] = [];
    for (const move of moves) {
      const page = await open(move.project);
      if (move.isOnPiece) {
        await page.keyboard.press('2');
        await page.getByRole('heading', { name: words.piece.before.title }).waitFor();
      }
      bars.push(...(await moveBars(page, move)));
      await page.context().close();
    }
    return bars;
  });
}

async function moveBars(page: Page, { name, limit, isOnPiece, draws }: Move): Promise<Bar[]> {
  const box = await drawingBox(page);
  const cell = isOnPiece ? LEAST_STEP : await closeCells(page);
  const bare = await bareChart(page, { box, cell, paints: draws });
  const how: Sweep = { box, step: cell, lines: LINES, draws };
  const best = { moves: { ours: Infinity, against: Infinity }, ends: { ours: Infinity, against: Infinity } };
  for (let round = -1; round < roundsOf(ROUNDS); round++) {
    for (const [of, where] of Object.entries({ ours: page, against: bare }) as ['ours' | 'against', Page][]) {
      await where.bringToFront();
      // In the other yarn, so that each move changes a cell in every round.
      if (draws && where === page) await page.keyboard.press(']');
      let made = 0;
      const { moves, ends } = await workByPen(where, async () => (made = await sweep(where, how)));
      // A busy browser makes one move of several.
      if (moves.length < made / 2) throw new Error(`Only ${moves.length} of ${made} moves were heard`);
      // The first round is for the compiler.
      if (round < 0) continue;
      best.moves[of] = Math.min(best.moves[of], quantile(moves, 0.95));
      if (draws) best.ends[of] = Math.min(best.ends[of], quantile(ends, 0.95));
    }
  }
  const bar = (what: string, limit: number | null, { ours, against }: { ours: number; against: number }): Bar => ({
    name: `${name}, what the page works for ${what}, 95 of 100, against a bare page with a canvas and a line of text`,
    kind: limit === null ? 'figure' : 'at most',
    limit,
    ratio: ours / against,
    ours,
    against,
  });
  const moved = bar('a move', limit, best.moves);
  // The bare page has no step of undo, no cursor of the keyboard and no hatching to take away and bring back.
  return draws ? [moved, bar('a press or letting go', null, best.ends)] : [moved];
}

/** Comes so close that a move goes to another cell; gives how wide one is, in pixels. */
async function closeCells(page: Page): Promise<number> {
  const chart = new Chart(page);
  let { width } = await chart.cellSize();
  while (width < LEAST_STEP) {
    await page.keyboard.press('+');
    ({ width } = await chart.cellSize());
  }
  return width;
}
