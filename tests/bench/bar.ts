/** Bars: how much slower than something simple the program may be. */

export interface Bar {
  /** What is timed, and against what. */
  readonly name: string;
  /** How many times as long (or, for `at least`, as fast). */
  readonly ratio: number;
  /** Null for a figure without a bar, printed because it explains one. */
  readonly limit: number | null;
  readonly kind: 'at most' | 'at least' | 'figure';
  /** What is behind the ratio: times in ms, or what `unit` says. */
  readonly ours: number;
  readonly against: number;
  readonly unit?: 'MB' | 'kB' | 'nodes';
}

/** Whether the bar is met; null where there is none. */
export function isMet({ ratio, limit, kind }: Bar): boolean | null {
  if (limit === null) return null;
  return kind === 'at most' ? ratio <= limit : ratio >= limit;
}

/** `met      4.10 × (at most 12)  true repeat …: 0.98 ms against 0.24 ms`. */
export function barLine(bar: Bar): string {
  const { name, ratio, limit, kind, ours, against, unit = 'ms' } = bar;
  const met = isMet(bar);
  const verdict = met === null ? '' : met ? 'met' : 'not met';
  const figures = `${ratio.toFixed(ratio < 100 ? 2 : 0)} ×${limit === null ? '' : ` (${kind} ${limit})`}`;
  return `${verdict.padEnd(8)} ${figures.padEnd(24)} ${name}: ${ours.toFixed(3)} ${unit} against ${against.toFixed(3)} ${unit}`;
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/** The value that a share of all values does not exceed. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}
