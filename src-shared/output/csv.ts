/** Tables as comma-separated text (RFC 4180). */

/**
 * Rows of cells as text: fields with commas, quotes or line ends are quoted,
 * quotes doubled, lines end in CR LF. A cell that a spreadsheet would take for
 * a formula is preceded by an apostrophe, which makes it text there.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => `${cells.map(field).join(',')}\r\n`).join('');
}

function field(cell: string): string {
  const text = /^[=+\-@\t\r\n＝＋－＠]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
