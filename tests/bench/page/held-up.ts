/** Frames of the program held up on purpose, when the bench itself is tested. */

/** Keeps the page busy for as long as the runner has asked for, which is not at all but for that test. */
export function holdUpFrame(): void {
  const { slowFrameMs = 0 } = globalThis as { slowFrameMs?: number };
  const until = performance.now() + slowFrameMs;
  while (performance.now() < until);
}
