/**
 * Another palette: yarns that come, go or stand elsewhere, in every colourway,
 * and in the orders of colours that name them.
 */
import type { ColourOrder } from '../pattern/index.ts';
import type { Edit, SetFields } from './edit.ts';
import { setProject } from './edit-makers.ts';
import type { Project } from './model.ts';
import type { Yarn } from './yarn-model.ts';

/**
 * Edits that make these the yarns of the project and `mainYarn` their main
 * yarn. A yarn that was there is the same object and keeps what it is in each
 * colourway; a new one is the same in all of them. Orders of colours follow
 * their yarns; what named one that is gone, or is the main yarn now, goes. The
 * cells of the motifs are not painted here.
 */
export function setPalette(project: Project, yarns: readonly Yarn[], mainYarn: number): [Edit, ...Edit[]] {
  const before = placesBefore(project.yarns, yarns);
  const colourways = project.colourways.map((colourway) =>
    colourway.yarns === null
      ? colourway
      : { ...colourway, yarns: yarns.map((yarn, at) => colourway.yarns?.[before[at] ?? -1] ?? yarn) },
  );
  const isSame = before.length === project.yarns.length && before.every((from, at) => from === at);
  const hasOthers = project.colourways.some((colourway) => colourway.yarns !== null);
  const after = new Map(before.flatMap((from, at) => (from === null ? [] : [[from, at] as const])));
  return [
    setProject({
      ...(!isSame && { yarns }),
      ...(!isSame && hasOthers && { colourways }),
      ...(mainYarn !== project.mainYarn && { mainYarn }),
    }),
    ...ordersAfter(project, (yarn) => {
      const at = after.get(yarn);
      return at === mainYarn ? undefined : at;
    }),
  ];
}

/** For each yarn of `now` where it stood; null for one that is new. Of one that stands twice, each stands where it did. */
function placesBefore(before: readonly Yarn[], now: readonly Yarn[]): (number | null)[] {
  return now.map((yarn, at) => {
    const from = before[at] === yarn ? at : before.indexOf(yarn);
    return from < 0 ? null : from;
  });
}

/** Edits of the patterns whose order of colours names yarns otherwise; `after`: where a yarn stands then. */
function ordersAfter({ pieces }: Project, after: (yarn: number) => number | undefined): SetFields[] {
  return pieces.flatMap(({ id: piece, patterns }) =>
    patterns.flatMap(({ id: pattern, kind, colourOrder }): SetFields[] => {
      if (!colourOrder) return [];
      const colours = orderAfter(colourOrder, after);
      if (JSON.stringify(colours) === JSON.stringify(colourOrder)) return [];
      return [{ kind: 'set', of: kind, piece, pattern, to: { colourOrder: colours } }];
    }),
  );
}

function orderAfter(order: ColourOrder, after: (yarn: number) => number | undefined): ColourOrder {
  const stripes = order.stripes.map(({ rows, yarns }) => ({
    rows,
    yarns: yarns.flatMap((one) => {
      const [drawn, knitted] = [after(one.drawn), after(one.knitted)];
      return drawn === undefined || knitted === undefined ? [] : [{ drawn, knitted }];
    }),
  }));
  return { ...order, stripes };
}

/** Palette indices of the yarns that orders of colours knit for others. */
export function yarnsInOrders({ pieces }: Pick<Project, 'pieces'>): ReadonlySet<number> {
  return new Set(
    pieces.flatMap(({ patterns }) =>
      patterns.flatMap(({ colourOrder }) =>
        (colourOrder?.stripes ?? []).flatMap(({ yarns }) => yarns.map(({ knitted }) => knitted)),
      ),
    ),
  );
}
