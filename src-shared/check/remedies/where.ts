/** What stands where a finding is. */
import { bandsOf } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { GatheredFinding } from '../gather.ts';

/** The bands with rows where the finding is, from 0. */
export function bandsAt(plan: Plan, { all }: GatheredFinding): number[] {
  return bandsOf(plan).flatMap(({ firstRow, lastRow }, band) =>
    all.some(({ rows }) => rows[0] <= lastRow && firstRow <= rows[1]) ? [band] : [],
  );
}
