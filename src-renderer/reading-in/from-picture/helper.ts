/** A worker that turns pictures into cells. */
export function newHelper(): Worker {
  return new Worker(new URL('./picture.worker.ts', import.meta.url), { type: 'module' });
}
