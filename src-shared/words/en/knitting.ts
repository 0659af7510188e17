/** The row-by-row plan: sections, rows, what to have ready. */
import { firstNeedlesOf, seamMatchingOf } from '../../fabric/index.ts';
import { stitchesAt } from '../../piece/index.ts';
import { allOversOf } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import { sizeName, type Workpiece } from '../../project/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { WrapStrand } from '../../yarn/index.ts';
import { plainText } from '../marked.ts';
import { allOver } from './all-over.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';
import { pieces } from './pieces.ts';
import { sections } from './sections.ts';
import { sizes } from './sizes.ts';

function wrapStrand({ edge, firstRow, lastRow, wraps, mm, strand }: WrapStrand, unit: LengthUnit): string {
  const whose = strand.group === null ? '' : `, group ${strand.group + 1}`;
  const how = edge === 'both' ? 'both edges, folded in two' : `${edge} edge`;
  return `${lengths.cut(mm, unit)} for the ${how}${whose}, ${n.rowSpan(firstRow, lastRow)} (${n.count(wraps, 'wrap')})`;
}

/** `sleeve`, or `sleeve, size M` where there are several sizes, of which `size` is the name of one. */
function pieceOf({ name }: { readonly name: string }, size: string | null): string {
  return size === null ? name : sizes.named(name, size);
}

/** How many are knitted, where it is more than one. */
function knitOften({ knit }: { readonly knit: number }): string[] {
  return knit === 1 ? [] : [pieces.knitOfThis(knit)];
}

/** What is planned, in sentences: the piece and where its patterns lie. */
function summary(plan: Plan, project: Workpiece): string[] {
  const { rows } = plan.outline;
  const castOn = stitchesAt(plan.outline, 1);
  const atTop = stitchesAt(plan.outline, rows);
  const stitches = castOn === atTop ? n.stitches(castOn) : `${castOn} to ${n.stitches(atTop)}`;
  const parts = plan.sections.map(({ name, first, last }) => `${sections.name(name)} ${n.rowSpan(first, last)}`);
  return [
    `${pieceOf(project.piece, sizeName(project))}: ${stitches}, ${n.rows(rows)} (${parts.join(', ')}). Carriage at the ${project.piece.startSide} before row 1.`,
    ...knitOften(project),
    ...plan.groups.map(
      ({ block, figure, firstRow, lastRow }, index) =>
        `Group ${index + 1}: needles ${n.run(block)}, visible ${n.run(figure)}, ${n.rowSpan(firstRow, lastRow)}.`,
    ),
    ...allOversOf(plan).flatMap((placed) => [
      allOver.lies({ ...placed, first: firstNeedlesOf(placed, plan.outline) }),
      plainText(allOver.seam.summary(seamMatchingOf(placed, plan.outline))),
    ]),
  ];
}

export const knitting = {
  piece: pieceOf,
  knitOften,
  /** Headings of the row list. */
  columns: {
    row: 'Row',
    from: 'Carriage at',
    section: 'Section',
    edges: 'Stitches on',
    before: 'Before the row',
    needles: (yarn: string): string => `Needles in ${yarn}`,
    wrap: 'Wrap',
    after: 'After the row',
  },
  /** Strands with what each is cut to; empty where nothing is wrapped. */
  wrapStrands: (strands: readonly WrapStrand[], unit: LengthUnit): string[] =>
    strands.map((strand) => wrapStrand(strand, unit)),
  summary,
};
