/** The size of the window, kept for the next start. */
import { LEAST_WINDOW, type Params } from '@shared/host/index.ts';

type WindowSize = NonNullable<Params<'settings.keep'>['window']>;

/** Long enough that a window being pulled larger is kept once. */
const PAUSE_MS = 500;

/**
 * Tells the size of the window, its frame counted, when a person has made it
 * another one; returns a function that stops it. A tab of the person's own
 * browser is as large as they want their browser, which says nothing of ours.
 */
export function followWindowSize(isElectron: boolean, keep: (size: WindowSize) => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let before = sizeNow();
  const told = (): void => {
    const size = sizeNow();
    const isOurs = isElectron || matchMedia('(display-mode: standalone)').matches;
    const isOther = size.width !== before.width || size.height !== before.height;
    before = size;
    if (isOurs && isOther && size.width >= LEAST_WINDOW.width && size.height >= LEAST_WINDOW.height) keep(size);
  };
  const onresize = (): void => {
    clearTimeout(timer);
    timer = setTimeout(told, PAUSE_MS);
  };
  window.addEventListener('resize', onresize);
  return () => {
    clearTimeout(timer);
    window.removeEventListener('resize', onresize);
  };
}

function sizeNow(): WindowSize {
  return { width: window.outerWidth, height: window.outerHeight };
}
