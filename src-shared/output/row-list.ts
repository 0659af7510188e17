/** The plan as a table, one line a row, for paper and for other programs. */
import { label, type Run } from '../bed/index.ts';
import { rowNotes, type Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { words } from '../words/index.ts';
import { csvText } from './csv.ts';

export interface RowList {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * Row counter, carriage side, section, the needles of each contrast yarn in
 * use (runs from left to right, such as `L48-L40 L38 R12-R47`), needles to
 * wrap before the row, notes.
 */
export function rowList(plan: Plan, { yarns }: Pick<KnitPiece, 'yarns'>): RowList {
  const { columns, note } = words.knitting;
  const used = plan.yarn.uses.filter(({ role }) => role === 'contrast').map(({ yarn }) => yarn);
  const notes = rowNotes(plan);
  return {
    header: [
      columns.row,
      columns.from,
      columns.section,
      ...used.map((yarn) => columns.needles(yarns[yarn]?.name ?? '')),
      columns.wrap,
      columns.notes,
    ],
    rows: plan.rows.map(({ row, from, section, contrast, wraps }, index) => [
      String(row),
      words.numbers.side(from),
      words.sections.name(section),
      ...used.map((yarn) => runsText(contrast.filter((run) => run.yarn === yarn))),
      wraps.map(({ needle }) => label(needle)).join(' '),
      (notes[index] ?? []).map(note).join('; '),
    ]),
  };
}

/** The row list as RFC 4180 text with a header line. */
export function rowListCsv(plan: Plan, project: Pick<KnitPiece, 'yarns'>): string {
  const { header, rows } = rowList(plan, project);
  return csvText([header, ...rows]);
}

/** `L48-L40 L38 R12-R47`. */
export function runsText(runs: readonly Run[]): string {
  return runs.map(({ first, last }) => (first === last ? label(first) : `${label(first)}-${label(last)}`)).join(' ');
}
