/** The numbers that a shape is made of, in the order of the form. */
import { LEAST_STRAIGHT_ROWS, type Gauges, type OddDifference, type Shape } from '@shared/piece/index.ts';
import { scaleDown, scaleUp, stitchScale, type Scale } from './scales.ts';

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

/** The count in which a width is given. */
export const NAMED_AT: { readonly [At in OddDifference['at']]: CountName } = {
  top: 'atTop',
  waist: 'atWaist',
  chest: 'atChest',
};

export interface ShapeCount {
  readonly name: CountName;
  readonly of: 'stitches' | 'rows';
  readonly value: number;
  readonly least: number;
  /** The shape with another number here. */
  readonly changed: (to: number) => Shape;
  /** How long it is, on the rows where it lies. */
  readonly scaleOf: (gauges: Gauges) => Scale;
}

/** From the cast-on up, as far as a form reads well: stitches first where they belong to no row. */
export function countsOf(shape: Shape): readonly ShapeCount[] {
  const stitches = (name: CountName, value: number, row: number, changed: (to: number) => Shape): ShapeCount => {
    return { name, of: 'stitches', value, least: 1, changed, scaleOf: (gauges) => stitchScale(gauges, row) };
  };
  const rows = (
    name: CountName,
    value: number,
    least: number,
    changed: (to: number) => Shape,
    scaleOf: ShapeCount['scaleOf'] = (gauges) => scaleUp(gauges, 1),
  ): ShapeCount => {
    return { name, of: 'rows', value, least, changed, scaleOf };
  };
  const castOn = stitches(shape.kind === 'rectangle' ? 'stitches' : 'castOn', shape.stitches, 1, (to) => {
    return { ...shape, stitches: to };
  });
  const inAll = rows(shape.kind === 'body' ? 'rowsInAll' : 'rows', shape.rows, 1, (to) => ({ ...shape, rows: to }));
  switch (shape.kind) {
    case 'rectangle':
    case 'steps':
      return [castOn, inAll];
    case 'tapered': {
      const fromTop = (gauges: Gauges): Scale => scaleDown(gauges, shape.rows);
      return [
        castOn,
        stitches('atTop', shape.stitchesAtTop, shape.rows, (to) => ({ ...shape, stitchesAtTop: to })),
        inAll,
        rows(
          'straightRows',
          Math.max(LEAST_STRAIGHT_ROWS, shape.straightRows),
          LEAST_STRAIGHT_ROWS,
          (to) => ({ ...shape, straightRows: to }),
          fromTop,
        ),
      ];
    }
    case 'body': {
      const { rowsToWaist, rowsToChest } = shape;
      const fromWaist = (gauges: Gauges): Scale => scaleUp(gauges, rowsToWaist + 1);
      return [
        castOn,
        rows('rowsToWaist', rowsToWaist, 0, (to) => ({ ...shape, rowsToWaist: to })),
        stitches('atWaist', shape.stitchesAtWaist, rowsToWaist, (to) => ({ ...shape, stitchesAtWaist: to })),
        rows('rowsToChest', rowsToChest, 0, (to) => ({ ...shape, rowsToChest: to }), fromWaist),
        stitches('atChest', shape.stitchesAtChest, rowsToWaist + rowsToChest, (to) => {
          return { ...shape, stitchesAtChest: to };
        }),
        inAll,
      ];
    }
  }
}
