/** The English catalogue, one subject a file. */
import { numbers } from './numbers.ts';
import { problems } from './problems.ts';

export const english = {
  numbers,
  problems,
};
