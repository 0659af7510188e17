/** `infant-floats`: fingers and toes catch in any float of a piece for an infant. */
import type { Finding } from '../types.ts';
import type { Inspected } from './question.ts';

export function infantFloats({ project, rows }: Inspected): Finding[] {
  if (!project.piece.isInfant) return [];
  const withFloats = rows.filter(({ floats }) => floats.length > 0);
  const count = withFloats.reduce((total, { floats }) => total + floats.length, 0);
  const first = withFloats[0]?.row;
  const last = withFloats.at(-1)?.row;
  return first === undefined || last === undefined ? [] : [{ code: 'infant-floats', rows: [first, last], count }];
}
