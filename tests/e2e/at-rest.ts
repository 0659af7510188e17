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

/**
 * Waits until no colour, place or size that a person could see is on its way to another. A closed fold is left out:
 * its contents start their transitions when a query looks into it, and may stand still in them.
 */
export async function motionEnds(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const isShown = ({ effect }: Animation): boolean =>
      effect instanceof KeyframeEffect && effect.target?.checkVisibility() === true;
    const isEnding = ({ effect }: Animation): boolean => effect?.getComputedTiming().endTime !== Infinity;
    for (let quietFrames = 0; quietFrames < 2;) {
      // A style that has just changed starts its transition with the next frame.
      await new Promise(requestAnimationFrame);
      const moving = document.getAnimations().some((animation) => isShown(animation) && isEnding(animation));
      quietFrames = moving ? 0 : quietFrames + 1;
    }
  });
}

/** Changes the platform's appearance, and waits until the page has it. */
export async function appearAs(page: Page, colorScheme: 'light' | 'dark'): Promise<void> {
  await page.emulateMedia({ colorScheme });
  await expect(page.locator('html')).toHaveAttribute('data-theme', colorScheme);
}
