/** Reading what is on the page only once it stands still. */
import { expect, type Locator, type Page } from '@playwright/test';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where something is on the page, once it has stood there for two frames in a row. */
export async function restingBox(locator: Locator): Promise<Box> {
  return locator.evaluate(async (element) => {
    const now = (): Box => {
      const { x, y, width, height } = element.getBoundingClientRect();
      return { x, y, width, height };
    };
    for (let last = now(); ;) {
      await new Promise(requestAnimationFrame);
      const box = now();
      if (JSON.stringify(box) === JSON.stringify(last)) return box;
      last = box;
    }
  });
}

/** Waits until no colour, place or size is on its way to another. */
export async function motionEnds(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const isEnding = (animation: Animation): boolean => animation.effect?.getComputedTiming().endTime !== Infinity;
    for (;;) {
      // A style that has just changed starts its transition with the next frame.
      await new Promise(requestAnimationFrame);
      const running = document
        .getAnimations()
        .filter((animation) => animation.playState === 'running' && isEnding(animation));
      if (running.length === 0) return;
      await Promise.allSettled(running.map(({ finished }) => finished));
    }
  });
}

/** Changes the platform's appearance, and waits until the page has it. */
export async function appearAs(page: Page, colorScheme: 'light' | 'dark'): Promise<void> {
  await page.emulateMedia({ colorScheme });
  await expect(page.locator('html')).toHaveAttribute('data-theme', colorScheme);
}
