/** Sizes added, removed, renamed, and given other numbers: each as one {@link Change}. */
import {
  fitted,
  graded,
  isSizeName,
  lengthsIn,
  MOST_SIZE_LETTERS,
  MOST_SIZES,
  placeInSize,
  reshaped,
  sectionTaking,
  settled,
  valueIn,
  withValues,
  type Grade,
  type InSizes,
  type Piece,
  type Place,
  type Shape,
  type Size,
  type SizeId,
} from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import { bandsOf, repositioned, type PatternInSizes, type Placed } from '../pattern/index.ts';
import { changeOf, type Change, type ChangeName } from './change.ts';
import type { Edit } from './edit.ts';
import { setNumbers, setPattern, setPieceInSizes, setProject, differing } from './edit-makers.ts';
import type { PieceInSizes, Project } from './model.ts';
import { positionEdits } from './piece-changes.ts';
import { pieceInSize, type ProjectAt } from './project-at.ts';
import { numbersOf } from './put-back.ts';
import { acrossIn, hasSeveralSizes, inSize, sizesOf } from './sizes.ts';

/** What a size is given: those of its numbers that a form has. */
export type SizeCounts = Partial<Pick<Piece, 'shape' | 'hemRows' | 'lengths' | 'sections'>>;

/**
 * A size at the place `at` of the sizes, under an `id` that none had, in every
 * piece with the numbers that follow from the sizes beside it ({@link graded}):
 * between two their middle, at an end the last difference once more, beside a
 * single size the same.
 *
 * Copies are whole figures, and how many fit does not go on in a line: between
 * two sizes they are the middle, where half a copy is none, so that they fit
 * where those of both sizes do; at an end they are those of the last size.
 * Placings are chosen by the rule, as in all sizes of which nothing else is
 * said: what was chosen by hand was chosen in its own size.
 *
 * Throws `sizes-too-many` and what {@link assertSizeName} throws, and
 * `RangeError` for a place that is not there.
 */
export function addSize(project: ProjectAt, at: number, name: string, id: SizeId): Change {
  const { sizes } = project.whole;
  if (sizes.length >= MOST_SIZES) throw problemError('sizes-too-many', { most: MOST_SIZES });
  assertSizeName(project, name);
  const { smaller, larger, lies } = sizesBeside(sizes, at);
  const now = sizes.toSpliced(at, 0, { id, name });
  const copies = (across: InSizes<number>): number => {
    const [fewer, more] = [valueIn(across, smaller.id), valueIn(across, larger.id)];
    return lies === 'between' ? Math.floor((fewer + more) / 2) : lies === 'above' ? more : fewer;
  };
  return resized('add-size', project.whole, now, {
    perSize: (piece) => {
      const numbers = numbersOf(
        graded(pieceInSize(piece, smaller.id).piece, pieceInSize(piece, larger.id).piece, lies),
      );
      return piece.perSize.toSpliced(at, 0, { size: id, ...numbers });
    },
    across: (values) =>
      withValues(values.all, idsOf(now), (size) => (size === id ? copies(values) : valueIn(values, size))),
    placed: (values) =>
      withValues(values.all, idsOf(now), (size) => (size === id ? values.all : valueIn(values, size))),
  });
}

/** The sizes that one at the place `at` is proposed from, and where it lies: at an end the two last ones. Throws `RangeError` for a place that is not there. */
export function sizesBeside(
  sizes: readonly Size[],
  at: number,
): { readonly smaller: Size; readonly larger: Size; readonly lies: Grade } {
  const lies: Grade = at === 0 ? 'below' : at === sizes.length ? 'above' : 'between';
  const first = lies === 'below' ? 0 : lies === 'above' ? Math.max(0, at - 2) : at - 1;
  const smaller = sizes[first];
  if (!smaller || at < 0) throw new RangeError(`Place ${at} of ${sizes.length} sizes`);
  return { smaller, larger: sizes[first + 1] ?? smaller, lies };
}

/** The project without a size. Throws `size-last`. */
export function removeSize(project: ProjectAt, index: number): Change {
  if (!hasSeveralSizes(project)) throw problemError('size-last', {});
  const left = project.whole.sizes.toSpliced(index, 1);
  const kept = <T>(values: InSizes<T>): InSizes<T> =>
    withValues(values.all, idsOf(left), (size) => valueIn(values, size));
  return resized('remove-size', project.whole, left, {
    perSize: ({ perSize }) => perSize.toSpliced(index, 1),
    across: (values) => settled(kept(values), idsOf(left)),
    placed: kept,
    // The rows of a distance that was given as a length may be those of the size that goes.
    place: (piece, before) => {
      const inSizes = ({ id }: Size): Piece => pieceInSize(piece, id).piece;
      const [first] = left;
      return first ? placeInSize(before, inSizes(first), () => project.whole.sizes.map(inSizes)) : before;
    },
  });
}

/** A size under another name. Throws what {@link assertSizeName} throws. */
export function renameSize(project: ProjectAt, index: number, name: string): Change {
  const { sizes } = project.whole;
  if (name !== sizes[index]?.name) assertSizeName(project, name);
  return changeOf(
    'rename-size',
    setProject({ sizes: sizes.map((size, at) => (at === index ? { ...size, name } : size)) }),
  );
}

/** A size of the piece with other numbers; those given as lengths keep to them, and bands that keep a length from an edge. */
export function changeSize(project: ProjectAt, index: number, to: SizeCounts): Change {
  const one = inSize(project, index);
  return changeOf('size-numbers', numbersEdit(one, to), ...positionEdits(one, changedBy(one, to)));
}

/** A section with other rows in one size, given as a length (mm) or, with null, as a count. */
export function changeSizeSection(
  project: ProjectAt,
  index: number,
  section: number,
  rows: number,
  mm: number | null,
): Change {
  const { sections } = inSize(project, index).piece;
  const before = sections[section];
  if (!before) throw new RangeError(`There is no section ${section}`);
  return changeSize(project, index, { sections: sections.with(section, sectionTaking(before, rows, mm)) });
}

function numbersEdit(one: ProjectAt, to: SizeCounts): Edit {
  return setNumbers(one.at, differing(numbersOf(one.piece), numbersOf(changedBy(one, to))));
}

function changedBy({ piece }: ProjectAt, to: SizeCounts): Piece {
  return fitted(piece, { ...piece, ...to } as Piece);
}

/** Every size of the piece given another kind of shape, each on its own cast-on and rows. */
export function reshapeSizes(project: ProjectAt, kind: Shape['kind']): Change {
  const [first, ...others] = sizesOf(project).map((_, index) => {
    const one = inSize(project, index);
    const shape = reshaped(one.piece.shape, kind, one.piece);
    return numbersEdit(one, { shape, lengths: lengthsIn(shape, one.piece.lengths) } as SizeCounts);
  });
  return changeOf('piece-size', first as Edit, ...others);
}

/**
 * One group with other copies across in one size, and as many as before in all
 * others. Where all sizes come to have as many, they are alike again.
 */
export function changeCopies(project: ProjectAt, index: number, band: number, group: number, across: number): Change {
  const one = inSize(project, index);
  const all = idsOf(project.sizes);
  const groups = (bandsOf(one)[band]?.groups ?? []).map((before, g) => {
    if (g !== group) return before;
    const inSizes = before.acrossInSizes ?? withValues(before.across, all, (size) => acrossIn(before, size));
    return { ...before, across, acrossInSizes: inSizes };
  });
  return changeOf('size-copies', setPattern(one, 'band', band, { groups }));
}

/** A name that no size has yet: `size 3` is proposed for the third. */
export function freeSizeName({ sizes }: Pick<Project, 'sizes'>, named: (number: number) => string): string {
  const names = new Set(sizes.map(({ name }) => name));
  let number = names.size + 1;
  while (names.has(named(number))) number++;
  return named(number);
}

/** Throws `size-name-unusable` or `size-name-taken` for what cannot name a further size. */
export function assertSizeName({ sizes }: Pick<Project, 'sizes'>, name: string): void {
  if (!isSizeName(name)) {
    throw problemError('size-name-unusable', { text: name, most: MOST_SIZE_LETTERS });
  }
  if (sizes.some((size) => size.name === name)) throw problemError('size-name-taken', { name });
}

/** What becomes of all that names sizes, when they are others. */
interface Following {
  readonly perSize: (before: PieceInSizes) => PieceInSizes['perSize'];
  readonly across: (before: InSizes<number>) => InSizes<number>;
  readonly placed: (before: InSizes<Placed>) => InSizes<Placed>;
  readonly place?: <P extends Place>(of: PieceInSizes, before: P) => P;
}

function resized(name: ChangeName, { pieces }: Project, sizes: readonly Size[], following: Following): Change {
  const edits = pieces.flatMap((piece) => [
    setPieceInSizes(piece.id, { perSize: following.perSize(piece) }),
    ...piece.patterns.flatMap((pattern) => patternEdit(piece, pattern, following)),
  ]);
  return changeOf(name, setProject({ sizes }), ...edits);
}

function patternEdit(piece: PieceInSizes, pattern: PatternInSizes, following: Following): Edit[] {
  const { across, placed, place } = following;
  const standing = place ? repositioned(pattern, (before) => place(piece, before)) : pattern;
  const after: PatternInSizes =
    standing.kind === 'all-over'
      ? standing
      : {
          ...standing,
          groups: standing.groups.map((group) => ({ ...group, across: across(group.across) })),
          placed: placed(standing.placed),
        };
  const to = differing<object>(pattern, after);
  if (Object.keys(to).length === 0) return [];
  return [{ kind: 'set', of: pattern.kind, piece: piece.id, pattern: pattern.id, to }];
}

function idsOf(sizes: readonly Size[]): SizeId[] {
  return sizes.map(({ id }) => id);
}
