/** Findings about the yarns that meet in a row. */
import { widthOf, type Run } from '../bed/index.ts';
import { contrastRatio, FAINT_CONTRAST } from '../colour/index.ts';
import { contrastSum, type PlanRow } from '../plan/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** One pass of the carriage feeds two yarns. */
const MOST_YARNS = 2;

/** `many-yarns`: rows that knit more yarns than one pass feeds, all of the piece in one finding. */
export function manyYarns({ piece, plan, rows }: Inspected): Finding[] {
  if (plan.yarn.uses.length <= MOST_YARNS) return [];
  const many = rows.filter(isOfManyYarns);
  const [lowest, highest] = [many[0], many.at(-1)];
  if (!lowest || !highest) return [];
  const isSeen = piece.machine.chooses !== 'ahead-unseen';
  const [rarest] = spareYarns(lowest) as [YarnInRow];
  return [
    {
      code: 'many-yarns',
      rows: [lowest.row, highest.row],
      yarns: Math.max(...many.map(yarnsIn)),
      count: many.length,
      laid: isSeen ? sumOf(many.flatMap(contrastsIn)) : null,
      change: {
        stitches: sumOf(many.flatMap(spareYarns)),
        row: lowest.row,
        yarn: rarest.yarn,
        needles: rarest.needles,
      },
    },
  ];
}

/** What a row knits of a contrast yarn. */
export interface YarnInRow {
  readonly yarn: number;
  readonly stitches: number;
  readonly needles: readonly Run[];
}

function contrastsIn({ contrast }: PlanRow): YarnInRow[] {
  const yarns = [...new Set(contrast.map(({ yarn }) => yarn))];
  return yarns.map((yarn) => {
    const needles = contrast.filter((run) => run.yarn === yarn).map(({ first, last }) => ({ first, last }));
    return { yarn, needles, stitches: needles.reduce((sum, run) => sum + widthOf(run), 0) };
  });
}

/** Whether a row knits more yarns than one pass feeds. */
export function isOfManyYarns(row: PlanRow): boolean {
  return yarnsIn(row) > MOST_YARNS;
}

/** The contrast yarns that a row has too many of, the rarest first: beside main one may stay, else two. */
export function spareYarns(row: PlanRow): YarnInRow[] {
  return rarestFirst(row).slice(0, -mostContrasts(row));
}

/** The contrast yarns that may stay, the rarest of them first. */
export function keptYarns(row: PlanRow): YarnInRow[] {
  return rarestFirst(row).slice(-mostContrasts(row));
}

function rarestFirst(row: PlanRow): YarnInRow[] {
  return contrastsIn(row).sort((one, other) => one.stitches - other.stitches);
}

function mostContrasts({ isMainKnitted }: PlanRow): number {
  return isMainKnitted ? MOST_YARNS - 1 : MOST_YARNS;
}

function sumOf(yarns: readonly YarnInRow[]): number {
  return yarns.reduce((sum, { stitches }) => sum + stitches, 0);
}

/** Yarns that knit in a row; main counts where it knits. */
function yarnsIn({ contrast, isMainKnitted }: PlanRow): number {
  return contrastSum(contrast).yarns.length + Number(isMainKnitted);
}

/** `faint-contrast`: a contrast yarn in use that is nearly as light or dark as the main yarn. */
export function faintContrast({ piece, rows }: Inspected): Finding[] {
  const mainColour = piece.yarns[piece.mainYarn]?.colour;
  if (mainColour === undefined) return [];
  const ratios = piece.yarns.map(({ colour }) => contrastRatio(mainColour, colour));
  if (ratios.every((ratio, yarn) => yarn === piece.mainYarn || ratio >= FAINT_CONTRAST)) return [];
  /** By yarn: the first and last row that knits it in contrast. */
  const firstRow: (number | undefined)[] = [];
  const lastRow: (number | undefined)[] = [];
  for (const { row, contrast } of rows) {
    for (const yarn of contrastSum(contrast).yarns) {
      firstRow[yarn] ??= row;
      lastRow[yarn] = row;
    }
  }
  return ratios.flatMap((ratio, yarn): Finding[] => {
    const [first, last] = [firstRow[yarn], lastRow[yarn]];
    if (first === undefined || last === undefined || ratio >= FAINT_CONTRAST) return [];
    return [{ code: 'faint-contrast', rows: [first, last], yarn, ratio }];
  });
}
