/** Yarn to wind into balls and strands to cut, before the knitting begins. */
import { toUnit, toWeight, toYarnUnit, type LengthUnit } from '../../length/index.ts';
import type { BallToWind, StrandsToCut } from '../../plan/index.ts';
import { capitalised } from '../marked.ts';
import type { YarnNeed } from '../../yarn/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';
import { yarn as yarnWords } from './yarn.ts';

export const winding = {
  yarn: {
    title: 'Yarn to wind',
    columns: {
      yarn: 'Yarn',
      ball: 'Ball',
      use: 'For',
      length: { cm: 'Metres', in: 'Yards' },
      weight: { cm: 'Grams', in: 'Ounces' },
      margin: (share: number, unit: LengthUnit): string =>
        `${unit === 'cm' ? 'Metres' : 'Yards'} + ${n.percent(share)}`,
    },
    named: (name: string, role: 'main' | 'contrast'): string => `${name}, ${role}`,
    /** Of a yarn in several balls, below them. */
    all: (name: string, balls: number): string => `${name}, all ${n.count(balls, 'ball')}`,
    /** `Group 2, rows 36–66`; of a ball beside those of groups, `Other groups, rows 25–42`. */
    use({ role, group, firstRow, lastRow }: BallToWind, isBesideOthers: boolean): string {
      const whose = group !== null ? `group ${group + 1}, ` : isBesideOthers && role === 'contrast' ? 'all else, ' : '';
      return capitalised(`${whose}${n.rowSpan(firstRow, lastRow)}`);
    },
    length: (mm: number, unit: LengthUnit): string => n.plain(toYarnUnit(mm, unit), mm < 100_000 ? 1 : 0),
    weight: (grams: number | null, unit: LengthUnit): string =>
      grams === null ? '–' : n.plain(toWeight(grams, unit), unit === 'in' || grams < 10 ? 1 : 0),
    /** `loopsMm`: by the gauges from the bottom up. */
    note: (loopsMm: readonly number[], { from, share }: Pick<YarnNeed, 'from' | 'share'>, unit: LengthUnit): string =>
      `Worked out ${yarnWords.source(from)}, ${n.list(loopsMm.map((mm) => (unit === 'cm' ? n.plain(mm, 1) : n.plain(toUnit(mm, unit), 2))))} ${unit === 'cm' ? 'mm' : 'in'} of yarn per stitch, ${n.percent(share)} more or less${from === 'unravelled' || from === 'weighed' ? '' : '; measuring a swatch is more accurate'}.`,
    laid: 'Balls with a number are laid by hand, as the steps say.',
    /** Where some of them are threaded alone. */
    numbered: 'Balls with a number are laid by hand or threaded, as the steps say.',
  },

  strands: {
    title: (yarn: string): string => `Strands of ${yarn} to cut for wrapping`,
    columns: { strands: 'Strand', cut: 'Cut', use: 'For', rows: 'Rows', wraps: 'Wraps' },
    numbers: (numbers: readonly number[]): string => n.spans(numbers),
    /** `2 of 65 cm`: rounded up to a whole cm or inch, never short. */
    cut: (count: number, mm: number, unit: LengthUnit): string => `${count} of ${lengths.cut(mm, unit)}`,
    /** `Left edge of groups 1–3 and 5`. */
    use({ edge, groups }: Pick<StrandsToCut, 'edge' | 'groups'>): string {
      const whose =
        groups.length === 0
          ? 'the figure'
          : `${groups.length === 1 ? 'group' : 'groups'} ${n.spans(groups.map((group) => group + 1))}`;
      return edge === 'both' ? `Both edges of ${whose}, folded in two` : capitalised(`${edge} edge of ${whose}`);
    },
    note: 'Loop the strand over the needle, on the carriage side, and push the needle back before the carriage moves.',
  },
};
