/** What is said round the seam of the closed view: the gaps of bands, and how all-overs match. */
import type { AllOverRound, BandRound } from '../../fabric/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { PatternName } from '../../pattern/index.ts';
import { judgeRound } from '../../placement/index.ts';
import { capitalised } from '../marked.ts';
import { allOver } from './all-over.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';
import { patterns } from './patterns.ts';
import { placement } from './placement.ts';

/** `22`, `22 to 26`. */
function gapsText(gaps: readonly number[]): string {
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  return least === most ? `**${least}**` : `**${least}** to **${most}**`;
}

/** What the eye sees of a band, and of so many more alike: the gap across the seam beside the gaps between the groups. */
function band({ rows, acrossSeam, gaps, shaped }: BandRound, alike: number): string {
  const change = shaped ? ` By row ${shaped.row} shaping makes the gap across the seam **${shaped.stitches}**.` : '';
  const others = alike === 0 ? '' : ` and ${n.count(alike, 'more pattern band')} alike`;
  return `${capitalised(n.rowSpan(rows.first, rows.last))}${others}: ${compared(acrossSeam, gaps)}.${change}`;
}

function compared(acrossSeam: number, gaps: readonly number[]): string {
  if (acrossSeam < 0) return `the seam allowance takes **${-acrossSeam}** of the figure`;
  const across = `across the seam **${acrossSeam}**`;
  const judgement = judgeRound(acrossSeam, gaps);
  if (judgement.kind === 'one-group') return `${across}, with one group all round`;
  const between = `between the groups ${gapsText(gaps)}`;
  return `${across}, ${between}; ${placement.round(judgement)}`;
}

/** `All-over 1, rows 1–60. It matches across the seam on all 60 rows.` */
function allOverRound(index: number, { rows, seam }: AllOverRound): string {
  return `All-over ${index + 1}, ${n.rowSpan(rows.first, rows.last)}. ${allOver.seam.summary(seam)}`;
}

export const closedPanel = {
  title: 'Round the seam',
  /** How far round, in mm, at both ends. */
  round: (footMm: number, topMm: number, unit: LengthUnit): string =>
    footMm === topMm
      ? `**${lengths.length(footMm, unit)}** round.`
      : `**${lengths.length(footMm, unit)}** round at the lower edge, **${lengths.length(topMm, unit)}** at the top.`,
  allowance: (left: number, right: number): string =>
    left === right
      ? `Seam allowance: **${n.stitches(left)}** at each edge.`
      : `Seam allowance: **${n.stitches(left)}** at the left edge and **${right}** at the right.`,
  /** The facing of a folded hem. */
  inside: (rows: number): string =>
    `${capitalised(n.rowSpan(1, rows))} ${rows === 1 ? 'lies' : 'lie'} inside the folded hem and ${rows === 1 ? 'is' : 'are'} not seen.`,
  band,
  allOver: allOverRound,
  patternInside: (name: PatternName): string =>
    `${capitalised(patterns.named(name))} lies inside the hem and is not seen.`,
};
