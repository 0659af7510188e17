import { onPaper, pictureToCells } from '@shared/reading/index.ts';
import type { Job } from './table.ts';

export const pictureJob: Job<'picture'> = (given) => {
  const picture = onPaper(given);
  return (options) => pictureToCells(picture, options);
};
