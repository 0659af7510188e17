/** Light, dark, or as the platform asks. */
import { createSubscriber } from 'svelte/reactivity';

export type Theme = 'light' | 'dark' | 'system';

const platformDark = window.matchMedia('(prefers-color-scheme: dark)');
const platformForces = window.matchMedia('(forced-colors: active)');

/** Keeps `data-theme` on the page at what `theme()` and the platform say. Returns a function that applies it again. */
export function themeKeeper(theme: () => Theme): () => void {
  const apply = (): void => {
    // Where the platform forces its colours, canvases must go with them.
    const chosen = platformForces.matches ? 'system' : theme();
    const shown = chosen === 'system' ? (platformDark.matches ? 'dark' : 'light') : chosen;
    const { dataset } = document.documentElement;
    // Set to what it is, it would be told of as a change, and every canvas drawn again.
    if (dataset['theme'] !== shown) dataset['theme'] = shown;
  };
  for (const asked of [platformDark, platformForces]) asked.addEventListener('change', apply);
  return apply;
}

const followShown = createSubscriber((update) => {
  const observer = new MutationObserver(update);
  observer.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  return () => observer.disconnect();
});

/** The value of a colour token as it is now, for canvases: what was derived from it is derived anew in another appearance. */
export function token(name: string): string {
  followShown();
  return getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim();
}
