/** Findings about the yarns that meet in a row. */
import { contrastRatio, FAINT_CONTRAST } from '../colour/index.ts';
import type { PlanRow } from '../plan/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** One pass of the carriage feeds two yarns. */
const MOST_YARNS = 2;

/** `many-yarns`: rows that knit more yarns than one pass feeds, all of the piece in one finding. */
export function manyYarns({ rows }: Inspected): Finding[] {
  let first = 0;
  let last = 0;
  let most = 0;
  let count = 0;
  for (const row of rows) {
    const yarns = yarnsIn(row);
    if (yarns <= MOST_YARNS) continue;
    first ||= row.row;
    last = row.row;
    most = Math.max(most, yarns);
    count++;
  }
  return count === 0 ? [] : [{ code: 'many-yarns', rows: [first, last], yarns: most, count }];
}

/** Yarns that knit in a row; main counts where it knits. */
function yarnsIn({ contrast, isMainKnitted }: PlanRow): number {
  const seen: number[] = [];
  for (const { yarn } of contrast) if (!seen.includes(yarn)) seen.push(yarn);
  return seen.length + Number(isMainKnitted);
}

/** `faint-contrast`: a contrast yarn in use that is nearly as light or dark as the main yarn. */
export function faintContrast({ piece, rows }: Inspected): Finding[] {
  const mainColour = piece.yarns[piece.mainYarn]?.colour;
  /** By yarn: the first and last row that knits it in contrast. */
  const firstRow: (number | undefined)[] = [];
  const lastRow: (number | undefined)[] = [];
  for (const { row, contrast } of rows) {
    for (const { yarn } of contrast) {
      firstRow[yarn] ??= row;
      lastRow[yarn] = row;
    }
  }
  return piece.yarns.flatMap(({ colour }, yarn): Finding[] => {
    const [first, last] = [firstRow[yarn], lastRow[yarn]];
    if (first === undefined || last === undefined || mainColour === undefined) return [];
    const ratio = contrastRatio(mainColour, colour);
    return ratio < FAINT_CONTRAST ? [{ code: 'faint-contrast', rows: [first, last], yarn, ratio }] : [];
  });
}
