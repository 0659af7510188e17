/**
 * The sizes of a project in a row, smallest first, and the project as if
 * another of them were current.
 *
 * What a person chose in a size (a placing, needles by hand, how many copies)
 * waits with the band and the group while another size is current, and is
 * there again when they come back. The rule is shared: changed in one size, it
 * is changed in all.
 */
import { applyChange, changeOf, type Change, type Edits } from './change.ts';
import { setBands, setPiece, setProject } from './edit-makers.ts';
import type { Band, ByHand, ChosenInSize, SolvedRule, Group } from '../pattern/index.ts';
import type { Size, SizeNumbers, Sizes } from '../piece/index.ts';
import type { Project } from './model.ts';

/** All sizes, the current one among them. */
export function sizesOf({ sizes, piece }: Pick<Project, 'sizes' | 'piece'>): Size[] {
  return [...sizes.smaller, { name: sizes.name, ...numbersOf(piece) }, ...sizes.larger];
}

/** What of a piece, or of a size, is its size. */
export function numbersOf({ shape, hemRows, lengths }: SizeNumbers): SizeNumbers {
  return { shape, hemRows, ...(lengths && { lengths }) };
}

/** Index of the current size in {@link sizesOf}. */
export function currentSize({ sizes }: Pick<Project, 'sizes'>): number {
  return sizes.smaller.length;
}

export function hasSeveralSizes({ sizes }: Pick<Project, 'sizes'>): boolean {
  return sizes.smaller.length + sizes.larger.length > 0;
}

/** The name of the current size where there are several, which tells it from the others; null where there is one. */
export function sizeName(project: Pick<Project, 'sizes'>): string | null {
  return hasSeveralSizes(project) ? project.sizes.name : null;
}

/** How many copies across a group has in the size called `size`. */
export function acrossIn({ across, acrossInSizes }: Group, size: string): number {
  return acrossInSizes?.find((copies) => copies.size === size)?.across ?? across;
}

/** The change that makes the size `index` of {@link sizesOf} current. Throws `RangeError` for one that is not there. */
export function goToSize(project: Project, index: number): Change {
  const zipper = withCurrentSize(sizesOf(project), index);
  return changeOf('go-to-size', ...sizesEdits(project, zipper, bandsIn(project, index)));
}

const known = new WeakMap<Project, (Project | undefined)[]>();

/**
 * The project as it is when the size `index` is the current one, whose plan is that of
 * the size. The same project value gives the same value again, so that its
 * plan is made once.
 */
export function projectInSize(project: Project, index: number): Project {
  if (index === currentSize(project)) return project;
  let inSizes = known.get(project);
  if (!inSizes) known.set(project, (inSizes = []));
  return (inSizes[index] ??= applyChange(project, goToSize(project, index)));
}

/** Sizes, and the numbers of the current one, which stand in the piece. */
export interface Zipper {
  readonly sizes: Sizes;
  readonly numbers: SizeNumbers;
}

/** Edits that give the project other sizes, and bands that fit them. */
export function sizesEdits(project: Project, { sizes, numbers }: Zipper, bands: readonly Band[]): Edits {
  const { lengths } = numbers;
  // Lengths that the size before has and this one has not go.
  const piece = setPiece(lengths || project.piece.lengths ? { ...numbers, lengths } : numbers);
  return [setProject({ sizes }), piece, ...setBands(project, bands)];
}

/** The zipper with `index` current. */
export function withCurrentSize(sizes: readonly Size[], index: number): Zipper {
  const size = sizes[index];
  if (!size) throw new RangeError(`Size ${index} of ${sizes.length}`);
  const zipper: Sizes = { name: size.name, smaller: sizes.slice(0, index), larger: sizes.slice(index + 1) };
  return { sizes: zipper, numbers: numbersOf(size) };
}

function bandsIn(project: Project, index: number): readonly Band[] {
  const names = sizesOf(project).map(({ name }) => name);
  const [from, to] = [project.sizes.name, names[index] ?? ''];
  if (from === to) return project.bands;
  return project.bands.map((band) => {
    const groups = band.groups.map((group) => groupIn(group, to, names));
    return { ...chosenIn(band, from, to, names), groups };
  });
}

function groupIn(group: Group, to: string, names: readonly string[]): Group {
  if (!group.acrossInSizes) return group;
  return {
    ...group,
    across: acrossIn(group, to),
    acrossInSizes: names.filter((size) => size !== to).map((size) => ({ size, across: acrossIn(group, size) })),
  };
}

/** Lays aside what was chosen in the size `from`, and takes up what was in `to`. */
function chosenIn(band: Band, from: string, to: string, names: readonly string[]): Band {
  const rule = solvedRuleOf(band);
  // Needles by hand that no rule found are all there is to say, in every size.
  if (!rule) return band;
  const { chosenInSizes = [], ...rest } = band;
  const waiting = chosenInSizes.find(({ size }) => size === to);
  const aside = chosenNow(band, from);
  const others = names.flatMap((name) =>
    name === to ? [] : name === from ? (aside ?? []) : (chosenInSizes.find(({ size }) => size === name) ?? []),
  );
  return {
    ...rest,
    rule: waiting?.first ? byHand(waiting.first, rule, waiting.choice) : rule,
    choice: waiting && !waiting.first ? waiting.choice : 0,
    ...(others.length > 0 && { chosenInSizes: others }),
  };
}

function solvedRuleOf({ rule }: Band): SolvedRule | null {
  return rule.kind === 'by-hand' ? (rule.before?.rule ?? null) : rule;
}

/** What was chosen in the current size, called `size`; null where the rule's best choice stands. */
function chosenNow({ rule, choice }: Band, size: string): ChosenInSize | null {
  if (rule.kind === 'by-hand') return { size, choice: rule.before?.choice ?? 0, first: rule.first };
  return choice === 0 ? null : { size, choice, first: null };
}

function byHand(first: ByHand['first'], rule: SolvedRule, choice: number): ByHand {
  return { kind: 'by-hand', first, before: { rule, choice } };
}
