/** When to look whether the host is there. */

const LOOK_EVERY_MS = 1000;
const LOOK_AGAIN_MS = 500;
const PATIENCE_MS = 15_000;

/** Aborts when a host that is there would have answered, however busy it is. */
export function patience(): AbortSignal {
  return AbortSignal.timeout(PATIENCE_MS);
}

/** Resolves in a moment, or as soon as the person comes back to the window: browsers let hidden pages sleep. */
export function nextLook(isJoined: boolean): Promise<void> {
  return new Promise((resolve) => {
    const goOn = (): void => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', goOn);
      window.removeEventListener('focus', goOn);
      resolve();
    };
    const timer = setTimeout(goOn, isJoined ? LOOK_EVERY_MS : LOOK_AGAIN_MS);
    document.addEventListener('visibilitychange', goOn);
    window.addEventListener('focus', goOn);
  });
}
