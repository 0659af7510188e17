/** Fingers on the glass of a page. */
import type { CDPSession } from '@playwright/test';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Puts fingers where `spots` are; a list with fewer of them than before lifts the others. */
export async function touch(
  glass: CDPSession,
  type: 'touchStart' | 'touchMove' | 'touchEnd',
  ...spots: Spot[]
): Promise<void> {
  const touchPoints = spots.map(({ x, y }, id) => ({ x, y, id }));
  await glass.send('Input.dispatchTouchEvent', { type, touchPoints });
}
