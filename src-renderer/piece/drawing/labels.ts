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

/** A label and the line that it stands on, 0 being the upper one. */
export interface SetLabel extends Label {
  readonly line: number;
}

/**
 * The labels that fit, in the order given: whoever comes first keeps the place.
 * One that has none on the upper line goes to the lower; a faint one is left out.
 */
export function fittingLabels(labels: readonly Label[]): SetLabel[] {
  const placed: SetLabel[] = [];
  for (const label of labels) {
    const lines = label.weight === 'faint' ? [0] : [0, 1];
    const line = lines.find((at) =>
      placed.every(
        (other) => other.line !== at || Math.abs(other.x - label.x) >= (other.width + label.width) / 2 + APART,
      ),
    );
    if (line !== undefined) placed.push({ ...label, line });
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
