/** How counts, lengths and needles are said. */
import { label, type Run, type Side } from '../../bed/index.ts';
import type { ShapedEdge } from '../../piece/index.ts';

/** `1 stitch`, `12 stitches`. */
function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** A number with at most `digits` decimals and no trailing noughts. */
function plain(value: number, digits = 1): string {
  return Number(value.toFixed(digits)).toString();
}

/** `12`, `12 and 13`, `12, 13 and 14`. */
function list(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** `1st`, `2nd`, `23rd`. */
function ordinal(value: number): string {
  const isTeen = value % 100 >= 11 && value % 100 <= 13;
  return `${value}${isTeen ? 'th' : (['th', 'st', 'nd', 'rd'][value % 10] ?? 'th')}`;
}

/** `25–42`, or `25` where the two are one. */
function span(first: number, last: number): string {
  return first === last ? String(first) : `${first}–${last}`;
}

/** `96 to 124`, or `96` where the two are one. */
function fromTo(from: number | string, to: number | string): string {
  return from === to ? String(from) : `${from} to ${to}`;
}

/** `1–3 and 5`, from the lowest to the highest. */
function spans(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return list(runs.map(([from, to]) => span(from, to)));
}

const edges: { readonly [Edge in ShapedEdge]: string } = {
  each: 'each edge',
  left: 'the left edge',
  right: 'the right edge',
};

export const numbers = {
  ordinal,
  edges,
  count,
  plain,
  list,
  span,
  fromTo,
  spans,
  stitches: (n: number): string => count(n, 'stitch', 'stitches'),
  rows: (n: number): string => count(n, 'row'),
  needles: (n: number): string => count(n, 'needle'),
  columns: (n: number): string => count(n, 'column'),
  copies: (n: number): string => count(n, 'copy', 'copies'),
  size: (width: number, height: number): string => `${count(width, 'stitch', 'stitches')} × ${count(height, 'row')}`,
  /** `L48–L13`. */
  run: ({ first, last }: Run): string => (first === last ? label(first) : `${label(first)}–${label(last)}`),
  rowSpan: (first: number, last: number): string => (first === last ? `row ${first}` : `rows ${first}–${last}`),
  /** `rows 4–7 and 12`; the runs are counted from 0, as grids are. */
  rowRuns: (runs: readonly { first: number; last: number }[]): string => {
    const isOne = runs.length === 1 && runs[0]?.first === runs[0]?.last;
    return `${isOne ? 'row' : 'rows'} ${list(runs.map(({ first, last }) => span(first + 1, last + 1)))}`;
  },
  side: (side: Side): string => side,
  percent: (share: number): string => `${plain(share * 100, 0)} %`,
};
