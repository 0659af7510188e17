/**
 * The numbers of a project that a person gives: what each may be, how it is
 * stepped, and what the step of undo is called that changes it.
 *
 * Bounds are those of the schemas, by their constants; forms and the command
 * line read them here, and what a field is called is in `words/en/number-fields.ts`.
 */
import { MOST_FIXED_REPEAT, MOST_STITCHES } from '../bed/index.ts';
import { MOST_COLUMNS, MOST_ROWS } from '../grid/index.ts';
import { FARTHEST_UNDERLAY, LEAST_OPACITY, MOST_TURN } from '../motif/index.ts';
import { MOST_GROUPS } from '../pattern/index.ts';
import { GAUGE_BOUNDS, MOST_FLOAT_MM, MOST_PIECE_ROWS, MOST_SEAM_STITCHES, type ShapeCount } from '../piece/index.ts';
import type { ChangeName } from './change.ts';
import { MOST_KNIT, MOST_YARN_MARGIN } from './model.ts';

export interface NumberField {
  readonly least: number;
  readonly most: number;
  /** Step of the arrow keys, where it is not 1; only whole numbers are taken where it is whole. */
  readonly step?: number;
  /** 0 is taken too, for what is not known or does not count; the project has null then. */
  readonly orNone?: true;
  /** What it counts, where that stands behind the number. */
  readonly unit?: 'stitches' | 'percent' | 'degrees';
  readonly change: ChangeName;
}

export const numberFields = {
  /** In percent. */
  yarnMargin: { least: 0, most: MOST_YARN_MARGIN, unit: 'percent', change: 'yarn-margin' },
  /** Of the piece. */
  knit: { least: 1, most: MOST_KNIT, change: 'knit-times' },
  stitches: { least: 1, most: MOST_STITCHES, change: 'piece-size' },
  rows: { least: 1, most: MOST_PIECE_ROWS, change: 'piece-size' },
  /** Rows of a part of the outline, which may have none. */
  shapedRows: { least: 0, most: MOST_PIECE_ROWS, change: 'piece-size' },
  hemRows: { least: 0, most: MOST_PIECE_ROWS, change: 'piece-hem' },
  sectionRows: { least: 1, most: MOST_PIECE_ROWS, change: 'section-rows' },
  seamAllowance: { least: 0, most: MOST_SEAM_STITCHES, change: 'seam-allowance' },
  /** In 10 cm. */
  gaugeStitches: { ...GAUGE_BOUNDS.stitches, step: 0.5, change: 'gauge' },
  gaugeRows: { ...GAUGE_BOUNDS.rows, step: 0.5, change: 'gauge' },
  floatStitches: { least: 0, most: MOST_STITCHES, unit: 'stitches', change: 'float-limit' },
  /** In mm. */
  floatLength: { least: 0, most: MOST_FLOAT_MM, orNone: true, change: 'float-limit' },
  offset: { least: -MOST_STITCHES, most: MOST_STITCHES, change: 'piece-details' },
  bedNeedles: { least: 1, most: MOST_STITCHES, orNone: true, change: 'machine' },
  machineRepeat: { least: 1, most: MOST_FIXED_REPEAT, change: 'machine' },

  /** Of a pattern band. */
  rowsBetween: { least: 0, most: MOST_PIECE_ROWS, change: 'first-row' },
  bandFirstRow: { least: 1, most: MOST_PIECE_ROWS, change: 'first-row' },
  ruleStitches: { least: 0, most: MOST_STITCHES, unit: 'stitches', change: 'rule' },
  /** 0: floats stay as they are. */
  anchorsLongest: { least: 1, most: MOST_STITCHES, orNone: true, unit: 'stitches', change: 'anchors' },
  copiesAcross: { least: 1, most: MOST_STITCHES, change: 'copies' },
  /** Groups of one copy each. */
  singleMotifs: { least: 1, most: MOST_GROUPS, change: 'copies' },
  copiesUp: { least: 1, most: MOST_PIECE_ROWS, change: 'copies' },
  rise: { least: 0, most: MOST_PIECE_ROWS, change: 'raise-group' },

  /** Of a stripe of an order of colours. */
  stripeRows: { least: 1, most: MOST_PIECE_ROWS, change: 'colour-order' },

  /** Of an all-over. */
  allOverStartDistance: { least: 0, most: MOST_PIECE_ROWS, change: 'all-over-rows' },
  allOverEndDistance: { least: 0, most: MOST_PIECE_ROWS, change: 'all-over-rows' },
  allOverFirstRow: { least: 1, most: MOST_PIECE_ROWS, change: 'all-over-rows' },
  allOverLastRow: { least: 1, most: MOST_PIECE_ROWS, change: 'all-over-rows' },
  allOverHeight: { least: 1, most: MOST_PIECE_ROWS, change: 'all-over-rows' },
  allOverBorder: { least: 0, most: MOST_STITCHES, unit: 'stitches', change: 'all-over-border' },
  allOverShift: { least: -MOST_STITCHES, most: MOST_STITCHES, unit: 'stitches', change: 'all-over-lie' },
  allOverStep: { least: -MOST_STITCHES, most: MOST_STITCHES, unit: 'stitches', change: 'all-over-lie' },

  /** Of a motif, and of the picture behind it. */
  motifColumns: { least: 1, most: MOST_COLUMNS, change: 'resize-motif' },
  motifRows: { least: 1, most: MOST_ROWS, change: 'resize-motif' },
  underlayTurn: { least: -MOST_TURN, most: MOST_TURN, step: 0.5, unit: 'degrees', change: 'turn-underlay' },
  underlayColumns: { least: 1, most: FARTHEST_UNDERLAY, step: 0.1, change: 'scale-underlay' },
  underlayRows: { least: 1, most: FARTHEST_UNDERLAY, step: 0.1, change: 'scale-underlay' },
  underlayLeft: { least: -FARTHEST_UNDERLAY, most: FARTHEST_UNDERLAY, step: 0.1, change: 'move-underlay' },
  underlayBottom: { least: -FARTHEST_UNDERLAY, most: FARTHEST_UNDERLAY, step: 0.1, change: 'move-underlay' },
  /** In percent of what a file has. */
  underlayStrength: { least: 100 * LEAST_OPACITY, most: 100, step: 5, unit: 'percent', change: 'underlay-strength' },
} as const satisfies { readonly [Name in string]: NumberField };

export type NumberFieldName = keyof typeof numberFields;

/** What a field takes: its bounds, and 0 where that stands for none. */
export function boundsOf(name: NumberFieldName): { readonly least: number; readonly most: number } {
  const { least, most, orNone }: NumberField = numberFields[name];
  return { least: orNone ? 0 : least, most };
}

/** What a count of a shape takes: as much as its field, and no less than its shape needs. */
export function boundsOfCount({ of, least }: Pick<ShapeCount, 'of' | 'least'>): ReturnType<typeof boundsOf> {
  return { least, most: boundsOf(of).most };
}
