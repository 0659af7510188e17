/** Stripes of an order of colours as a form changes them, and what stands beside them there. */
import { crop, type Grid } from '@shared/grid/index.ts';
import { trueRepeat } from '@shared/motif/repeat/index.ts';
import { copiesOf, MOST_STRIPES, type ColourOrder, type Pattern } from '@shared/pattern/index.ts';
import { motifOf, yarnsUsed, type ProjectAt } from '@shared/project/index.ts';

/** Rows of the first stripe, until another number is given. */
const FIRST_ROWS = 6;

/** One stripe as drawn, to begin with. */
export const START_ORDER: ColourOrder = { stripes: [{ rows: FIRST_ROWS, yarns: [] }], repeats: true };

/** A stripe more at the top, as high as the one below it. Null where there are as many as may be. */
export function withStripe(order: ColourOrder): ColourOrder | null {
  if (order.stripes.length >= MOST_STRIPES) return null;
  const rows = order.stripes.at(-1)?.rows ?? FIRST_ROWS;
  return { ...order, stripes: [...order.stripes, { rows, yarns: [] }] };
}

/** Null once no stripe is left: the pattern is knitted as drawn. */
export function withoutStripe(order: ColourOrder, at: number): ColourOrder | null {
  const stripes = order.stripes.toSpliced(at, 1);
  return stripes.length === 0 ? null : { ...order, stripes };
}

/** The stripe and the one `by` places above it change places. */
export function withStripeMoved(order: ColourOrder, at: number, by: 1 | -1): ColourOrder {
  const [one, other] = [order.stripes[at], order.stripes[at + by]];
  if (!one || !other) return order;
  return { ...order, stripes: order.stripes.with(at, other).with(at + by, one) };
}

export function withRows(order: ColourOrder, at: number, rows: number): ColourOrder {
  return { ...order, stripes: order.stripes.map((stripe, index) => (index === at ? { ...stripe, rows } : stripe)) };
}

/** Another yarn for one that is drawn; itself: as drawn. */
export function withYarn(order: ColourOrder, at: number, drawn: number, knitted: number): ColourOrder {
  const stripes = order.stripes.map((stripe, index) => {
    if (index !== at) return stripe;
    const others = stripe.yarns.filter((one) => one.drawn !== drawn);
    const yarns = knitted === drawn ? others : [...others, { drawn, knitted }].sort((a, b) => a.drawn - b.drawn);
    return { ...stripe, yarns };
  });
  return { ...order, stripes };
}

/** The yarn that is knitted for a drawn one in a stripe. */
export function knittedFor(order: ColourOrder, at: number, drawn: number): number {
  return order.stripes[at]?.yarns.find((one) => one.drawn === drawn)?.knitted ?? drawn;
}

/** Palette indices of the yarns that the figures of a pattern are drawn in. */
export function drawnYarns(project: ProjectAt, pattern: Pattern): number[] {
  const motifs = new Set(copiesOf(pattern).map(({ motif }) => motif));
  const used = [...motifs].flatMap((id) => yarnsUsed(motifOf(project, id).grid, project.mainYarn));
  return [...new Set(used)].filter((yarn) => yarn !== project.mainYarn).sort((a, b) => a - b);
}

/** One copy of the first motif of a pattern as it is drawn: what the order is shown on. */
export function shownCopy(project: ProjectAt, pattern: Pattern): Grid {
  const [first] = copiesOf(pattern);
  const { grid } = motifOf(project, (first as NonNullable<typeof first>).motif);
  if (pattern.unit === 'whole') return grid;
  const repeat = trueRepeat(grid);
  return crop(grid, 0, 0, repeat.width, pattern.kind === 'band' ? grid.height : repeat.height);
}
