/**
 * Drawing a piece of 200 × 1000 whose hem, rib and yoke have gauges of their
 * own, against the same piece of one gauge, in the built window: what the main
 * thread works from one move of the pointer to the next, while the flat piece
 * is panned and the seamed one turned.
 */
import type { Page } from 'playwright';
import type { Gauge } from '@shared/piece/index.ts';
import type { Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { fullBody } from '../long-body.ts';
import { settled } from '../written-projects.ts';
import { median, quantile, type Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { workByMove } from './tasks.ts';

const BANDS = 36;
const MOVES = 120;
const ROUNDS = 4;
/** Runs of rows are clipped and drawn one by one; and what is drawn is not alike. */
const LIMIT = 1.3;

/** The pieces have all else in common, sections too. */
function pieceOf(gauge: (own: Gauge) => Gauge | null): Project {
  const body = fullBody(BANDS);
  const { piece } = body;
  const part = (name: 'rib' | 'yoke', rows: number, own: Gauge) => ({
    name,
    rows,
    isLined: false,
    gauge: gauge(own),
    tension: '',
  });
  return settled(body, {
    piece: {
      ...piece,
      hemRows: 40,
      hem: { ...piece.hem, gauge: gauge({ stitches: 32, rows: 44 }) },
      sections: [part('rib', 60, { stitches: 36, rows: 40 }), part('yoke', 200, { stitches: 26, rows: 34 })],
    },
  }).whole;
}

/** Moves the pointer to and fro with its button down; each move draws. */
async function drag(page: Page, isAcross: boolean): Promise<void> {
  const stage = await page.locator('[data-drawing]').boundingBox();
  if (!stage) throw new Error('There is a drawing');
  // Beside the piece, where no group is taken.
  const [x, y] = isAcross ? [stage.x + stage.width / 2, stage.y + stage.height / 2] : [stage.x + 24, stage.y + 120];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let move = 1; move <= MOVES; move++) {
    const by = 60 * Math.sin(move / 7);
    await page.mouse.move(x + (isAcross ? by : 0), y + (isAcross ? 0 : by));
  }
  await page.mouse.up();
}

export async function gaugesBars(): Promise<Bar[]> {
  return withWindows(async (open) => {
    const pages = {
      several: await open(pieceOf((own) => own)),
      one: await open(
        pieceOf(() => null),
        true,
      ),
    };
    for (const page of Object.values(pages)) {
      await page.bringToFront();
      await page.keyboard.press('2');
      await page.getByRole('heading', { name: words.piece.before.title }).waitFor();
      await page.getByRole('group', { name: findingWords.line.label }).getByRole('button', { expanded: false }).click();
      // All is worked out that comes a moment later.
      await page.locator('.remedy').first().waitFor();
    }
    const bars: Bar[] = [];
    for (const seen of ['flat', 'seamed'] as const) {
      const times: { several: number[]; one: number[] } = { several: [], one: [] };
      for (let round = -1; round < ROUNDS; round++) {
        for (const name of round % 2 === 0 ? (['several', 'one'] as const) : (['one', 'several'] as const)) {
          const page = pages[name];
          await page.bringToFront();
          if (seen === 'seamed' && round < 0) {
            await page.locator('[data-drawing]').focus();
            await page.keyboard.press('c');
            await page.getByRole('slider').waitFor();
          }
          const work = await workByMove(page, () => drag(page, seen === 'seamed'));
          // A busy browser makes one move of several.
          if (work.length < MOVES / 2) throw new Error(`Only ${work.length} moves were heard`);
          // The first round is for the compiler.
          if (round >= 0) times[name].push(quantile(work, 0.95));
        }
      }
      bars.push({
        name: `drawing a piece of 200 × 1000 of four gauges while it is ${seen === 'flat' ? 'panned, flat' : 'turned, seamed'}, 95 of 100 moves, against one of one gauge`,
        kind: 'at most',
        limit: LIMIT,
        ratio: median(times.several.map((ms, round) => ms / (times.one[round] as number))),
        ours: median(times.several),
        against: median(times.one),
      });
    }
    return bars;
  });
}
