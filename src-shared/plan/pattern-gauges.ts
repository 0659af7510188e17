/**
 * At which gauge each pattern is knitted, and what that does to its width.
 * Two-colour fabric at the same tension is narrower than plain, with squarer
 * stitches (common practice): it has a gauge of its own, which only a swatch
 * can tell.
 */
import { widthOf } from '../bed/index.ts';
import { gaugeAt, isSameGauge, stitchWidthMm, type Gauge } from '../piece/index.ts';
import { namesOf, patternsOf, type PatternName } from '../pattern/index.ts';
import type { Plan } from './types.ts';

export interface PatternGauge {
  readonly pattern: PatternName;
  /** Its first row, and the stitches that the piece has there. */
  readonly row: number;
  readonly stitches: number;
  /** What they measure at the gauge of that row, in mm, and at that of the piece. */
  readonly widthMm: number;
  readonly plainMm: number;
  /** The row has another gauge than the piece. */
  readonly isOwn: boolean;
}

/** Of each pattern in its order; `gauge`: that of the piece. */
export function patternGauges(plan: Plan, gauge: Gauge): PatternGauge[] {
  return namesOf(plan.patterns).flatMap((pattern) => {
    const row = patternsOf(plan, pattern.kind)[pattern.number]?.firstRow;
    const edges = row === undefined ? undefined : plan.rows[row - 1]?.edges;
    if (row === undefined || !edges) return [];
    const own = gaugeAt(plan.gauges, row);
    const stitches = widthOf(edges);
    return [
      {
        pattern,
        row,
        stitches,
        widthMm: stitches * stitchWidthMm(own),
        plainMm: stitches * stitchWidthMm(gauge),
        isOwn: !isSameGauge(own, gauge),
      },
    ];
  });
}
