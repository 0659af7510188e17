/** The sizes of the piece on its sheet, one a line, so that any number of them has room. */
import type { BandInSize, SizeColumn } from '../fabric/index.ts';
import type { LengthUnit } from '../length/index.ts';
import { plain, strong, words } from '../words/index.ts';
import type { Block } from './blocks/block.ts';
import { cell, columnsOf, tableBlock, type Cell } from './blocks/table.ts';
import { headingBlock, paragraphBlock } from './blocks/text.ts';

const { sizes } = words;

/** Empty for one size. */
export function sizeBlocks(table: readonly SizeColumn[], widthMm: number, unit: LengthUnit): Block[] {
  const [first] = table;
  if (!first || table.length < 2) return [];
  const problems = table.flatMap(({ name, placed }) =>
    placed.ok ? [] : [sizes.problem(name, words.problems.say(placed.problem).what)],
  );
  return [
    headingBlock(plain(sizes.title), widthMm),
    measuresBlock(table, widthMm, unit),
    ...first.groups.flatMap((_, band) => bandBlocks(table, band, widthMm)),
    ...problems.map((problem) => paragraphBlock(plain(problem), widthMm, { tone: 'soft' })),
  ];
}

function measuresBlock(table: readonly SizeColumn[], widthMm: number, unit: LengthUnit): Block {
  const { lines } = sizes;
  const columns = columnsOf(widthMm, [
    [lines.size, 0],
    [lines.stitches, 20],
    [lines.rows, 12, 'end'],
    [lines.measures(unit), 33],
  ]);
  const rows = table.map((size): Cell[] => [
    nameCell(size),
    cell(sizes.stitches(size)),
    cell(`${size.measures.rows}`),
    cell(sizes.measures(size, unit)),
  ]);
  return tableBlock(columns, rows, { title: sizes.title });
}

function bandBlocks(table: readonly SizeColumn[], band: number, widthMm: number): Block[] {
  const { lines } = sizes;
  const said = ({ placed }: SizeColumn, say: (band: BandInSize) => string): Cell => {
    const found = placed.ok ? placed.value.bands[band] : undefined;
    return cell(found ? say(found) : sizes.none);
  };
  const columns = columnsOf(widthMm, [
    [lines.size, 17],
    [lines.allCopies, 13],
    [lines.firstNeedles, 0],
    [lines.spaces, 24],
    [lines.seam, 11, 'end'],
  ]);
  const rows = table.map((size): Cell[] => [
    nameCell(size),
    cell((size.groups[band] ?? []).map(({ across }) => across).join(', ')),
    said(size, ({ firstNeedles }) => sizes.needles(firstNeedles)),
    said(size, sizes.spaces),
    said(size, ({ acrossSeam }) => `${acrossSeam}`),
  ]);
  const title = lines.band(band);
  const heading = (table[0]?.groups.length ?? 0) > 1 ? [headingBlock(plain(title), widthMm, 3)] : [];
  return [...heading, tableBlock(columns, rows, { title: `${sizes.title}, ${title}`, spaceAboveMm: 2 })];
}

/** The size that this sheet is for stands out. */
function nameCell({ name, isCurrent }: SizeColumn): Cell {
  return cell(isCurrent ? [strong(name)] : plain(name));
}
