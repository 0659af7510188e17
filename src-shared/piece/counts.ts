/** The numbers that a shape is made of, in the order of the form. */
import { LEAST_STRAIGHT_ROWS } from './even-shaping.ts';
import type { Gauges } from './gauges.ts';
import type { Lengths, Shape } from './shape-model.ts';
import type { OddDifference } from './odd-difference.ts';
import { scaleDown, scaleUp, stitchScale, type Scale } from './scales.ts';

export const SHAPE_KINDS = ['rectangle', 'tapered', 'body', 'steps'] as const satisfies readonly Shape['kind'][];

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
  /** The field of the shape that has it. */
  readonly field: Exclude<keyof Lengths, 'hemRows'>;
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
  type Asked = [name: CountName, field: ShapeCount['field'], value: number];
  const stitches = (...[name, field, value, row, changed]: [...Asked, row: number, ShapeCount['changed']]) => {
    const scaleOf = (gauges: Gauges): Scale => stitchScale(gauges, row);
    return { name, field, of: 'stitches' as const, value, least: 1, changed, scaleOf };
  };
  const fromCastOn = (gauges: Gauges): Scale => scaleUp(gauges, 1);
  const rows = (
    ...[name, field, value, least, changed, scaleOf = fromCastOn]: [
      ...Asked,
      least: number,
      ShapeCount['changed'],
      ShapeCount['scaleOf']?,
    ]
  ) => ({ name, field, of: 'rows' as const, value, least, changed, scaleOf });
  const castOn = stitches(shape.kind === 'rectangle' ? 'stitches' : 'castOn', 'stitches', shape.stitches, 1, (to) => {
    return { ...shape, stitches: to };
  });
  const inAll = rows(shape.kind === 'body' ? 'rowsInAll' : 'rows', 'rows', shape.rows, 1, (to) => ({
    ...shape,
    rows: to,
  }));
  switch (shape.kind) {
    case 'rectangle':
    case 'steps':
      return [castOn, inAll];
    case 'tapered': {
      const fromTop = (gauges: Gauges): Scale => scaleDown(gauges, shape.rows);
      return [
        castOn,
        stitches('atTop', 'stitchesAtTop', shape.stitchesAtTop, shape.rows, (to) => ({ ...shape, stitchesAtTop: to })),
        inAll,
        rows(
          'straightRows',
          'straightRows',
          Math.max(LEAST_STRAIGHT_ROWS, shape.straightRows),
          LEAST_STRAIGHT_ROWS,
          (to) => ({ ...shape, straightRows: to }),
          fromTop,
        ),
      ];
    }
    case 'body': {
      const { rowsToWaist, rowsToChest, stitchesAtWaist, stitchesAtChest } = shape;
      const fromWaist = (gauges: Gauges): Scale => scaleUp(gauges, rowsToWaist + 1);
      return [
        castOn,
        rows('rowsToWaist', 'rowsToWaist', rowsToWaist, 0, (to) => ({ ...shape, rowsToWaist: to })),
        stitches('atWaist', 'stitchesAtWaist', stitchesAtWaist, rowsToWaist, (to) => {
          return { ...shape, stitchesAtWaist: to };
        }),
        rows('rowsToChest', 'rowsToChest', rowsToChest, 0, (to) => ({ ...shape, rowsToChest: to }), fromWaist),
        stitches('atChest', 'stitchesAtChest', stitchesAtChest, rowsToWaist + rowsToChest, (to) => {
          return { ...shape, stitchesAtChest: to };
        }),
        inAll,
      ];
    }
  }
}
