/**
 * Imports between folders that lie on a circle today. None may come, and one
 * that is gone is deleted here: the list ends empty.
 */
import type { Arrow } from './circles.ts';

export const KNOWN_ON_CIRCLES: readonly Arrow[] = [
  'src-shared/knitting → src-shared/strands',
  'src-shared/knitting → src-shared/words',
  'src-shared/knitting → src-shared/yarn',
  'src-shared/sheet → src-shared/knitting',
  'src-shared/sheet → src-shared/strands',
  'src-shared/sheet → src-shared/words',
  'src-shared/strands → src-shared/knitting',
  'src-shared/strands → src-shared/yarn',
  'src-shared/words → src-shared/knitting',
  'src-shared/words → src-shared/sheet',
  'src-shared/words → src-shared/strands',
  'src-shared/words → src-shared/yarn',
  'src-shared/yarn → src-shared/strands',
];
