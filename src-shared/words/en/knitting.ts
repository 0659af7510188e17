/** The row-by-row plan: sections, rows, what to have ready. */
import { label, widthOf, type Run } from '../../bed/index.ts';
import { firstNeedlesOf, seamMatchingOf } from '../../fabric/index.ts';
import { stitchesAt } from '../../piece/index.ts';
import type { RowNote, Plan } from '../../plan/index.ts';
import { sizeName, type Project } from '../../project/index.ts';
import type { WrapStrand, YarnUse } from '../../yarn/index.ts';
import { capitalised, plainText } from '../marked.ts';
import { fill } from './fill.ts';
import { numbers as n } from './numbers.ts';
import { sections } from './sections.ts';
import { sizes } from './sizes.ts';
import { tooWide } from './too-wide.ts';

function note(rowNote: RowNote): string {
  switch (rowNote.code) {
    case 'cast-on':
      return `Cast on ${n.stitches(widthOf(rowNote.edges))}, ${n.run(rowNote.edges)}`;
    case 'edges':
      return edges(rowNote.before, rowNote.edges);
    case 'leaves-bed':
      return tooWide.note(rowNote.first, rowNote.last, rowNote.bed);
    case 'set-up':
      return `Knit this row plain while the needles of row ${rowNote.forRow} are selected`;
    case 'pattern-begins':
      return 'Pattern begins';
    case 'pattern-ends':
      return 'Pattern ends';
    case 'fold':
    case 'join':
      return sections.note(rowNote);
  }
}

/** `Increase 1 on the left and 1 on the right, to L49–R49`. */
function edges(before: Run, after: Run): string {
  const left = before.first - after.first;
  const right = after.last - before.last;
  const more = atEachSide([left, right]);
  const fewer = atEachSide([-left, -right]);
  const parts = [more === '' ? '' : `increase ${more}`, fewer === '' ? '' : `decrease ${fewer}`].filter(Boolean);
  const sentence = `${parts.join(' and ')}, to ${n.run(after)}`;
  return capitalised(sentence);
}

/** `1 on the left and 2 on the right`; empty where neither is above 0. */
function atEachSide([left, right]: readonly [number, number]): string {
  return [left > 0 ? `${left} on the left` : '', right > 0 ? `${right} on the right` : '']
    .filter(Boolean)
    .join(' and ');
}

function yarnUse(use: YarnUse, { yarns }: Pick<Project, 'yarns'>): string {
  const grams = use.grams === null ? '' : `, ${n.plain(use.grams, 0)} g`;
  return `${use.role === 'main' ? 'Main' : 'Contrast'} ${yarns[use.yarn]?.name ?? ''}: ${n.metres(use.totalMm)}${grams}`;
}

function wrapStrand({ edge, firstRow, lastRow, wraps, mm, strand }: WrapStrand): string {
  const whose = strand.group === null ? '' : `, group ${strand.group + 1}`;
  const how = edge === 'both' ? 'both edges, folded in two' : `${edge} edge`;
  return `${n.plain(Math.ceil(mm / 10), 0)} cm for the ${how}${whose}, ${n.rowSpan(firstRow, lastRow)} (${n.count(wraps, 'wrap')})`;
}

function setUp(plan: Plan): string[] {
  return [...plan.bands, ...plan.fills].map(({ firstRow, setUpAt }) =>
    setUpAt === null
      ? `The pattern begins on row ${firstRow}: select its needles by hand.`
      : `Set up with the row counter at ${setUpAt}: row ${firstRow - 1} is knitted plain while the needles of row ${firstRow} are selected.`,
  );
}

/** `sleeve`, or `sleeve, size M` where there are several sizes, of which `size` is the name of one. */
function pieceOf({ name }: { readonly name: string }, size: string | null): string {
  return size === null ? name : sizes.named(name, size);
}

/** The plan in sentences, from the cast-on to the yarn. */
function summary(plan: Plan, project: Project): string[] {
  const { rows } = plan.outline;
  const castOn = stitchesAt(plan.outline, 1);
  const atTop = stitchesAt(plan.outline, rows);
  const stitches = castOn === atTop ? n.stitches(castOn) : `${castOn} to ${n.stitches(atTop)}`;
  const parts = plan.sections.map(({ name, first, last }) => `${sections.name(name)} ${n.rowSpan(first, last)}`);
  return [
    `${pieceOf(project.piece, sizeName(project))}: ${stitches}, ${n.rows(rows)} (${parts.join(', ')}). The carriage starts from the ${project.piece.startSide}.`,
    ...plan.groups.map(
      ({ block, figure, firstRow, lastRow }, index) =>
        `Group ${index + 1}: first needle ${label(block.first)}, needles ${n.run(block)}, seen ${n.run(figure)}, ${n.rowSpan(firstRow, lastRow)}.`,
    ),
    ...plan.fills.flatMap((placed, index) => [
      fill.lies({ ...placed, index, width: placed.copy.width, first: firstNeedlesOf(placed, plan.outline) }),
      plainText(fill.seam.summary(seamMatchingOf(plan, index))),
    ]),
    ...setUp(plan),
    ...plan.yarn.uses.map((use) => `${yarnUse(use, project)}.`),
    `Wind off ${n.percent(plan.yarn.margin)} more.`,
    ...(plan.wrapStrands.length === 0
      ? []
      : [`Strands of main to cut for wrapping: ${plan.wrapStrands.map(wrapStrand).join('; ')}.`]),
  ];
}

export const knitting = {
  piece: pieceOf,
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
  note,
  yarnUse,
  wrapStrand,
  /** One sentence a band and a fill. */
  setUp,
  summary,
};
