import PictureWorker from './picture.worker.ts?worker&inline';

/** A worker that turns pictures into cells. */
export function newHelper(): Worker {
  return new PictureWorker();
}
