/** What the numbers of a project are called in its forms, and the units behind them. */
import type { NumberField, NumberFieldName } from '../../project/index.ts';
import { allOver } from './all-over.ts';
import { making } from './making.ts';
import { motif } from './motif.ts';
import { piece } from './piece.ts';
import { pieces } from './pieces.ts';
import { placement } from './placement.ts';
import { sections } from './sections.ts';
import { underlay } from './underlay.ts';

/** A function where there are several of a kind, or where it depends on the unit of lengths. */
type Label = string | ((of: never, unit: never) => string);

const ofOutline = (count: keyof typeof piece.form.counts): string => piece.form.counts[count];

export const numberFields = {
  yarnMargin: 'Margin of yarn',
  knit: pieces.knitHowMany,
  stitches: ofOutline,
  rows: ofOutline,
  shapedRows: ofOutline,
  hemRows: piece.form.hem,
  sectionRows: sections.form.rows,
  seamAllowance: piece.form.seam,
  gaugeStitches: piece.form.gauge,
  gaugeRows: piece.form.gauge,
  floatStitches: piece.form.floatStitches,
  floatLength: piece.form.floatMm,
  bedNeedles: making.machine.bedNeedles,
  offset: piece.form.offset,
  machineRepeat: making.machine.repeat,
  rowsBetween: sections.position.rowsBetween,
  bandFirstRow: sections.position.firstRow,
  ruleStitches: (rule: keyof typeof placement.stitches): string => placement.stitches[rule],
  anchorsLongest: piece.form.anchorsLongest,
  copiesAcross: piece.form.copies,
  singleMotifs: piece.form.singles,
  copiesUp: piece.form.copiesUp,
  stripeRows: sections.form.rows,
  rise: piece.form.rise,
  allOverStartDistance: allOver.form.rowsBelow,
  allOverEndDistance: allOver.form.rowsAbove,
  allOverFirstRow: allOver.form.firstRow,
  allOverLastRow: allOver.form.lastRow,
  allOverHeight: allOver.form.rows,
  allOverBorder: allOver.form.border,
  allOverShift: allOver.form.shift,
  allOverStep: allOver.form.step,
  motifColumns: motif.size.columns,
  motifRows: motif.size.rows,
  underlayTurn: underlay.turn,
  underlayColumns: underlay.columns,
  underlayRows: underlay.rows,
  underlayLeft: underlay.left,
  underlayBottom: underlay.bottom,
  underlayStrength: underlay.strength,
} satisfies { readonly [Name in NumberFieldName]: Label };

export const numberUnits: { readonly [Unit in NonNullable<NumberField['unit']>]: string } = {
  stitches: 'st',
  percent: '%',
  degrees: '°',
};
