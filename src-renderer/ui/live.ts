/**
 * Values that components follow.
 *
 * Stores are plain TypeScript and keep what they show in these. In the window
 * they are made of runes (`live-rune.svelte.ts`): whoever reads one in a
 * component is woken when it becomes another value, and by nothing else.
 * Elsewhere, in tests above all, they are fields like any other.
 */
export interface Live<T> {
  now: T;
}

export type MakeLive = <T>(start: T) => Live<T>;

export const plainLive: MakeLive = (start) => ({ now: start });

/** Fields that are followed one by one: who reads one is not woken by another. */
export interface LiveFields<T extends object> {
  readonly now: Readonly<T>;
  /** Those that are left out stay as they are. */
  set(to: Partial<T>): void;
}

export function liveFields<T extends object>(start: T, makeLive: MakeLive): LiveFields<T> {
  const fields = new Map<keyof T, Live<T[keyof T]>>();
  const now = {} as T;
  for (const key of Object.keys(start) as (keyof T)[]) {
    const field = makeLive(start[key]);
    fields.set(key, field);
    Object.defineProperty(now, key, { enumerable: true, get: () => field.now });
  }
  return {
    now,
    set(to) {
      for (const [key, field] of fields) if (key in to) field.now = to[key] as T[keyof T];
    },
  };
}
