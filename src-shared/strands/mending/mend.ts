/** What is done about floats over the limit: hooked up, or latched up, where a pattern asks for it. */
import type { Run, Slot } from '../../bed/index.ts';
import { OUTSIDE, type Fabric } from '../../fabric/index.ts';
import type { FloatMending } from '../../pattern/index.ts';
import type { FloatLimit, Gauges } from '../../piece/index.ts';
import type { LaidRow } from '../floats.ts';
import { longestBetween } from '../limit.ts';
import type { Float } from '../types.ts';
import { chainsOf, type Chain, type ChainRow } from './chains.ts';
import { longestLoose } from './held.ts';
import { liftFloats, type Lift, type LiftRow } from './lifts.ts';

export interface MendingRules {
  readonly gauges: Gauges;
  readonly floatLimit: FloatLimit;
  /** What is done on a row (1-based); null: nothing on any. */
  readonly mendingOf: ((row: number) => FloatMending) | null;
}

export interface Mended<Row> {
  /** With what holds each float, and without those that are over the limit no more. */
  readonly rows: readonly Row[];
  /** By the row after which it is done, from left to right: index 0 is row 1; undefined where nothing is. */
  readonly lifts: readonly (readonly Lift[] | undefined)[];
  readonly chains: readonly (readonly Chain[] | undefined)[];
}

type MendedRow = Pick<LaidRow, 'edges' | 'floats' | 'isOver'>;

/** Hooks and latches up the floats of `rows` (index 0 is row 1) that are over the limit, as far as that brings them within it. */
export function mendFloats<Row extends MendedRow>(
  rows: readonly Row[],
  fabric: Fabric,
  rules: MendingRules,
): Mended<Row> {
  const { mendingOf } = rules;
  const lifts = new Array<Lift[] | undefined>(rows.length);
  const chains = new Array<Chain[] | undefined>(rows.length);
  if (!mendingOf) return { rows, lifts, chains };
  const wishes = rows.map(({ isOver }, index) => (isOver ? mendingOf(index + 1) : 'left'));
  if (wishes.every((wish) => wish === 'left')) return { rows, lifts, chains };
  /** Needles at which floats are held, by row. */
  const held = rows.map(
    (): { readonly strand: Float['strand']; readonly needle: Slot; readonly of: Float | null }[] => [],
  );
  for (const chain of chainsIn(rows, fabric, rules, mendingOf)) {
    (chains[chain.lastRow - 1] ??= []).push(chain);
    for (let row = chain.firstRow; row <= chain.lastRow; row++) held[row - 1]?.push({ ...chain, of: null });
  }
  const hung = chains.map((of) => new Set(of?.map(({ needle }) => needle)));
  const toLift = rows.map((row, index): LiftRow | undefined => {
    if (wishes[index] !== 'hooked-up') return undefined;
    const [longest, next] = [longestOn(rules, index + 1), rows[index + 1]];
    return {
      floats: row.floats.filter(({ isOver }) => isOver),
      longest,
      above: next ? shared(row.edges, next.edges) : null,
      yarnAbove: yarnOn(fabric, index + 2),
      taken: hung[index],
    };
  });
  liftFloats(toLift).forEach((lifted, index) => {
    for (const { float, needles } of lifted ?? []) {
      for (const needle of needles ?? []) {
        const { strand, first, last } = float;
        const isHidden = toLift[index]?.yarnAbove(needle) === strand.yarn;
        (lifts[index] ??= []).push({ needle, strand, float: { first, last }, isHidden });
        held[index]?.push({ strand, needle, of: float });
      }
    }
    lifts[index]?.sort((a, b) => a.needle - b.needle);
  });
  return {
    lifts,
    chains,
    rows: rows.map((row, index) => {
      const holds = held[index] ?? [];
      if (holds.length === 0) return row;
      const longest = longestOn(rules, index + 1);
      const floats = row.floats.map((float) => {
        const needles = holds
          .filter(({ strand, needle, of }) =>
            of ? of === float : strand === float.strand && needle >= float.first && needle <= float.last,
          )
          .map(({ needle }) => needle)
          .sort((a, b) => a - b);
        return needles.length === 0
          ? float
          : { ...float, held: needles, isOver: longestLoose(float.first, float.last, needles) > longest };
      });
      return { ...row, floats, isOver: floats.some(({ isOver }) => isOver) };
    }),
  };
}

/** The chains of each stretch of neighbouring rows whose floats are latched up. */
function chainsIn(
  rows: readonly MendedRow[],
  fabric: Fabric,
  rules: MendingRules,
  mendingOf: (row: number) => FloatMending,
): Chain[] {
  const chains: Chain[] = [];
  let stretch: ChainRow[] = [];
  for (let row = 1; row <= rows.length + 1; row++) {
    if (row <= rows.length && mendingOf(row) === 'latched-up') {
      const { floats } = rows[row - 1] as MendedRow;
      stretch.push({ row, floats, longest: longestOn(rules, row), yarnAbove: yarnOn(fabric, row + 1) });
    } else if (stretch.length > 0) {
      chains.push(...chainsOf(stretch));
      stretch = [];
    }
  }
  return chains;
}

function longestOn({ floatLimit, gauges }: Pick<MendingRules, 'floatLimit' | 'gauges'>, row: number): number {
  return longestBetween(floatLimit, gauges, row, row);
}

/** What a needle knits in a row (1-based); `OUTSIDE` beside the piece and above it. */
function yarnOn({ first, width, cells }: Fabric, row: number): (needle: Slot) => number {
  return (needle) => cells[(row - 1) * width + needle - first] ?? OUTSIDE;
}

function shared(one: Run, other: Run): Run {
  return { first: Math.max(one.first, other.first) as Slot, last: Math.min(one.last, other.last) as Slot };
}
