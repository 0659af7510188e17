/** The lines of the table of sizes: the numbers that a person gives, and what comes of them. */
import type { BandInSize, SizeColumn } from '@shared/fabric/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { MOST_STITCHES } from '@shared/bed/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { countsOf, MOST_PIECE_ROWS, withLength, type Lengths } from '@shared/piece/index.ts';
import {
  acrossIn,
  sizesOf,
  type Change,
  type ProjectAt,
  type SizeCounts,
  changeCopies,
  changeSize,
} from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';

/** A number in each size; null in those whose kind of shape has none of the name. */
export interface GivenLine {
  readonly label: string;
  readonly least: number;
  readonly most: number;
  readonly values: readonly (number | null)[];
  readonly changed: (index: number, to: number) => Change;
}

/** What is worked out for a size; null where it could not be placed. */
export interface FoundLine {
  readonly label: string;
  readonly say: (column: SizeColumn) => string | null;
}

/** The numbers, and the lengths that are left; without any where none is. */
function withLengths(to: SizeCounts, lengths: Lengths | undefined): SizeCounts {
  return { ...to, lengths } as SizeCounts;
}

/** Numbers of the shapes, in the order in which the sizes first have them, and the rows of the hem. */
export function numberLines(project: ProjectAt): GivenLine[] {
  const sizes = sizesOf(project);
  const counts = sizes.map(({ shape }) => countsOf(shape));
  const names = new Set(counts.flatMap((of) => of.map(({ name }) => name)));
  const shapes = [...names].map((name): GivenLine => {
    const found = counts.map((of) => of.find((count) => count.name === name));
    const [first] = found.filter((count) => count !== undefined);
    return {
      label: words.piece.form.counts[name],
      least: first?.least ?? 0,
      most: first?.of === 'rows' ? MOST_PIECE_ROWS : MOST_STITCHES,
      values: found.map((count) => count?.value ?? null),
      changed: (index, to) => {
        const count = found[index];
        if (!count) return changeSize(project, index, {});
        const lengths = withLength(sizes[index]?.lengths, count.field, null);
        return changeSize(project, index, withLengths({ shape: count.changed(to) }, lengths));
      },
    };
  });
  const hem: GivenLine = {
    label: words.sizes.lines.hem,
    least: 0,
    most: MOST_PIECE_ROWS,
    values: sizes.map(({ hemRows }) => hemRows),
    changed: (index, hemRows) =>
      changeSize(project, index, withLengths({ hemRows }, withLength(sizes[index]?.lengths, 'hemRows', null))),
  };
  return [...shapes, hem];
}

export function measureLines(unit: LengthUnit): FoundLine[] {
  const { lines } = words.sizes;
  return [
    { label: lines.width(unit), say: (column) => words.sizes.width(column, unit) },
    { label: lines.height(unit), say: (column) => words.sizes.height(column, unit) },
  ];
}

/** Copies across of each group of a band. */
export function copyLines(project: ProjectAt, band: number): GivenLine[] {
  const bands = bandsOf(project);
  const groups = bands[band]?.groups ?? [];
  return groups.map((group, index): GivenLine => ({
    label: words.sizes.lines.copies(bands.length > 1 ? band : null, index),
    least: 1,
    most: MOST_STITCHES,
    values: project.sizes.map(({ id }) => acrossIn(group, id)),
    changed: (size, across) => changeCopies(project, size, band, index, across),
  }));
}

/** Where the groups of a band come to stand. */
export function bandLines(band: number): FoundLine[] {
  const { lines } = words.sizes;
  const line = (label: string, say: (found: BandInSize) => string): FoundLine => ({
    label,
    say: ({ placed }) => {
      const found = placed.ok ? placed.value.bands[band] : undefined;
      return found ? say(found) : null;
    },
  });
  return [
    line(lines.holds, ({ holds }) => `${holds}`),
    line(lines.firstNeedles, ({ firstNeedles }) => words.sizes.needles(firstNeedles)),
    line(lines.onRows, words.sizes.rows),
    line(lines.setUp, words.sizes.setUp),
    line(lines.margins, words.sizes.margins),
    line(lines.gaps, words.sizes.gaps),
    line(lines.seam, ({ acrossSeam }) => `${acrossSeam}`),
    line(lines.fromRule, words.sizes.fromRule),
  ];
}

/** How many needles the bed lacks, where any size leaves it. */
export function bedLines(columns: readonly (SizeColumn | null)[], needles: number | null): FoundLine[] {
  const isBeyond = columns.some((column) => column?.placed.ok && column.placed.value.beyondBed !== null);
  if (!isBeyond) return [];
  return [
    {
      label: words.sizes.lines.bed,
      say: ({ placed }) => (placed.ok ? words.sizes.bed(placed.value, needles) : null),
    },
  ];
}
