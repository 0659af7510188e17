/** A piece that leaves the bed: where, and what can be done. */
import { label, widthOf } from '../../bed/index.ts';
import type { CoarserBed, FewerStitches, Panels, Finding } from '../../check/index.ts';
import { gaugePer, type LengthUnit } from '../../length/index.ts';
import { capitalised } from '../marked.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

type Wide = Extract<Finding, { readonly code: 'wider-than-bed' }>;

/** `111 stitches each`, `111, 112 and 111 stitches`. */
function widths(stitches: readonly number[]): string {
  const [first] = stitches;
  if (first !== undefined && stitches.every((count) => count === first)) return `${n.stitches(first)} each`;
  return `${n.list(stitches.map(String))} stitches`;
}

function panelWords({ stitches, joins, partedCopies }: Panels): string {
  const where = `${joins.length === 1 ? 'needle' : 'needles'} ${n.list(joins.map(label))}`;
  const copies = partedCopies === 0 ? 'where no copy is cut' : `which cuts ${n.copies(partedCopies)}`;
  return `knit it in ${n.count(stitches.length, 'part')} of ${widths(stitches)}, parted after ${where}, ${copies}; a stitch for the seam on each side of a join is counted in.`;
}

function looser({ stitches, inTenCm }: FewerStitches, unit: LengthUnit): string {
  return `knit looser: at ${n.plain(gaugePer(inTenCm, unit))} stitches in ${lengths.gaugeLength(unit)} the same width takes ${n.stitches(stitches)}.`;
}

function coarser({ pitchMm, needles, stitches, inTenCm }: CoarserBed, unit: LengthUnit): string {
  return `take a bed with needles ${n.plain(pitchMm)} mm apart: at the ${n.plain(gaugePer(inTenCm, unit))} stitches in ${lengths.gaugeLength(unit)} that go with it, ${stitches} of its ${n.needles(needles)} are as wide.`;
}

function remedy({ remedy }: Wide, unit: LengthUnit): string {
  if (remedy.kind === 'divide') {
    const ways = [
      ...(remedy.panels ? [panelWords(remedy.panels)] : []),
      looser(remedy.looser, unit),
      ...(remedy.coarser ? [coarser(remedy.coarser, unit)] : []),
    ];
    return ways.map((way, index) => (index === 0 ? capitalised(way) : `Or ${way}`)).join(' ');
  }
  const { needles, offset } = remedy;
  if (offset === 0) return 'In the middle of the bed it fits.';
  return `It fits ${n.needles(Math.abs(needles))} further to the ${needles < 0 ? 'left' : 'right'}.`;
}

export const tooWide = {
  text(finding: Wide, unit: LengthUnit = 'cm'): string {
    const { spans, row, edges, bed } = finding;
    const [first, last] = finding.rows;
    const where = spans.length === 1 ? n.rowSpan(first, last) : `rows between ${first} and ${last}`;
    const leave = first === last ? 'leaves' : 'leave';
    const sentence = `${capitalised(where)} ${leave} the bed: row ${row} takes ${n.stitches(widthOf(edges))}, ${n.run(edges)}, and there are ${n.needles(widthOf(bed))}, ${n.run(bed)}.`;
    return `${sentence} ${remedy(finding, unit)}`;
  },
  /** Over the drawing: `The bed has 200 needles, and row 1 takes 260: 30 too many at the left and 30 at the right.` */
  short({ row, edges, bed }: Wide): string {
    const sides = [
      { beyond: bed.first - edges.first, side: 'left' },
      { beyond: edges.last - bed.last, side: 'right' },
    ].filter(({ beyond }) => beyond > 0);
    const where = sides.map(({ beyond, side }, index) => `${beyond}${index === 0 ? ' too many' : ''} at the ${side}`);
    return `The bed has ${n.needles(widthOf(bed))}, and row ${row} takes ${widthOf(edges)}: ${n.list(where)}.`;
  },
  moved: 'The piece stands on the bed.',
  move: (offset: number): string => (offset === 0 ? 'Move it to the middle' : 'Move it onto the bed'),
  loosen: ({ inTenCm }: FewerStitches, unit: LengthUnit): string =>
    `Knit it looser, ${n.plain(gaugePer(inTenCm, unit))} stitches in ${lengths.gaugeLength(unit)}`,
  loosened: 'The piece is as wide as it was, at a looser gauge, and stands on the bed.',
  narrow: (needles: number): string => `Make it ${n.stitches(needles)} wide`,
  narrowed: 'The piece is narrower, and stands on the bed.',
  part: ({ stitches }: Panels): string => `Show where to part it in ${stitches.length}`,
  parted: (panels: Panels): string => capitalised(panelWords(panels)),
  otherBed: 'Set another bed',
};
