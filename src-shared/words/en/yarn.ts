/** The count of a yarn, what is there of it, and the length of yarn in a stitch. */
import { toUnit, toWeight, toYarnUnit, type LengthUnit } from '../../length/index.ts';
import type { LoopSource } from '../../piece/index.ts';
import type { OnHand, YarnCount } from '../../project/index.ts';
import type { GarmentYarn, PatternGauge, RowOfPiece } from '../../plan/index.ts';
import type { Finishing, LoopsFrom } from '../../yarn/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

const SYSTEMS: { readonly [System in YarnCount['system'] | 'unknown']: string } = {
  unknown: 'not known',
  ball: 'length of a ball',
  tex: 'tex',
  metric: 'Nm',
  cotton: 'Ne (cotton)',
  worsted: 'worsted',
  denier: 'denier',
};

const STATES: { readonly [State in Extract<LoopSource, { from: 'gauge' }>['state']]: string } = {
  'dry-relaxed': 'dry, at rest',
  'wet-relaxed': 'wetted and dried',
  'fully-relaxed': 'washed and tumbled',
};

const length = (mm: number, unit: LengthUnit): string =>
  `${n.plain(toYarnUnit(mm, unit), mm < 100_000 ? 1 : 0)} ${unit === 'cm' ? 'm' : 'yd'}`;

/** `18 g`, `0.6 oz`. */
const weight = (grams: number, unit: LengthUnit): string =>
  `${n.plain(toWeight(grams, unit), unit === 'in' || grams < 10 ? 1 : 0)} ${unit === 'cm' ? 'g' : 'oz'}`;

/** `310 m to 350 m`; one of them where both are said alike. */
const between = (least: string, most: string): string => (least === most ? least : `${least} to ${most}`);

/** `row 84 of sleeve`, `row 84 of sleeve, number 2 of 2`. */
const rowOf = ({ name, number, knit, row }: RowOfPiece): string =>
  `row ${row} of ${name}${knit > 1 ? `, number ${number} of ${knit}` : ''}`;

export const yarn = {
  /** Of the label. */
  count: {
    system: 'Count on the label',
    systems: SYSTEMS,
    inBall: { cm: 'Metres in a ball', in: 'Yards in a ball' },
    ballGrams: 'A ball weighs',
    value: (system: Exclude<YarnCount['system'], 'ball'>): string => `Count in ${SYSTEMS[system]}`,
    valueHint: 'of one ply; empty if not known',
    inBallHint: 'empty if not known',
    plies: 'Plies',
    /** `285.7 tex: 175 m in 50 g.` */
    comesTo: (tex: number, ballGrams: number, unit: LengthUnit): string =>
      `${n.plain(tex, 1)} tex: ${length((ballGrams * 1e6) / tex, unit)} in ${n.plain(ballGrams, 1)} g.`,
    unknown: 'Until its count is known, only its length is told.',
  },
  onHand: {
    amount: (of: OnHand['in'], unit: LengthUnit): string =>
      of === 'balls' ? 'On hand, balls' : unit === 'cm' ? 'On hand, grams' : 'On hand, ounces',
    hint: 'empty if not weighed',
    in: 'On hand in',
    ins: { grams: 'weight', balls: 'balls' } satisfies { readonly [In in OnHand['in']]: string },
    ballUnknown: 'How much a ball weighs is not known: give the length of a ball, or the weight on hand.',
  },

  /** Of one stitch. */
  loop: {
    title: 'Yarn in a stitch',
    from: 'It is known',
    froms: {
      gauge: 'from the gauge',
      machine: 'from a gauge on the machine',
      unravelled: 'from stitches unravelled',
      weighed: 'from a weighed swatch',
    } satisfies { readonly [From in LoopSource['from']]: string },
    state: 'The gauge was counted on fabric',
    states: STATES,
    width: 'Width at rest ÷ on the machine',
    length: 'Length at rest ÷ on the machine',
    ratioHint: 'as you measured your own fabric',
    stitches: { unravelled: 'Stitches unravelled', weighed: 'Stitches of the swatch' },
    unravelled: { cm: 'Their yarn, cm', in: 'Their yarn, in' },
    unravelledHint: 'pulled straight, not stretched',
    rows: 'Rows of the swatch',
    grams: { cm: 'It weighs, g', in: 'It weighs, oz' },
    gramsHint: 'plain, in the main yarn',
    /** `13.0 mm of yarn in a stitch, 11.7–14.4 mm.` */
    comesTo(mm: number, share: number, unit: LengthUnit): string {
      const said = (value: number): string =>
        n.plain(unit === 'cm' ? value : toUnit(value, unit), unit === 'cm' ? 1 : 2);
      return `${said(mm)} ${unit === 'cm' ? 'mm' : 'in'} of yarn in a stitch; it may be ${said(mm * (1 - share))} to ${said(mm * (1 + share))}.`;
    },
    narrower: 'A swatch, unravelled or weighed, narrows this.',
    largerSwatch: 'A larger swatch narrows this.',
    unweighed: 'A weighed swatch tells a length only with the count of the main yarn. Until then the gauge is used.',
    /** Where swatch and gauge contradict each other. */
    off: (share: number): string =>
      `That is ${n.percent(Math.abs(share))} ${share > 0 ? 'more' : 'less'} than the gauge gives. Check the swatch and the gauge.`,
  },

  /** Where lengths come from, in a few words. */
  source(from: LoopsFrom): string {
    switch (from) {
      case 'gauge':
      case 'unweighed':
        return 'from the gauge';
      case 'machine':
        return 'from the gauge on the machine';
      case 'unravelled':
        return 'from unravelled stitches';
      case 'weighed':
        return 'from a weighed swatch';
    }
  },
  weight,
  length,

  /** By how much the amount of a yarn may be off: `310 m to 350 m` */
  range: ({ least, most }: Pick<GarmentYarn, 'least' | 'most'>, unit: LengthUnit): string => {
    const metres = between(length(least.mm, unit), length(most.mm, unit));
    const grams =
      least.grams === null || most.grams === null
        ? ''
        : `, ${between(weight(least.grams, unit), weight(most.grams, unit))}`;
    return `${metres}${grams}`;
  },
  /** `slate: 310 m to 350 m. On hand 18 g: runs out in row 84 of sleeve (the second).` */
  told(name: string, of: GarmentYarn, unit: LengthUnit): string {
    const { onHand } = of;
    const range = `${name}: all in all ${yarn.range(of, unit)}.`;
    if (onHand === null) return range;
    const there = `On hand ${weight(onHand.grams, unit)}`;
    if (onHand.mm === null) return `${range} ${there}; how far it goes is not known without the count of the yarn.`;
    const { runsOut, earliest } = onHand;
    if (runsOut) {
      const missing = runsOut.missing.grams ?? 0;
      const sooner = earliest && rowOf(earliest) !== rowOf(runsOut.at) ? `, at the earliest in ${rowOf(earliest)}` : '';
      return `${range} ${there}: runs out in ${rowOf(runsOut.at)}${sooner}. ${weight(missing, unit)} more ${unit === 'cm' ? 'are' : 'is'} needed.`;
    }
    if (earliest) return `${range} ${there}: enough, but it may run out in ${rowOf(earliest)}.`;
    return `${range} ${there}: enough.`;
  },
  /** What main is left long for, beside its stitches. */
  finishing({ castOff, sewing }: Finishing, unit: LengthUnit): string[] {
    const span = (mm: { readonly least: number; readonly most: number }): string =>
      `${lengths.cut(mm.least, unit)} to ${lengths.cut(mm.most, unit)}`;
    return [
      ...(castOff ? [`Casting off takes ${span(castOff.mm)}: 3 to 4 times the width.`] : []),
      ...(sewing ? [`Sewing up takes ${span(sewing.mm)}: 1½ to 2 times the seam. Leave it as a tail.`] : []),
    ];
  },

  /** The second swatch of a pattern, and what its gauge does to the width. */
  patternGauge({ pattern, row, stitches, widthMm, plainMm, isOwn }: PatternGauge, unit: LengthUnit): string {
    const which = `${pattern.kind === 'band' ? 'Pattern band' : 'All-over'} ${pattern.number + 1}`;
    if (!isOwn)
      return `${which} is reckoned at the gauge of plain fabric. At the same tension two-colour fabric comes out narrower, with squarer stitches. Knit a second swatch in the pattern, and give its rows a section with a gauge of its own.`;
    const by = Math.abs(plainMm - widthMm);
    const cm = (mm: number): string => `${n.plain(toUnit(mm, unit), 1)} ${unit}`;
    const other =
      by < 0.5 ? 'as wide as plain fabric' : `${cm(by)} ${widthMm < plainMm ? 'narrower' : 'wider'} than plain fabric`;
    return `${which}: the ${n.stitches(stitches)} of row ${row} are ${cm(widthMm)} wide at the gauge of their section, ${other} (${cm(plainMm)}).`;
  },
};
