/** What is written on a page of the sheet, apart from where it stands. */
import type { SheetElement, SheetItem, SheetPage } from './model.ts';

/** Everything a page says, a line for each text, in the order in which it is drawn. */
export function pageWords({ elements }: SheetPage): string {
  return elements
    .flatMap(itemsIn)
    .flatMap((item) => (item.kind === 'text' ? [item.spans.map(({ text }) => text).join('')] : []))
    .join('\n');
}

function itemsIn(element: SheetElement): readonly SheetItem[] {
  switch (element.role) {
    case 'list':
      return element.entries.flatMap(({ label, body }) => [...label, ...body]);
    case 'table':
      return element.rows.flatMap(({ cells }) => cells.flat());
    default:
      return element.items;
  }
}
