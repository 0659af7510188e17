export { readMotifSafely, readPhotoSafely } from './read.ts';
