/** The sizes for people: a line each, and what stands in the way of those that cannot be placed. */
import type { Machine } from '@shared/bed/index.ts';
import type { BandInSize, SizeColumn } from '@shared/fabric/index.ts';
import { words } from '@shared/words/index.ts';
import { table, under } from './table.ts';

const { sizes } = words;

export function sizesText(columns: readonly SizeColumn[], { bed }: Pick<Machine, 'bed'>): string {
  const { lines } = sizes;
  const inAll = table(columns, [
    { title: lines.size, cell: ({ name }) => name },
    { title: lines.stitches, cell: sizes.stitches },
    { title: lines.rows, cell: ({ measures }) => `${measures.rows}`, isNumber: true },
    { title: lines.measures('cm'), cell: (size) => sizes.measures(size, 'cm') },
    ...(columns.some(({ placed }) => placed.ok && placed.value.beyondBed)
      ? [
          {
            title: lines.bed,
            cell: ({ placed }: SizeColumn) => (placed.ok ? sizes.bed(placed.value, bed.needles) : sizes.none),
          },
        ]
      : []),
  ]);
  const bands = (columns[0]?.groups ?? []).map((_, band) => under(lines.band(band), bandLines(columns, band)));
  const problems = columns.flatMap(({ name, placed }) =>
    placed.ok ? [] : [sizes.problem(name, words.problems.sentence(placed.problem))],
  );
  return [inAll.join('\n'), ...bands, ...(problems.length > 0 ? [problems.join('\n')] : [])].join('\n\n');
}

function bandLines(columns: readonly SizeColumn[], band: number): string[] {
  const { lines } = sizes;
  const ofBand =
    (said: (band: BandInSize) => string) =>
    ({ placed }: SizeColumn): string => {
      const found = placed.ok ? placed.value.bands[band] : undefined;
      return found ? said(found) : sizes.none;
    };
  return table(columns, [
    { title: lines.size, cell: ({ name }) => name },
    { title: lines.allCopies, cell: ({ groups }) => (groups[band] ?? []).map(({ across }) => across).join(', ') },
    { title: lines.firstNeedles, cell: ofBand(({ firstNeedles }) => sizes.needles(firstNeedles)) },
    { title: lines.onRows, cell: ofBand(sizes.rows) },
    { title: lines.setUp, cell: ofBand(sizes.setUp) },
    { title: lines.spaces, cell: ofBand(sizes.spaces) },
    { title: lines.seam, cell: ofBand(({ acrossSeam }) => `${acrossSeam}`), isNumber: true },
    { title: lines.fromRule, cell: ofBand(sizes.fromRule) },
  ]);
}
