/** Values that wake those who read them only when they are others. */

export interface Settled<T> {
  readonly current: T;
}

/**
 * What `read` gives, kept. Whatever reads a derived value is woken each time that
 * anything does of which it is derived, if only to find it the same: two hundred
 * pictures in a list took milliseconds of every stroke to find that their yarns
 * had not changed. Whatever reads this is woken when the value is another one.
 * To be called while a component is set up.
 */
export function settled<T>(read: () => T): Settled<T> {
  let value = $state.raw(read());
  $effect.pre(() => {
    value = read();
  });
  return {
    get current() {
      return value;
    },
  };
}
