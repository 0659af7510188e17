/** The colours that the rows of a chart are knitted in, where they are not those that it is drawn in. */
import type { CopiesPlace } from '../../fabric/index.ts';
import { rowsOfOrder, stripesOver } from '../../pattern/index.ts';
import type { KnitPiece } from '../../project/index.ts';
import { sheetWords } from '../../words/sheet.ts';

type Coloured = Pick<CopiesPlace, 'colours' | 'lastRow'>;

/** A sentence for each order of colours that the places of a chart have; of one that repeats, its stripes once. */
export function coloursSaid(places: readonly Coloured[], { yarns }: Pick<KnitPiece, 'yarns'>): string[] {
  const nameOf = (yarn: number): string => yarns[yarn]?.name ?? '';
  /** By where an order begins: groups of one band share it, and the highest of them shows the most. */
  const orders = new Map<number, Coloured>();
  for (const place of places) {
    if (!place.colours) continue;
    const known = orders.get(place.colours.from);
    if (!known || known.lastRow < place.lastRow) orders.set(place.colours.from, place);
  }
  return [...orders.values()].flatMap(({ colours, lastRow }) => {
    if (!colours) return [];
    const { order, from } = colours;
    const height = lastRow - from + 1;
    const once = rowsOfOrder(order);
    const stripes = stripesOver(order, Math.min(height, once)).map(({ stripe, first, last }) => ({
      first: from + first,
      last: from + last,
      yarns: stripe.yarns
        .filter(({ drawn, knitted }) => drawn !== knitted)
        .map(({ drawn, knitted }) => ({ drawn: nameOf(drawn), knitted: nameOf(knitted) })),
    }));
    return [sheetWords.chart.colours(stripes, order.repeats && once < height ? once : null)];
  });
}
