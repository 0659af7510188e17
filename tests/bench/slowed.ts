/**
 * The bench put to the test: with `--slowed` each measured thing is held up on
 * purpose, and a line that is met all the same does not measure what it names.
 *
 * Only the program is held up, never what it is measured against: a work of Node
 * by a wait behind it, in proportion to its bar; a page of the program by waits at
 * its events, and before all that it sends.
 */
import type { Page } from 'playwright';

let isOn = false;

/** From now on all is held up that is measured. */
export function slowDown(): void {
  isOn = true;
}

export function isSlowed(): boolean {
  return isOn;
}

/** Rounds of what takes long when it is held up: one shows it. */
export function roundsOf(rounds: number): number {
  return isOn ? 1 : rounds;
}

/** Keeps the processor busy. */
export function spin(ms: number): void {
  const until = performance.now() + ms;
  while (performance.now() < until);
}

/** So much beyond its bar is a work held up. */
const BEYOND = 1.2;

/** Behind a work that may take `limit` times `againstMs`. */
export function holdUp(limit: number, againstMs: number): void {
  if (isOn) spin(BEYOND * limit * againstMs);
}

/** What a page of the program is held up by at each event of a hand, ms: more than any task may take, four times slower too. */
const AT_EVENT_MS = 320;
/** At each move of the pointer, of which there are thousands. */
const AT_MOVE_MS = 60;
/** Where it begins: more than a start may take beside a page of the same bytes. */
const AT_START_MS = 2500;
/** Before each message to the host, and so before what is kept. */
const LATER_MS = 30;

/**
 * Has a page of the program held up, from when it is next loaded: where it begins, at keys, presses
 * and moves, and at what it sends.
 */
export async function slowPage(page: Page): Promise<void> {
  if (!isOn) return;
  await page.addInitScript(
    ({ atEvent, atMove, atStart, later }) => {
      const busy = (ms: number): void => {
        const until = performance.now() + ms;
        while (performance.now() < until);
      };
      const byHand = (ms: number): void => {
        if (!(window as HandFree).isHandFree) busy(ms);
      };
      for (const name of ['keydown', 'pointerdown', 'pointerup', 'dblclick', 'change']) {
        window.addEventListener(name, () => byHand(atEvent), true);
      }
      window.addEventListener('pointermove', () => byHand(atMove), true);
      document.addEventListener('DOMContentLoaded', () => busy(atStart));
      const { fetch } = window;
      window.fetch = (...given) => {
        busy(later);
        return fetch(...given);
      };
    },
    { atEvent: AT_EVENT_MS, atMove: AT_MOVE_MS, atStart: AT_START_MS, later: LATER_MS },
  );
}

/** What a page of the program has where a hand is not held up in it. */
interface HandFree extends Window {
  isHandFree?: boolean;
}

/**
 * From now on the page is held up no more by what a hand does, only at what it sends: for what is
 * measured behind a stroke, and would begin within one that is drawn so slowly.
 */
export async function freeHand(page: Page): Promise<void> {
  await page.evaluate(() => void ((window as HandFree).isHandFree = true));
}

/** What a page that draws with parts of the program is told: how long each of its frames is held up, ms. */
export const SLOW_FRAME_MS = 30;
