/** What the sheet tells a knitter to do, as facts; `words/` has the sentences. */
import type { Run, Side, Slot } from '../bed/index.ts';
import type { Plan } from '../knitting/types.ts';
import { edgesAt, scheduleOf, stitchesAt, type SectionName, type ShapingStep } from '../piece/index.ts';
import { mainYarn, type Project } from '../project/index.ts';
import type { WrapStrand } from '../strands/types.ts';

export type Step =
  | { readonly code: 'cast-on'; readonly stitches: number; readonly yarn: string; readonly edges: Run }
  | { readonly code: 'carriage'; readonly side: Side }
  | { readonly code: 'end-needles'; readonly isOn: boolean }
  /** `isMirrored` is null where the groups do not all lie the same way round. */
  | { readonly code: 'first-needles'; readonly first: readonly Slot[]; readonly isMirrored: boolean | null }
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
  | { readonly code: 'fold'; readonly after: number }
  | { readonly code: 'shaping'; readonly steps: readonly ShapingStep[] }
  | { readonly code: 'finish'; readonly rows: number }
  | { readonly code: 'end'; readonly rows: number };

/** The steps from the cast-on to the last row. */
export function stepsOf(project: Project, plan: Plan): Step[] {
  const { piece, yarns } = project;
  const { rows } = plan.outline;
  const main = yarns[mainYarn(project)]?.name ?? '';
  const schedule = scheduleOf(plan.outline);
  const steps: Step[] = [
    { code: 'cast-on', stitches: stitchesAt(plan.outline, 1), yarn: main, edges: edgesAt(plan.outline, 1) },
    { code: 'carriage', side: piece.startSide },
  ];
  if (schedule.length > 0) steps.push({ code: 'shaping', steps: schedule });
  if (plan.groups.length > 0) steps.push({ code: 'end-needles', isOn: piece.endNeedleSelection });
  const fold = plan.sections.find(({ name }) => name === 'hem-back')?.last ?? null;

  let counter = 0;
  let isFolded = fold === null;
  const foldBy = (row: number): void => {
    if (isFolded || fold === null || fold > row) return;
    steps.push({ code: 'fold', after: fold });
    isFolded = true;
  };
  const knitPlainTo = (until: number): void => {
    if (until <= counter) return;
    steps.push({ code: 'plain', yarn: main, until });
    counter = until;
    foldBy(until);
  };
  const order = plan.bands.map((_, index) => index).filter((band) => plan.groups.some((group) => group.band === band));
  order.sort((a, b) => (plan.bands[a]?.firstRow ?? 0) - (plan.bands[b]?.firstRow ?? 0));
  for (const band of order) {
    const placed = plan.bands[band];
    if (!placed) continue;
    const { firstRow, lastRow, setUpAt } = placed;
    if (setUpAt !== null) knitPlainTo(setUpAt);
    steps.push(firstNeedlesOf(plan, band));
    if (setUpAt === null) steps.push({ code: 'by-hand', firstRow });
    else steps.push({ code: 'set-up', at: setUpAt, from: plan.rows[setUpAt]?.from ?? piece.startSide, firstRow });
    steps.push(patternOf(project, plan, band));
    counter = Math.max(counter, lastRow);
    foldBy(counter);
  }
  steps.push(counter < rows ? { code: 'finish', rows } : { code: 'end', rows });
  if (!isFolded) steps.splice(-1, 0, { code: 'fold', after: fold as number });
  return steps;
}

function firstNeedlesOf(plan: Plan, band: number): Step {
  const groups = plan.groups.filter((group) => group.band === band);
  const isMirrored = groups[0]?.isMirrored ?? false;
  return {
    code: 'first-needles',
    first: groups.map(({ block }) => block.first),
    isMirrored: groups.every((group) => group.isMirrored === isMirrored) ? isMirrored : null,
  };
}

function patternOf(project: Project, plan: Plan, band: number): Step {
  const { firstRow, lastRow } = plan.bands[band] as Plan['bands'][number];
  const rows = plan.rows.slice(firstRow - 1, lastRow);
  const used = new Set(rows.flatMap(({ contrast }) => contrast.map(({ yarn }) => yarn)));
  return {
    code: 'pattern',
    firstRow,
    lastRow,
    yarns: [mainYarn(project), ...[...used].sort((a, b) => a - b)].map((yarn) => project.yarns[yarn]?.name ?? ''),
    ownBalls: ownBallsOf(project, plan, band),
    wraps: rows.reduce((sum, { wraps }) => sum + wraps.length, 0),
  };
}

function ownBallsOf(project: Project, plan: Plan, band: number): readonly number[] | 'all' {
  const groups = project.bands[band]?.groups ?? [];
  const first = plan.groups.findIndex((group) => group.band === band);
  const own = groups.flatMap(({ hasOwnBall }, index) => (hasOwnBall ? [first + index] : []));
  return own.length > 1 && own.length === groups.length ? 'all' : own;
}

/** Neighbouring rows on which the same is done. */
export interface Stage {
  readonly kind: 'plain' | 'set-up' | 'pattern';
  readonly section: SectionName;
  readonly first: number;
  readonly last: number;
}

/** The whole piece in stages, bottom to top. */
export function stagesOf(plan: Plan): Stage[] {
  const inPattern = (row: number): boolean => plan.bands.some((band) => row >= band.firstRow && row <= band.lastRow);
  const isSetUp = (row: number): boolean => plan.bands.some(({ setUpAt }) => setUpAt !== null && setUpAt + 1 === row);
  const stages: Stage[] = [];
  for (const { row, section } of plan.rows) {
    const kind = inPattern(row) ? 'pattern' : isSetUp(row) ? 'set-up' : 'plain';
    const last = stages.at(-1);
    if (last && last.kind === kind && last.section === section && kind !== 'set-up') {
      stages[stages.length - 1] = { ...last, last: row };
    } else {
      stages.push({ kind, section, first: row, last: row });
    }
  }
  return stages;
}

/** Strands of one length that wrap one edge: in different groups, or on different rows. */
export interface StrandsToCut {
  readonly edge: WrapStrand['edge'];
  readonly firstRow: number;
  readonly lastRow: number;
  /** On all of them together. */
  readonly wraps: number;
  /** Length of each. */
  readonly mm: number;
  readonly count: number;
  /** The groups that have balls of their own. */
  readonly groups: readonly number[];
}

/** More lines than this are not read; strands of one length are then cut in one go. */
const MOST_STRAND_LINES = 24;

/** The strands to cut, those alike counted together: same rows and length, or, where that leaves many, same length. */
export function strandsToCut(plan: Plan): StrandsToCut[] {
  const byRows = counted(plan, ({ firstRow, lastRow }) => `${firstRow} ${lastRow}`);
  return byRows.length <= MOST_STRAND_LINES ? byRows : counted(plan, () => '');
}

function counted(plan: Plan, rowsOf: (strand: WrapStrand) => string): StrandsToCut[] {
  const found = new Map<string, StrandsToCut>();
  for (const wrapStrand of plan.wrapStrands) {
    const { edge, firstRow, lastRow, wraps, mm, strand } = wrapStrand;
    const key = [edge, strand.group === null, Math.ceil(mm / 10), rowsOf(wrapStrand)].join(' ');
    const alike = found.get(key) ?? { edge, firstRow, lastRow, wraps: 0, mm, count: 0, groups: [] };
    const isNew = strand.group !== null && !alike.groups.includes(strand.group);
    found.set(key, {
      ...alike,
      firstRow: Math.min(alike.firstRow, firstRow),
      lastRow: Math.max(alike.lastRow, lastRow),
      wraps: alike.wraps + wraps,
      count: alike.count + 1,
      groups: isNew ? [...alike.groups, strand.group] : alike.groups,
    });
  }
  return [...found.values()];
}
