/** The plan for people: what it is, then row by row, then what to look out for. */
import { findingsOf } from '@shared/check/index.ts';
import { runsText } from '@shared/output/index.ts';
import { rowNotes, type Plan, type PlanRow } from '@shared/plan/index.ts';
import { pieceIn, type Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { table, under } from './table.ts';

export function planText(project: Project, plan: Plan): string {
  const { rowsTitle, legend, findingsTitle, noFindings } = words.cli.plan;
  const findings = findingsOf(pieceIn(project), plan).map((finding) => words.findings.text(finding, project));
  return [
    words.knitting.summary(plan, project).join('\n'),
    under(rowsTitle, rowLines(project, plan)),
    legend,
    under(findingsTitle, findings.length > 0 ? findings : [noFindings]),
    words.findings.caution.machine,
  ].join('\n\n');
}

/** A row to knit, or several in a row that are plain and need no word. */
interface Line {
  readonly rows: readonly [first: PlanRow, last: PlanRow];
  readonly notes: readonly string[];
}

/** The table, the runs of needles last because they are long; notes stand under their row. */
function rowLines(project: Project, plan: Plan): string[] {
  const { knitting, cli } = words;
  const used = plan.yarn.uses.filter(({ role }) => role === 'contrast').map(({ yarn }) => yarn);
  const lines = linesOf(plan);
  const [titles = '', ...rows] = table(lines, [
    { title: knitting.columns.row, cell: ({ rows: [first, last] }) => span(first.row, last.row), isNumber: true },
    { title: knitting.columns.from, cell: ({ rows: [first, last] }) => (first === last ? first.from : '') },
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
    ...rows.flatMap((row, index) => [row, ...(lines[index] as Line).notes.map((note) => `${indent}${note}`)]),
  ];
}

function linesOf(plan: Plan): Line[] {
  const lines: Line[] = [];
  const notes = rowNotes(plan);
  let isOpen = false;
  for (const row of plan.rows) {
    const noted = (notes[row.row - 1] ?? []).map(words.knitting.note);
    const isPlain = row.contrast.length === 0 && row.wraps.length === 0 && noted.length === 0;
    const last = lines.at(-1);
    if (isPlain && isOpen && last) {
      lines[lines.length - 1] = { ...last, rows: [last.rows[0], row] };
    } else {
      lines.push({ rows: [row, row], notes: noted });
    }
    isOpen = isPlain;
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
    .map(({ role, longest }) => words.cli.plan.float(role, longest))
    .join(', ');
}

function stitchesOf({ stitches }: PlanRow['floats'][number]): number {
  return stitches;
}

function longCarries({ carries }: PlanRow): string {
  return carries
    .filter(({ isOver }) => isOver)
    .map(({ stitches, toRow }) => words.cli.plan.carry(stitches, toRow))
    .join(', ');
}

function needleRun({ needle }: PlanRow['wraps'][number]): { first: typeof needle; last: typeof needle } {
  return { first: needle, last: needle };
}

function span(first: number, last: number): string {
  return first === last ? `${first}` : `${first}–${last}`;
}
