/** Findings about the yarns that meet in a row. */
import { contrastRatio } from '../../colour/index.ts';
import type { LaidRow } from '../lay.ts';
import type { Finding, StrandId } from '../types.ts';
import type { Inspected } from './question.ts';

/** One pass of the carriage feeds two yarns. */
const MOST_YARNS = 2;

/** Below this WCAG contrast the figure is hard to see against the main yarn. */
export const FAINT_CONTRAST = 1.5;

/** `many-yarns`: rows that knit more yarns than one pass feeds, all of the piece in one finding. */
export function manyYarns({ laid }: Inspected): Finding[] {
  let first = 0;
  let last = 0;
  let most = 0;
  let count = 0;
  laid.rows.forEach((row, index) => {
    const yarns = yarnsIn(row, laid.strands);
    if (yarns <= MOST_YARNS) return;
    first ||= index + 1;
    last = index + 1;
    most = Math.max(most, yarns);
    count++;
  });
  return count === 0 ? [] : [{ code: 'many-yarns', rows: [first, last], yarns: most, count }];
}

/** Yarns that knit in a row: balls of one yarn are one, and main counts where it knits. */
function yarnsIn({ strands, isMainKnitted }: LaidRow, ids: readonly StrandId[]): number {
  if (strands.length < MOST_YARNS) return strands.length + Number(isMainKnitted);
  return new Set(strands.map(({ strand }) => ids[strand]?.yarn)).size + Number(isMainKnitted);
}

/** `faint-contrast`: a contrast yarn in use that is nearly as light or dark as the main yarn. */
export function faintContrast({ project, main, laid }: Inspected): Finding[] {
  const mainColour = project.yarns[main]?.colour;
  const rows = new Map<number, [first: number, last: number]>();
  laid.strands.forEach(({ yarn, role }, strand) => {
    if (role === 'main') return;
    const first = laid.firstRow[strand] as number;
    const last = laid.lastRow[strand] as number;
    const known = rows.get(yarn);
    rows.set(yarn, known ? [Math.min(known[0], first), Math.max(known[1], last)] : [first, last]);
  });
  return [...rows]
    .sort(([a], [b]) => a - b)
    .flatMap(([yarn, span]): Finding[] => {
      const colour = project.yarns[yarn]?.colour;
      if (colour === undefined || mainColour === undefined) return [];
      const ratio = contrastRatio(mainColour, colour);
      return ratio < FAINT_CONTRAST ? [{ code: 'faint-contrast', rows: span, yarn, ratio }] : [];
    });
}
