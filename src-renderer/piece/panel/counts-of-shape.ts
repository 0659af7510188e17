/** The numbers that a shape is made of, in the order of the form. */
import type { Shape } from '@shared/piece/index.ts';

export const KINDS = ['rectangle', 'tapered', 'body', 'steps'] as const satisfies readonly Shape['kind'][];

export type CountName =
  | 'stitches'
  | 'castOn'
  | 'atTop'
  | 'atWaist'
  | 'atChest'
  | 'rowsToWaist'
  | 'rowsToChest'
  | 'rows'
  | 'rowsInAll'
  | 'straightRows';

export interface ShapeCount {
  readonly name: CountName;
  readonly of: 'stitches' | 'rows';
  readonly value: number;
  readonly least: number;
  /** The shape with another number here. */
  readonly changed: (to: number) => Shape;
}

/** From the cast-on up, as far as a form reads well: stitches first where they belong to no row. */
export function countsOf(shape: Shape): readonly ShapeCount[] {
  const stitches = (name: CountName, value: number, changed: (to: number) => Shape): ShapeCount => {
    return { name, of: 'stitches', value, least: 1, changed };
  };
  const rows = (name: CountName, value: number, least: number, changed: (to: number) => Shape): ShapeCount => {
    return { name, of: 'rows', value, least, changed };
  };
  const castOn = stitches(shape.kind === 'rectangle' ? 'stitches' : 'castOn', shape.stitches, (to) => {
    return { ...shape, stitches: to };
  });
  const inAll = rows(shape.kind === 'body' ? 'rowsInAll' : 'rows', shape.rows, 1, (to) => ({ ...shape, rows: to }));
  switch (shape.kind) {
    case 'rectangle':
    case 'steps':
      return [castOn, inAll];
    case 'tapered':
      return [
        castOn,
        stitches('atTop', shape.stitchesAtTop, (to) => ({ ...shape, stitchesAtTop: to })),
        inAll,
        rows('straightRows', shape.straightRows, 0, (to) => ({ ...shape, straightRows: to })),
      ];
    case 'body':
      return [
        castOn,
        rows('rowsToWaist', shape.rowsToWaist, 0, (to) => ({ ...shape, rowsToWaist: to })),
        stitches('atWaist', shape.stitchesAtWaist, (to) => ({ ...shape, stitchesAtWaist: to })),
        rows('rowsToChest', shape.rowsToChest, 0, (to) => ({ ...shape, rowsToChest: to })),
        stitches('atChest', shape.stitchesAtChest, (to) => ({ ...shape, stitchesAtChest: to })),
        inAll,
      ];
  }
}
