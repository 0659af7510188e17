/** Findings about the yarns that meet in a row. */
import { contrastRatio } from '../../colour/index.ts';
import { widthOf } from '../../bed/index.ts';
import type { PlanRow } from '../../knitting/types.ts';
import type { Finding } from '../types.ts';
import type { Inspected } from './question.ts';

/** One pass of the carriage feeds two yarns. */
const MOST_YARNS = 2;

/** Below this WCAG contrast the figure is hard to see against the main yarn. */
export const FAINT_CONTRAST = 1.5;

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

/** `faint-contrast`: a contrast yarn in use that is nearly as light or dark as the main yarn. */
export function faintContrast({ project, main, rows }: Inspected): Finding[] {
  const used = new Map<number, [first: number, last: number]>();
  for (const { row, contrast } of rows) {
    for (const { yarn } of contrast) {
      const span = used.get(yarn);
      if (span) span[1] = row;
      else used.set(yarn, [row, row]);
    }
  }
  const mainColour = project.yarns[main]?.colour;
  const findings: Finding[] = [];
  for (const [yarn, span] of [...used].sort((a, b) => a[0] - b[0])) {
    const colour = project.yarns[yarn]?.colour;
    if (colour === undefined || mainColour === undefined) continue;
    const ratio = contrastRatio(mainColour, colour);
    if (ratio < FAINT_CONTRAST) findings.push({ code: 'faint-contrast', rows: span, yarn, ratio });
  }
  return findings;
}

function yarnsIn({ contrast, edges }: PlanRow): number {
  const one = contrast[0]?.yarn;
  if (contrast.every(({ yarn }) => yarn === one)) return contrast.length === 0 ? 1 : 2;
  const knitted = contrast.reduce((stitches, run) => stitches + widthOf(run), 0);
  const isMainKnitted = knitted < widthOf(edges);
  return new Set(contrast.map(({ yarn }) => yarn)).size + Number(isMainKnitted);
}
