/** The whole piece in stages, for one look at it. */
import type { SectionName } from '../piece/index.ts';
import type { Plan } from './types.ts';

/** Neighbouring rows on which the same is done. */
export interface Stage {
  readonly kind: 'plain' | 'turning' | 'set-up' | 'pattern';
  readonly section: SectionName;
  readonly first: number;
  readonly last: number;
}

/** The whole piece in stages, bottom to top. */
export function stagesOf(plan: Plan): Stage[] {
  const patterns = [...plan.bands, ...plan.fills];
  const inPattern = (row: number): boolean =>
    patterns.some(({ firstRow, lastRow }) => row >= firstRow && row <= lastRow);
  const isSetUp = (row: number): boolean => patterns.some(({ setUpAt }) => setUpAt !== null && setUpAt + 1 === row);
  const turningRow = plan.hem.find(({ note }) => note.code === 'fold' && note.turning !== 'none')?.row ?? null;
  const stages: Stage[] = [];
  for (const { row, section } of plan.rows) {
    const kind = inPattern(row) ? 'pattern' : isSetUp(row) ? 'set-up' : row === turningRow ? 'turning' : 'plain';
    const last = stages.at(-1);
    if (last && last.kind === kind && last.section === section && kind !== 'set-up') {
      stages[stages.length - 1] = { ...last, last: row };
    } else {
      stages.push({ kind, section, first: row, last: row });
    }
  }
  return stages;
}
