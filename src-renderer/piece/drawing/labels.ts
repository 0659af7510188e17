/** Labels in a row that must not run into each other. */

export interface Label {
  readonly text: string;
  /** Where its middle should stand. */
  readonly x: number;
  readonly width: number;
  readonly weight: 'strong' | 'plain' | 'faint';
}

/** Space between two labels. */
const APART = 8;

/** The labels that fit, in the order given: whoever comes first keeps the place. */
export function fittingLabels(labels: readonly Label[]): Label[] {
  const placed: Label[] = [];
  for (const label of labels) {
    const isFree = placed.every((other) => Math.abs(other.x - label.x) >= (other.width + label.width) / 2 + APART);
    if (isFree) placed.push(label);
  }
  return placed;
}

/**
 * Middles for labels of `widths` as near to `wanted` (ascending) as they go
 * without touching: pushed right where crowded, then back left from the end.
 */
export function spreadOut(wanted: readonly number[], widths: readonly number[], from: number, to: number): number[] {
  const placed = [...wanted];
  let end = from;
  for (let i = 0; i < placed.length; i++) {
    const half = (widths[i] as number) / 2;
    placed[i] = Math.max(placed[i] as number, end + half);
    end = (placed[i] as number) + half;
  }
  let start = to;
  for (let i = placed.length - 1; i >= 0; i--) {
    const half = (widths[i] as number) / 2;
    placed[i] = Math.min(placed[i] as number, start - half);
    start = (placed[i] as number) - half;
  }
  return placed;
}
