/** Tables of text: columns as wide as their widest cell, two blanks apart. */

export interface Column<Row> {
  readonly title: string;
  readonly cell: (row: Row) => string;
  /** Numbers stand at the right of their column. */
  readonly isNumber?: boolean;
}

/** Lines of the table, titles first. Columns with nothing in any row are left out. */
export function table<Row>(rows: readonly Row[], columns: readonly Column<Row>[]): string[] {
  const filled = columns
    .map((column) => ({ ...column, cells: rows.map(column.cell) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const lines = [filled.map(({ title }) => title), ...rows.map((_, r) => filled.map(({ cells }) => cells[r] ?? ''))];
  const widths = filled.map((_, c) => Math.max(...lines.map((line) => (line[c] as string).length)));
  return lines.map((line) =>
    line
      .map((cell, c) => (filled[c]?.isNumber ? cell.padStart(widths[c] as number) : cell.padEnd(widths[c] as number)))
      .join('  ')
      .trimEnd(),
  );
}

/** Lines pushed in under a title. */
export function under(title: string, lines: readonly string[]): string {
  return [title, ...lines.map((line) => `  ${line}`)].join('\n');
}
