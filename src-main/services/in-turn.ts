/** Jobs on the same thing, one after another. */

/** Returns a function that runs each job when all earlier ones with its key have ended, well or not. */
export function inTurn(): <T>(key: string, job: () => Promise<T>) => Promise<T> {
  const lastOf = new Map<string, Promise<unknown>>();
  return async (key, job) => {
    const before = lastOf.get(key) ?? Promise.resolve();
    const mine = before.then(job, job);
    lastOf.set(key, mine);
    try {
      return await mine;
    } finally {
      if (lastOf.get(key) === mine) lastOf.delete(key);
    }
  };
}
