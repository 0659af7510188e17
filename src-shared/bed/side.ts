/** The two sides of a bed, and of what hangs on it. */
import type { Side } from './model.ts';

export function opposite(side: Side): Side {
  return side === 'left' ? 'right' : 'left';
}
