/** The plan for people: what it is, then row by row, then what to look out for. */
import { findingsOf, gatherFindings, leftAmong, remediesFor, type Finding } from '@shared/check/index.ts';
import { actNames, atHand, blockedBecause, rowsToKnit, runsText, sentences } from '@shared/output/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { patternGauges, runningOrderOf, type Plan, type PlanRow } from '@shared/plan/index.ts';
import { pieceIn, type KnitPiece, type Workpiece } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { runningOrderWords } from '@shared/words/running-order.ts';
import { findingWords } from '@shared/words/findings.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import { yarnWords } from '@shared/words/yarn.ts';
import { onLines } from './on-one-line.ts';
import { table, under } from './table.ts';

/** `plan` is that of `given`. */
export function planText(given: Workpiece, planned: Plan, unit: LengthUnit = 'cm'): string {
  const [project, plan] = onLines(given, planned);
  const { rowsTitle, strandsTitle, besideTitle, legend, findingsTitle, remediesTitle, noFindings } =
    terminalWords.cli.plan;
  const piece = pieceIn(project);
  const found = findingsOf(piece, plan);
  // A finding is known by what is said of it, with names as they are.
  const known = project === given ? found : findingsOf(pieceIn(given), planned);
  const isLeft = leftAmong(known, planned.patterns, piece.leftAsIs);
  const told = (findings: readonly Finding[]): string[] =>
    gatherFindings(findings).map((gathered) => findingWords.gathered(gathered, { ...project, unit }));
  const watched = found.filter((_, index) => !isLeft.has(known[index] as Finding));
  const findings = told(watched);
  const left = told(found.filter((_, index) => isLeft.has(known[index] as Finding)));
  const hasSeveralBands = bandsOf(piece).length > 1;
  const remedies = remediesFor(piece, plan, watched).map(
    (remedy) =>
      `${findingWords.remedy.name(remedy.intent, hasSeveralBands)}. ${findingWords.remedy.effect(remedy, unit)}`,
  );
  const blocked = blockedBecause(plan, piece, unit);
  const strands = words.knitting.wrapStrands(plan.wrapStrands, unit);
  const beside = [
    ...yarnWords.finishing(plan.yarn.finishing, unit),
    ...patternGauges(plan, piece.gauge).map((one) => yarnWords.patternGauge(one, unit)),
  ];
  return [
    words.knitting.summary(plan, project).join('\n'),
    ...blocked.slice(0, 1),
    under(runningOrderWords.titles.atHand, readyLines(piece, plan, unit)),
    ...(strands.length > 0 ? [under(strandsTitle, strands)] : []),
    ...(beside.length > 0 ? [under(besideTitle, beside)] : []),
    under(rowsTitle, rowLines(project, plan, unit)),
    legend,
    under(findingsTitle, findings.length > 0 ? findings : [noFindings]),
    ...(remedies.length > 0 ? [under(remediesTitle, remedies)] : []),
    ...(left.length > 0 ? [under(findingWords.leftTitle(left.length), left)] : []),
    findingWords.caution.machine,
  ].join('\n\n');
}

function readyLines(piece: KnitPiece, plan: Plan, unit: LengthUnit): string[] {
  const running = runningOrderOf(piece, plan);
  const names = actNames(piece, unit);
  return atHand(plan, running.isKnittable ? running.order : []).map((item) => runningOrderWords.atHand(item, names));
}

/** A row to knit, or several plain ones before which there is nothing to do: a row with something to do stands alone. */
interface Line {
  readonly rows: readonly [first: PlanRow, last: PlanRow];
  /** What is done before the first of them. */
  readonly before: readonly string[];
  /** What is done after the last row of all. */
  readonly after: readonly string[];
}

/** The table, the runs of needles last because they are long; what is done before a row stands above it. */
function rowLines(project: Workpiece, plan: Plan, unit: LengthUnit): string[] {
  const { knitting } = words;
  const { cli } = terminalWords;
  const used = plan.yarn.uses.filter(({ role }) => role === 'contrast').map(({ yarn }) => yarn);
  const lines = linesOf(pieceIn(project), plan, unit);
  const [titles = '', ...rows] = table(lines, [
    { title: knitting.columns.row, cell: ({ rows: [first, last] }) => span(first.row, last.row), isNumber: true },
    { title: knitting.columns.from, cell: ({ rows: [first] }) => first.from },
    { title: knitting.columns.wrap, cell: ({ rows: [row] }) => runsText(row.wraps.map(needleRun)) },
    { title: cli.plan.floats, cell: ({ rows: [row] }) => longFloats(row) },
    { title: cli.plan.carries, cell: ({ rows: [row] }) => longCarries(row) },
    ...used.map((yarn) => ({
      title: knitting.columns.needles(project.yarns[yarn]?.name ?? ''),
      cell: ({ rows: [row] }: Line) => runsText(row.contrast.filter((run) => run.yarn === yarn)),
    })),
  ]);
  const indent = ' '.repeat(knitting.columns.row.length + 2);
  return [
    titles,
    ...rows.flatMap((row, index) => {
      const { before, after } = lines[index] as Line;
      return [
        ...before.map((sentence) => `${indent}${sentence}`),
        row,
        ...after.map((sentence) => `${indent}${sentence}`),
      ];
    }),
  ];
}

function linesOf(piece: KnitPiece, plan: Plan, unit: LengthUnit): Line[] {
  const lines: Line[] = [];
  let isPlain = false;
  for (const told of rowsToKnit(piece, plan)) {
    const row = plan.rows[told.row - 1] as PlanRow;
    const [before, after] = [sentences(told.before, piece, unit), sentences(told.after, piece, unit)];
    const isNextPlain = row.contrast.length === 0 && row.wraps.length === 0;
    const last = lines.at(-1);
    if (last && isPlain && isNextPlain && last.before.length + before.length === 0) {
      lines[lines.length - 1] = { ...last, rows: [last.rows[0], row], after };
    } else {
      lines.push({ rows: [row, row], before, after });
    }
    isPlain = isNextPlain;
  }
  return lines;
}

/** The longest too long float of each yarn; where they all are stands among the findings. */
function longFloats({ floats }: PlanRow): string {
  return (['main', 'contrast'] as const)
    .map((role) => ({
      role,
      longest: Math.max(0, ...floats.filter(({ isOver, strand }) => isOver && strand.role === role).map(stitchesOf)),
    }))
    .filter(({ longest }) => longest > 0)
    .map(({ role, longest }) => terminalWords.cli.plan.float(role, longest))
    .join(', ');
}

function stitchesOf({ stitches }: PlanRow['floats'][number]): number {
  return stitches;
}

function longCarries({ carries }: PlanRow): string {
  return carries
    .filter(({ isOver }) => isOver)
    .map(({ stitches, toRow }) => terminalWords.cli.plan.carry(stitches, toRow))
    .join(', ');
}

function needleRun({ needle }: PlanRow['wraps'][number]): { first: typeof needle; last: typeof needle } {
  return { first: needle, last: needle };
}

function span(first: number, last: number): string {
  return first === last ? `${first}` : `${first}–${last}`;
}
