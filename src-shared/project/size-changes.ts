/** Sizes added, removed, renamed, and given other numbers: each as one {@link Change}. */
import {
  fitted,
  isSizeName,
  lengthsIn,
  MOST_SIZE_LETTERS,
  MOST_SIZES,
  reshaped,
  type Shape,
  type Size,
  type SizeNumbers,
} from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import { changeOf, type Change, type ChangeName } from './change.ts';
import type { Band, Group } from '../pattern/index.ts';
import type { Project } from './model.ts';
import { allNumbersOf } from './piece-changes.ts';
import {
  acrossIn,
  currentSize,
  hasSeveralSizes,
  numbersOf,
  projectInSize,
  sizesEdits,
  sizesOf,
  withCurrentSize,
} from './sizes.ts';

/**
 * A size like the current one, next to it on the `side` given; it is taken in
 * hand, since its numbers come next. Throws `sizes-too-many` and what
 * {@link assertSizeName} throws.
 */
export function addSize(project: Project, side: 'smaller' | 'larger', name: string): Change {
  const sizes = sizesOf(project);
  if (sizes.length >= MOST_SIZES) throw problemError('sizes-too-many', { most: MOST_SIZES });
  assertSizeName(project, name);
  const index = currentSize(project);
  const at = side === 'smaller' ? index : index + 1;
  const more = sizes.toSpliced(at, 0, { ...(sizes[index] as Size), name });
  const bands = eachGroup(project.bands, (group) =>
    group.acrossInSizes
      ? { ...group, acrossInSizes: [...group.acrossInSizes, { size: name, across: group.across }] }
      : group,
  );
  const grown: Project = {
    ...project,
    sizes: withCurrentSize(more, side === 'smaller' ? index + 1 : index).sizes,
    bands,
  };
  const { sizes: zipper, piece, bands: graded } = projectInSize(grown, at);
  return changeOf('add-size', ...sizesEdits(project, { sizes: zipper, numbers: numbersOf(piece) }, graded));
}

/**
 * The project without a size; if it is the current one, the next larger one is
 * taken in its place, or else the next smaller. Throws `size-last`.
 */
export function removeSize(project: Project, index: number): Change {
  if (!hasSeveralSizes(project)) throw problemError('size-last', {});
  const count = sizesOf(project).length;
  const isCurrent = index === currentSize(project);
  const left = isCurrent ? projectInSize(project, index + 1 < count ? index + 1 : index - 1) : project;
  const sizes = sizesOf(left);
  const gone = sizes[index]?.name;
  const kept = sizes.filter((_, at) => at !== index);
  const current = kept.findIndex(({ name }) => name === left.sizes.name);
  const isOther = ({ size }: { readonly size: string }): boolean => size !== gone;
  const bands = left.bands.map(({ chosenInSizes = [], ...band }): Band => {
    const chosen = chosenInSizes.filter(isOther);
    return {
      ...band,
      ...(chosen.length > 0 && { chosenInSizes: chosen }),
      groups: band.groups.map((group) => alike({ ...group, acrossInSizes: group.acrossInSizes?.filter(isOther) })),
    };
  });
  return changeOf('remove-size', ...sizesEdits(project, withCurrentSize(kept, current), bands));
}

/** A size under another name. Throws what {@link assertSizeName} throws. */
export function renameSize(project: Project, index: number, name: string): Change {
  const sizes = sizesOf(project);
  const before = sizes[index]?.name;
  if (name !== before) assertSizeName(project, name);
  const renamed = <T extends { readonly size: string }>(entry: T): T =>
    entry.size === before ? { ...entry, size: name } : entry;
  const bands = project.bands.map((band) => ({
    ...band,
    ...(band.chosenInSizes && { chosenInSizes: band.chosenInSizes.map(renamed) }),
    groups: band.groups.map((group) =>
      group.acrossInSizes ? { ...group, acrossInSizes: group.acrossInSizes.map(renamed) } : group,
    ),
  }));
  const named = sizes.map((size, at) => (at === index ? { ...size, name } : size));
  return changedSizes('rename-size', project, named, bands);
}

/** A size with other numbers; those given as lengths keep to them. */
export function changeSize(project: Project, index: number, to: Partial<SizeNumbers>): Change {
  const sizes = sizesOf(project).map((size, at) => (at === index ? fittedSize(project, size, to) : size));
  return changedSizes('size-numbers', project, sizes);
}

function fittedSize({ piece }: Project, size: Size, to: Partial<SizeNumbers>): Size {
  const before = { ...piece, ...allNumbersOf(size) };
  return { name: size.name, ...numbersOf(fitted(before, { ...before, ...to })) };
}

/** Every size given another kind of shape, each on its own cast-on and rows. */
export function reshapeSizes(project: Project, kind: Shape['kind']): Change {
  const sizes = sizesOf(project).map((size) => {
    const shape = reshaped(size.shape, kind, { ...project.piece, hemRows: size.hemRows });
    return fittedSize(project, size, { shape, lengths: lengthsIn(shape, size.lengths) });
  });
  return changedSizes('piece-size', project, sizes);
}

/**
 * One group with other copies across in one size, and as many as before in all
 * others. Where all sizes come to have as many, they are alike again.
 */
export function changeCopies(project: Project, index: number, band: number, group: number, across: number): Change {
  const sizes = sizesOf(project);
  const current = project.sizes.name;
  const size = sizes[index]?.name;
  const graded = (before: Group): Group => {
    const inSize = (name: string): number => (name === size ? across : acrossIn(before, name));
    const others = sizes.filter(({ name }) => name !== current);
    return alike({
      ...before,
      across: size === current ? across : before.across,
      acrossInSizes: others.map(({ name }) => ({ size: name, across: inSize(name) })),
    });
  };
  const bands = project.bands.map((one, b) =>
    b === band ? { ...one, groups: one.groups.map((before, g) => (g === group ? graded(before) : before)) } : one,
  );
  return changedSizes('size-copies', project, sizes, bands);
}

/** A name that no size has yet: `size 3` is proposed for the third. */
export function freeSizeName(project: Project, named: (number: number) => string): string {
  const names = new Set(sizesOf(project).map(({ name }) => name));
  let number = names.size + 1;
  while (names.has(named(number))) number++;
  return named(number);
}

/** Throws `size-name-unusable` or `size-name-taken` for what cannot name a further size. */
export function assertSizeName(project: Project, name: string): void {
  if (!isSizeName(name)) {
    throw problemError('size-name-unusable', { text: name, most: MOST_SIZE_LETTERS });
  }
  if (sizesOf(project).some((size) => size.name === name)) throw problemError('size-name-taken', { name });
}

/** The sizes as these, the current one where it was among them. */
function changedSizes(name: ChangeName, project: Project, sizes: readonly Size[], bands = project.bands): Change {
  return changeOf(name, ...sizesEdits(project, withCurrentSize(sizes, currentSize(project)), bands));
}

function eachGroup(bands: readonly Band[], edit: (group: Group) => Group): Band[] {
  return bands.map((band) => ({ ...band, groups: band.groups.map(edit) }));
}

/** Without a list of copies that says nothing: none of its sizes has other than the current size. */
function alike({ acrossInSizes, ...group }: { [K in keyof Group]: Group[K] | undefined }): Group {
  const isAlike = !acrossInSizes?.some(({ across }) => across !== group.across);
  return (isAlike ? group : { ...group, acrossInSizes }) as Group;
}
