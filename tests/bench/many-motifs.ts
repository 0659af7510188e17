/**
 * The pen in a project of 200 motifs against the same pen in a project of one,
 * in the built window: what the main thread works from one move of the pointer
 * to the next, each of which paints a cell.
 */
import type { Page } from 'playwright';
import { projectAround, START_YARNS, type Project } from '@shared/project/index.ts';
import { Chart } from '../e2e/chart.ts';
import { quantile, type Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { roundsOf } from './slowed.ts';
import { workByMove } from './tasks.ts';
import { gridOf, numbers } from './timing.ts';

const MOTIFS = 200;
const SIDE = 40;
/** In turns; the best of each counts, which a busy machine has held up least. */
const ROUNDS = 9;
/** Strokes of a round, each over a row of the chart. */
const STROKES = 4;

/** The one that is drawn on is the last of the list. */
function projectOf(motifs: number): Project {
  const random = numbers();
  const grids = Array.from({ length: motifs }, () => gridOf(SIDE, SIDE, () => (random() < 0.4 ? 1 : 0)));
  const drawn = projectAround(
    `Of ${motifs}`,
    'drawn',
    gridOf(SIDE, SIDE, () => 0),
    0,
    'worn',
    START_YARNS,
  );
  const [motif] = drawn.motifs;
  if (!motif) throw new Error('A project has a motif');
  return {
    ...drawn,
    motifs: [
      ...grids.slice(1).map((grid, index) => ({ ...motif, id: `other-${index}`, name: `other ${index}`, grid })),
      motif,
    ],
  };
}

async function onLastMotif(page: Page): Promise<Chart> {
  // By keys: what is scrolled into view of a long list is laid out in the next frame, which a driven pointer does not wait for.
  await page.getByRole('radio', { name: /^drawn/ }).press('Space');
  return new Chart(page);
}

async function draw(page: Page, chart: Chart, from: number): Promise<void> {
  const ends = await Promise.all([chart.at(1, 1), chart.at(SIDE, SIDE)]);
  const [first, last] = ends;
  const x = (column: number): number => first.x + ((last.x - first.x) * column) / (SIDE - 1);
  const y = (row: number): number => first.y + ((last.y - first.y) * row) / (SIDE - 1);
  for (let stroke = 0; stroke < STROKES; stroke++) {
    const row = (from + stroke) % SIDE;
    await page.mouse.move(x(0), y(row));
    await page.mouse.down();
    for (let column = 1; column < SIDE; column++) await page.mouse.move(x(column), y(row));
    await page.mouse.up();
  }
}

export async function manyMotifsBars(): Promise<Bar[]> {
  return withWindows(async (open) => {
    const [many, one] = [await open(projectOf(MOTIFS)), await open(projectOf(1), true)];
    const times: { many: number[]; one: number[] } = { many: [], one: [] };
    for (let round = -1; round < roundsOf(ROUNDS); round++) {
      // Who goes first finds the caches cold; so they take turns at that.
      const both = [
        ['many', many],
        ['one', one],
      ] as const;
      for (const [name, page] of round % 2 === 0 ? both : both.toReversed()) {
        await page.bringToFront();
        const chart = await onLastMotif(page);
        const work = await workByMove(page, () => draw(page, chart, (round + 1) * STROKES));
        // A busy browser makes one move of several.
        if (work.length < (STROKES * SIDE) / 2) throw new Error(`Only ${work.length} moves were heard`);
        // The first round is for the compiler.
        if (round >= 0) times[name].push(quantile(work, 0.95));
      }
    }
    return [
      {
        name: `the pen in a project of ${MOTIFS} motifs, 95 of 100 moves, against a project with one`,
        kind: 'at most',
        limit: 1.2,
        ratio: Math.min(...times.many) / Math.min(...times.one),
        ours: Math.min(...times.many),
        against: Math.min(...times.one),
      },
    ];
  });
}
