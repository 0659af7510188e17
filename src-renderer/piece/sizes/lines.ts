/** The lines of the table of sizes: the numbers that a person gives, and what comes of them. */
import type { BandInSize, SizeColumn } from '@shared/fabric/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import {
  countsOf,
  evenScale,
  gaugesOf,
  heldLength,
  withLength,
  type Bounds,
  type Lengths,
  type Piece,
  type Scale,
  type Shape,
} from '@shared/piece/index.ts';
import {
  acrossIn,
  boundsOf,
  boundsOfCount,
  inSize,
  type Change,
  type ProjectAt,
  type SizeCounts,
  changeCopies,
  changeSize,
  changeSizeSection,
} from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';

/** A number of one size, to be given as a count or, where it has a scale, as a length. */
export interface GivenCell {
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** How long it is, and the length that it was given as; null for what has no length. */
  readonly measure: { readonly scale: Scale; readonly mm: number | undefined } | null;
  /** `mm`: the length that was given; null for a count. */
  readonly changed: (to: number, mm: number | null) => Change;
}

/** How long a number of a size is. */
export interface CellLength {
  readonly bounds: Bounds;
  /** The length that it was given as, or that it comes to. */
  readonly mm: number;
  /** It was given as a length, and its count follows. */
  readonly isLength: boolean;
}

/** Null for what has no length. */
export function lengthOf({ measure, value, least, most }: GivenCell): CellLength | null {
  if (!measure) return null;
  const bounds = { scale: measure.scale, least, most };
  const asked = heldLength(measure.mm, value, bounds);
  return { bounds, mm: asked ?? measure.scale.mmOf(value), isLength: asked !== null };
}

/** A number in each size; null in those that have none of the name. */
export interface GivenLine {
  readonly key: string;
  readonly label: string;
  readonly cells: readonly (GivenCell | null)[];
}

/** Shaping row by row in each size; null in those of another kind of shape. */
export interface StepsLine {
  readonly label: string;
  readonly cells: readonly (ShapedByRow | null)[];
}

type ShapedByRow = Extract<Shape, { readonly kind: 'steps' }>;

/** What is worked out for a size; null where it could not be placed. */
export interface FoundLine {
  readonly label: string;
  readonly say: (column: SizeColumn) => string | null;
}

/** Numbers of the shapes, in the order in which the sizes first have them, and rows of the hem and of the sections above it. */
export function numberLines(project: ProjectAt): GivenLine[] {
  const sizes = project.sizes.map((_, index) => inSize(project, index).piece);
  const counts = sizes.map(({ shape }) => countsOf(shape));
  const names = new Set(counts.flatMap((of) => of.map(({ name }) => name)));
  const shapes = [...names].map((name): GivenLine => ({
    key: name,
    label: words.piece.form.counts[name],
    cells: sizes.map((piece, index): GivenCell | null => {
      const count = counts[index]?.find((one) => one.name === name);
      if (!count) return null;
      const { field, value, changed, scaleOf } = count;
      return {
        value,
        ...boundsOfCount(count),
        measure: { scale: scaleOf(gaugesOf(piece)), mm: piece.lengths?.[field] },
        changed: (to, mm) => changeSize(project, index, given(piece, { shape: changed(to) }, field, mm)),
      };
    }),
  }));
  const hem: GivenLine = {
    key: 'hem',
    label: words.sizes.lines.hem,
    cells: sizes.map((piece, index) => ({
      value: piece.hemRows,
      ...boundsOf('hemRows'),
      measure: { scale: evenScale(piece.hem.gauge ?? piece.gauge, 'rows'), mm: piece.lengths?.hemRows },
      changed: (hemRows, mm) => changeSize(project, index, given(piece, { hemRows }, 'hemRows', mm)),
    })),
  };
  const sections = project.piece.sections.map(({ name }, section): GivenLine => ({
    key: `section ${section}`,
    label: words.sizes.lines.section(name),
    cells: sizes.map(({ sections, gauge }, index): GivenCell | null => {
      const own = sections[section];
      return own
        ? {
            value: own.rows,
            ...boundsOf('sectionRows'),
            measure: { scale: evenScale(own.gauge ?? gauge, 'rows'), mm: own.lengthMm },
            changed: (to, mm) => changeSizeSection(project, index, section, to, mm),
          }
        : null;
    }),
  }));
  return [...shapes, hem, ...sections];
}

/** The counts, of which the one in `field` was given as a length or (null) as a count. */
function given(
  { lengths }: Pick<Piece, 'lengths'>,
  to: SizeCounts,
  field: keyof Lengths,
  mm: number | null,
): SizeCounts {
  return { ...to, lengths: withLength(lengths, field, mm) } as SizeCounts;
}

/** Shaping row by row, where any size has it. */
export function stepsLine(project: ProjectAt): StepsLine | null {
  const shapes = project.sizes.map((_, index) => inSize(project, index).piece.shape);
  const cells = shapes.map((shape) => (shape.kind === 'steps' ? shape : null));
  return cells.some((cell) => cell !== null) ? { label: words.piece.form.steps, cells } : null;
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
    key: `group ${index}`,
    label: words.sizes.lines.copies(bands.length > 1 ? band : null, index),
    cells: project.sizes.map(({ id }, size) => ({
      value: acrossIn(group, id),
      ...boundsOf('copiesAcross'),
      measure: null,
      changed: (across) => changeCopies(project, size, band, index, across),
    })),
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
