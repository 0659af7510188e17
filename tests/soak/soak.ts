/**
 * Random drawing, undo, placing, counting of rows and switching, the same for
 * the same seed. Now and then the memory is measured, always from the Motif
 * bench with nothing in hand, so that measures can be compared.
 */
import type { Page } from '@playwright/test';
import { doSomething, goTo, type BenchName } from './deeds.ts';
import { meterOf, type Kept } from './memory.ts';
import { Random } from './random.ts';

/** Deeds on one bench before going to another. */
const MOST_DEEDS_ON_A_BENCH = 12;
const BENCHES: readonly BenchName[] = ['Motif', 'Motif', 'Piece', 'Piece', 'Sheet', 'Knit'];

export interface Soaked {
  readonly deeds: number;
  readonly measured: readonly Kept[];
}

export interface SoakPlan {
  readonly seed: number;
  /** True when it has gone on long enough; asked before each bench. */
  readonly isOver: (deeds: number) => boolean;
  /** True when memory is to be measured; asked after each bench. */
  readonly isMeasured: () => boolean;
  readonly onmeasure?: (kept: Kept, deeds: number) => void;
}

/** The page must have the program in it. Rejects if the program does not go on. */
export async function soak(page: Page, { seed, isOver, isMeasured, onmeasure }: SoakPlan): Promise<Soaked> {
  const random = new Random(seed);
  const meter = await meterOf(page);
  const measured: Kept[] = [];
  let deeds = 0;
  while (!isOver(deeds)) {
    const bench = random.of(BENCHES);
    await goTo(page, bench);
    for (let left = random.whole(1, MOST_DEEDS_ON_A_BENCH); left > 0; left--, deeds++) {
      await doSomething(page, bench, random);
    }
    if (!isMeasured()) continue;
    await goTo(page, 'Motif');
    await page.getByRole('grid').focus();
    for (const key of ['Escape', 'Escape', 'd']) await page.keyboard.press(key);
    const kept = await meter();
    measured.push(kept);
    onmeasure?.(kept, deeds);
  }
  return { deeds, measured };
}
