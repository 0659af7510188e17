/** What stands where a finding is. */
import { bandsOf } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Found } from '../gather.ts';

/** The bands with rows where the finding is, from 0. */
export function bandsAt(plan: Plan, { all }: Found): number[] {
  return bandsOf(plan).flatMap(({ firstRow, lastRow }, band) =>
    all.some(({ rows }) => rows[0] <= lastRow && firstRow <= rows[1]) ? [band] : [],
  );
}

/** Whether the finding is about contrast that lies beside the groups of a band, so that it depends on where these stand. */
export function isBesideGroups({ groups }: Plan, { finding, all }: Found): boolean {
  if (finding.code === 'contrast-to-edges') return groups.length > 0;
  return all.some(
    (each) =>
      each.code === 'long-floats' &&
      each.role === 'contrast' &&
      groups.some(({ firstRow, lastRow }) => each.rows[0] <= lastRow && firstRow <= each.rows[1]) &&
      !groups.some(({ block }) => block.first <= each.needles.first && each.needles.last <= block.last),
  );
}
