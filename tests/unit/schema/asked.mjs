import { parentPort, workerData } from 'node:worker_threads';

/**
 * The code that the library makes of text as it checks its first object. In
 * `zod` as a whole it asks; `zod/mini`, which the program takes, leaves that out
 * today.
 * @returns {Promise<string[][]>}
 */
export async function asked() {
  /** @type {string[][]} */
  const made = [];
  const Plain = globalThis.Function;
  globalThis.Function = new Proxy(Plain, {
    construct(target, args) {
      made.push(args);
      return Reflect.construct(target, args);
    },
  });
  try {
    const { z } = await import('zod');
    z.object({ name: z.string() }).parse({ name: 'gull' });
  } finally {
    globalThis.Function = Plain;
  }
  return made;
}

if (workerData === 'ask') parentPort?.postMessage(await asked());
