/** Enter in a table of fields goes down the column, and up with Shift, to the field that is like this one. */
export function goDownTheColumn(event: KeyboardEvent): void {
  const from = event.target;
  if (event.key !== 'Enter' || !(from instanceof HTMLInputElement)) return;
  const cell = from.closest<HTMLTableCellElement>('td');
  if (!cell) return;
  event.preventDefault();
  const fieldsOf = (of: Element): HTMLInputElement[] => [...of.querySelectorAll('input')];
  const place = fieldsOf(cell).indexOf(from);
  const rows = [...(cell.closest('table')?.rows ?? [])];
  const at = rows.indexOf(cell.parentElement as HTMLTableRowElement);
  const ahead = event.shiftKey ? rows.slice(0, at).reverse() : rows.slice(at + 1);
  const fields = ahead.map((row) => row.cells[cell.cellIndex]).filter((there) => there?.tagName === 'TD');
  const to = fields.map((there) => (there ? fieldsOf(there) : [])).find((of) => of.length > 0);
  const field = to?.[place] ?? to?.[0];
  field?.focus();
  // As after Tab, what is typed takes the place of what stands there.
  field?.select();
}
