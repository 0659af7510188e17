/** The day that it is here, followed while somebody looks: a window may stand open overnight. */
import { createSubscriber } from 'svelte/reactivity';
import { localDay, type Day } from '@shared/day/index.ts';

export class Today {
  readonly #follow: () => void;

  constructor(private readonly now: () => Date = () => new Date()) {
    this.#follow = createSubscriber((update) => {
      let timer: number | undefined;
      const look = (): void => {
        update();
        window.clearTimeout(timer);
        timer = window.setTimeout(look, msToMidnight(this.now()));
      };
      // A machine that slept through midnight may ring late.
      const events = ['focus', 'visibilitychange'] as const;
      for (const event of events) window.addEventListener(event, look, true);
      timer = window.setTimeout(look, msToMidnight(this.now()));
      return () => {
        for (const event of events) window.removeEventListener(event, look, true);
        window.clearTimeout(timer);
      };
    });
  }

  get day(): Day {
    this.#follow();
    return localDay(this.now());
  }
}

function msToMidnight(now: Date): number {
  return new Date(now.getFullYear(), now.getMonth(), now.getDate() + 1).getTime() - now.getTime();
}
