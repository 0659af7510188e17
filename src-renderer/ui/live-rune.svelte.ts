/** The values of the window that components follow, each made of a rune. */
import type { Live, MakeLive } from './live.ts';

class LiveRune<T> implements Live<T> {
  now: T;

  constructor(start: T) {
    this.now = $state.raw(start);
  }
}

export const liveRune: MakeLive = (start) => new LiveRune(start);
