export { readBmpSize, isBmp } from './bmp.ts';
export type { Orientation } from './exif.ts';
export { comesInPasses, readJpegPixels } from './jpeg-pixels.ts';
export { assertJpegBits, isJpeg, readJpegSegments } from './jpeg-segments.ts';
export { assertPbmLength, isPbm, readPbmHeader, readPbmPixels } from './pbm.ts';
export { isPng, readPngChunks } from './png-chunks.ts';
export { readPngPixels } from './png-pixels.ts';
export type { TakeRow } from './bytes.ts';
export { isWebp, readWebpSize } from './webp.ts';
