/** Fabrics as text. */
import { OUTSIDE, type Fabric } from '@shared/fabric/index.ts';

/** The fabric as text, the topmost row first: `.` yarn 0, `X` yarn 1, `O` yarn 2. */
export function text({ width, rows, cells }: Fabric): string[] {
  const letterOf = (cell: number): string => (cell === OUTSIDE ? ' ' : ('.XO'[cell] as string));
  return Array.from({ length: rows }, (_, fromTop) =>
    Array.from(cells.subarray((rows - 1 - fromTop) * width, (rows - fromTop) * width), letterOf).join(''),
  );
}
