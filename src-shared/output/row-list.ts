/** What is knitted row by row, with what is done before each: for paper and for other programs. */
import { label, type Run } from '../bed/index.ts';
import { BLOCKING_CODES, findingsOf } from '../check/index.ts';
import { runningOrderOf, type Act, type Plan, type PlanRow } from '../plan/index.ts';
import type { LengthUnit } from '../length/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { words } from '../words/index.ts';
import { runningOrderWords } from '../words/running-order.ts';
import { findingWords } from '../words/findings.ts';
import { csvText } from './csv.ts';
import { actNames } from './steps/names.ts';

export interface RowList {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A row, and what is done before it; after the last one, what is done then. */
export interface RowToKnit extends Pick<PlanRow, 'row' | 'from' | 'section' | 'edges' | 'contrast' | 'wraps'> {
  readonly before: readonly Act[];
  readonly after: readonly Act[];
}

/** Every row of the piece. Where it cannot be knitted as told there are no acts. */
export function rowsToKnit(piece: KnitPiece, plan: Plan): RowToKnit[] {
  const running = runningOrderOf(piece, plan);
  const acts = new Map<number, readonly Act[]>();
  for (const item of running.isKnittable ? running.order : []) {
    if (item.kind === 'stop') acts.set(item.counter, item.acts);
  }
  return plan.rows.map(({ row, from, section, edges, contrast, wraps }) => ({
    row,
    from,
    section,
    edges,
    contrast,
    wraps,
    before: acts.get(row - 1) ?? [],
    after: row === plan.rows.length ? (acts.get(row) ?? []) : [],
  }));
}

/** Wraps have a column of their own. */
export function sentences(acts: readonly Act[], piece: KnitPiece, unit: LengthUnit = 'cm'): string[] {
  const names = actNames(piece, unit);
  return acts.filter(({ kind }) => kind !== 'wrap').map((act) => runningOrderWords.act(act, names));
}

/** Why there is no running order, in sentences; empty where there is one. */
export function blockedBecause(plan: Plan, piece: KnitPiece, unit: LengthUnit = 'cm'): string[] {
  if (runningOrderOf(piece, plan).isKnittable) return [];
  const { titles } = runningOrderWords;
  const reasons = findingsOf(piece, plan).filter(({ code }) => BLOCKING_CODES.has(code));
  return [`${titles.blocked}.`, ...reasons.map((finding) => findingWords.text(finding, { ...piece, unit }))];
}

/**
 * Row, carriage side, section, needles in work, what is done before the row,
 * the needles of each contrast yarn in use (runs from left to right, such as
 * `L48-L40 L38 R12-R47`), needles to wrap, what is done after the row.
 */
export function rowList(plan: Plan, piece: KnitPiece): RowList {
  const { columns } = words.knitting;
  const used = plan.yarn.uses.filter(({ role }) => role === 'contrast').map(({ yarn }) => yarn);
  const rows = rowsToKnit(piece, plan);
  const blocked = blockedBecause(plan, piece);
  return {
    header: [
      columns.row,
      columns.from,
      columns.section,
      columns.edges,
      columns.before,
      ...used.map((yarn) => columns.needles(piece.yarns[yarn]?.name ?? '')),
      columns.wrap,
      columns.after,
    ],
    rows: rows.map(({ row, from, section, edges, contrast, wraps, before, after }) => [
      String(row),
      words.numbers.side(from),
      words.sections.name(section),
      runsText([edges]),
      [...(row === 1 ? blocked : []), ...sentences(before, piece)].join(' '),
      ...used.map((yarn) => runsText(contrast.filter((run) => run.yarn === yarn))),
      wraps.map(({ needle }) => label(needle)).join(' '),
      sentences(after, piece).join(' '),
    ]),
  };
}

/** The row list as RFC 4180 text with a header line. */
export function rowListCsv(plan: Plan, piece: KnitPiece): string {
  const { header, rows } = rowList(plan, piece);
  return csvText([header, ...rows]);
}

/** `L48-L40 L38 R12-R47`. */
export function runsText(runs: readonly Run[]): string {
  return runs.map(({ first, last }) => (first === last ? label(first) : `${label(first)}-${label(last)}`)).join(' ');
}
