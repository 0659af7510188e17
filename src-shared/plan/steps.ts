/** The running order: what a knitter does from the cast-on to the last row, as facts; `words/` has the sentences. */
import type { Run, Side, Slot } from '../bed/index.ts';
import { firstNeedlesOf, type PlacedFill } from '../fabric/index.ts';
import { edgesAt, scheduleOf, stitchesAt, type ShapingStep } from '../piece/index.ts';
import type { KnitPiece } from '../project/index.ts';
import type { HemRow } from './hem-notes.ts';
import type { Plan } from './types.ts';

export type Step =
  | { readonly code: 'cast-on'; readonly stitches: number; readonly yarn: string; readonly edges: Run }
  | { readonly code: 'carriage'; readonly side: Side }
  /** `isAllOver`: there are fills and no groups. */
  | { readonly code: 'end-needles'; readonly isOn: boolean; readonly isAllOver: boolean }
  /** `isMirrored` is null where the groups do not all lie the same way round. */
  | { readonly code: 'first-needles'; readonly first: readonly Slot[]; readonly isMirrored: boolean | null }
  | {
      readonly code: 'fill';
      readonly fill: number;
      readonly motif: string;
      readonly firstRow: number;
      /** Where copies start on that row, and how wide they are. */
      readonly first: readonly Slot[];
      readonly width: number;
      readonly step: number;
      readonly isMirrored: boolean;
    }
  | { readonly code: 'plain'; readonly yarn: string; readonly until: number }
  | { readonly code: 'set-up'; readonly at: number; readonly from: Side; readonly firstRow: number }
  | { readonly code: 'by-hand'; readonly firstRow: number }
  | {
      readonly code: 'pattern';
      readonly firstRow: number;
      readonly lastRow: number;
      readonly yarns: readonly string[];
      /** Indices of the groups that have a ball of contrast of their own; `all` of the band, if there is more than one. */
      readonly ownBalls: readonly number[] | 'all';
      readonly wraps: number;
    }
  | ({ readonly code: 'hem' } & HemRow)
  | { readonly code: 'shaping'; readonly steps: readonly ShapingStep[] }
  | { readonly code: 'finish'; readonly rows: number }
  | { readonly code: 'end'; readonly rows: number };

/** The steps from the cast-on to the last row. */
export function stepsOf(piece: KnitPiece, plan: Plan): Step[] {
  const { rows } = plan.outline;
  const main = piece.yarns[piece.mainYarn]?.name ?? '';
  const schedule = scheduleOf(plan.outline);
  const steps: Step[] = [
    { code: 'cast-on', stitches: stitchesAt(plan.outline, 1), yarn: main, edges: edgesAt(plan.outline, 1) },
    { code: 'carriage', side: piece.startSide },
  ];
  if (schedule.length > 0) steps.push({ code: 'shaping', steps: schedule });
  if (plan.groups.length + plan.fills.length > 0 && piece.machine.endNeedles === 'switch') {
    steps.push({
      code: 'end-needles',
      isOn: plan.endNeedleRows.size > 0,
      isAllOver: plan.groups.length === 0,
    });
  }

  let counter = 0;
  const hem = [...plan.hem];
  /** A turning row is knitted looser, so the rows before it end there. */
  const stopAt = ({ row, note }: HemRow): number => (note.code === 'fold' && note.turning !== 'none' ? row - 1 : row);
  const plainTo = (until: number): void => {
    if (until <= counter) return;
    steps.push({ code: 'plain', yarn: main, until });
    counter = until;
  };
  /** What the hem asks for up to a row, said where it is done. */
  const hemTo = (row: number): void => {
    for (let next = hem[0]; next && next.row <= row; next = hem[0]) {
      plainTo(stopAt(next));
      steps.push({ code: 'hem', ...next });
      counter = Math.max(counter, next.row);
      hem.shift();
    }
  };
  const knitPlainTo = (until: number): void => {
    hemTo(until);
    plainTo(until);
  };
  for (const { firstRow, lastRow, setUpAt, start, ownBalls } of patternsOf(piece, plan)) {
    if (setUpAt !== null) knitPlainTo(setUpAt);
    steps.push(start);
    if (setUpAt === null) steps.push({ code: 'by-hand', firstRow });
    else steps.push({ code: 'set-up', at: setUpAt, from: plan.rows[setUpAt]?.from ?? piece.startSide, firstRow });
    steps.push(patternOf(piece, plan, { firstRow, lastRow, ownBalls }));
    counter = Math.max(counter, lastRow);
    // What falls within the pattern is said after it, with its row.
    for (let next = hem[0]; next && next.row <= counter; next = hem[0]) {
      steps.push({ code: 'hem', ...next });
      hem.shift();
    }
  }
  hemTo(rows);
  steps.push(counter < rows ? { code: 'finish', rows } : { code: 'end', rows });
  return steps;
}

/** A band or a fill as its rows are knitted. */
interface Pattern {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly setUpAt: number | null;
  /** Where it starts on the needles. */
  readonly start: Step;
  readonly ownBalls: readonly number[] | 'all';
}

/** Bands and fills, from the bottom of the piece up. */
function patternsOf(piece: KnitPiece, plan: Plan): Pattern[] {
  const bands = plan.bands.flatMap((placed, band): Pattern[] =>
    plan.groups.some((group) => group.band === band)
      ? [{ ...placed, start: startOfBand(plan, band), ownBalls: ownBallsOf(piece, plan, band) }]
      : [],
  );
  const fills = plan.fills.map((placed): Pattern => ({
    ...placed,
    start: startOfFill(piece, plan, placed),
    ownBalls: [],
  }));
  return [...bands, ...fills].sort((a, b) => a.firstRow - b.firstRow);
}

function startOfFill(piece: KnitPiece, plan: Plan, placed: PlacedFill): Step {
  const { fill, copy, firstRow, step, isMirrored } = placed;
  const first = firstNeedlesOf(placed, plan.outline);
  return {
    code: 'fill',
    fill,
    motif: piece.fills[fill]?.motif.name ?? '',
    firstRow,
    first,
    width: copy.width,
    step,
    isMirrored,
  };
}

function startOfBand(plan: Plan, band: number): Step {
  const groups = plan.groups.filter((group) => group.band === band);
  const isMirrored = groups[0]?.isMirrored ?? false;
  return {
    code: 'first-needles',
    first: groups.map(({ block }) => block.first),
    isMirrored: groups.every((group) => group.isMirrored === isMirrored) ? isMirrored : null,
  };
}

function patternOf(
  { yarns, mainYarn }: KnitPiece,
  plan: Plan,
  { firstRow, lastRow, ownBalls }: Pick<Pattern, 'firstRow' | 'lastRow' | 'ownBalls'>,
): Step {
  const rows = plan.rows.slice(firstRow - 1, lastRow);
  const main = rows.some(({ isMainKnitted }) => isMainKnitted) ? [mainYarn] : [];
  const used = new Set(rows.flatMap(({ contrast }) => contrast.map(({ yarn }) => yarn)));
  return {
    code: 'pattern',
    firstRow,
    lastRow,
    yarns: [...main, ...[...used].sort((a, b) => a - b)].map((yarn) => yarns[yarn]?.name ?? ''),
    ownBalls,
    wraps: rows.reduce((sum, { wraps }) => sum + wraps.length, 0),
  };
}

function ownBallsOf(piece: KnitPiece, plan: Plan, band: number): readonly number[] | 'all' {
  const groups = piece.bands[band]?.groups ?? [];
  const first = plan.groups.findIndex((group) => group.band === band);
  const own = groups.flatMap(({ hasOwnBall }, index) => (hasOwnBall ? [first + index] : []));
  return own.length > 1 && own.length === groups.length ? 'all' : own;
}
