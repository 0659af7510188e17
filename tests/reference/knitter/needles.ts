/**
 * Needles as positions without a gap: L1 is −1, R1 is 0. There is no needle 0.
 *
 * Nothing in this folder is taken from the program: it judges what the program
 * says, so it has its own reading of every label and every act. All rules are
 * common practice, no source, where no other is named.
 */
import { z } from 'zod';

export type Side = 'left' | 'right';

export const side = z.enum(['left', 'right']);

/** `L48` read as a position. */
export const needle = z
  .string()
  .regex(/^[LR][1-9]\d*$/, 'is no needle: they are called L1, L2 … and R1, R2 …')
  .transform(positionOf);

/** The first and the last of neighbouring needles, from left to right. */
export const span = z.tuple([needle, needle]).refine(([first, last]) => first <= last, 'runs from right to left');

export type Span = z.output<typeof span>;

export function positionOf(label: string): number {
  const number = Number(label.slice(1));
  return label.startsWith('L') ? -number : number - 1;
}

export function labelOf(position: number): string {
  return position < 0 ? `L${-position}` : `R${position + 1}`;
}

export function labelsOf(positions: Iterable<number>): string {
  return [...positions].map(labelOf).join(' ');
}

export function other(edge: Side): Side {
  return edge === 'left' ? 'right' : 'left';
}

export function each([first, last]: Span): number[] {
  return Array.from({ length: last - first + 1 }, (_, at) => first + at);
}
