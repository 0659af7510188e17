/** On which rows of the piece a chart stands, and which side the carriage leaves from on each of its rows there. */
import type { Side } from '../../bed/index.ts';
import type { Plan } from '../../plan/index.ts';

/** One column of sides beside a chart. */
export interface Stand {
  /** The rows of the piece that the chart's first row is, from the lowest. */
  readonly starts: readonly number[];
  /** By row of the chart from the bottom; null for a row that is nowhere knitted. */
  readonly carriage: readonly (Side | null)[];
}

/** More places than this are told by their sides alone. */
const MOST_COUNTED = 2;

/** Rows that copies of a chart are placed on. */
export interface Placed {
  readonly firstRow: number;
  readonly lastRow: number;
}

/**
 * A stand for each place where there are few, so that each can have its counter;
 * otherwise one for all places where the sides are the same. None where the chart
 * is not placed. Copies of `height` rows stand one above the other on each.
 */
export function standsOf(placed: readonly Placed[], height: number, { rows }: Pick<Plan, 'rows'>): Stand[] {
  const starts = new Map<number, number>();
  for (const { firstRow, lastRow } of placed) {
    for (let row = firstRow; row <= lastRow; row += height) {
      starts.set(row, Math.max(starts.get(row) ?? 0, Math.min(height, lastRow - row + 1)));
    }
  }
  const each = [...starts]
    .sort(([a], [b]) => a - b)
    .map(([start, knitted]): Stand => {
      const carriage = Array.from({ length: height }, (_, row) =>
        row < knitted ? (rows[start - 1 + row]?.from ?? null) : null,
      );
      return { starts: [start], carriage };
    });
  return each.length <= MOST_COUNTED ? each : bySides(each);
}

function bySides(each: readonly Stand[]): Stand[] {
  const found: Stand[] = [];
  for (const stand of each) {
    const index = found.findIndex(({ carriage }) =>
      carriage.every((side, row) => side === null || stand.carriage[row] === null || stand.carriage[row] === side),
    );
    const known = found[index];
    if (!known) {
      found.push(stand);
      continue;
    }
    found[index] = {
      starts: [...known.starts, ...stand.starts],
      carriage: known.carriage.map((side, row) => side ?? stand.carriage[row] ?? null),
    };
  }
  return found;
}
