/**
 * The way back from a piece in one size to the piece in all sizes: what is
 * given to it in the size that is looked at, as the fields that it changes.
 *
 * Numbers and chosen placings are that size's. Copies across and rows of
 * sections are those of all sizes until one has others. All else is shared.
 */
import type {
  Band,
  BandInSizes,
  Group,
  GroupInSizes,
  Pattern,
  PatternId,
  PatternInSizes,
  Placed,
} from '../pattern/index.ts';
import {
  inAllSizes,
  settled,
  withValueIn,
  type InSizes,
  type Piece,
  type Section,
  type SectionRows,
  type SizeId,
  type SizeNumbers,
} from '../piece/index.ts';
import type { PieceId, PieceInSizes } from './model.ts';

/** What a rule finds first, which every size has until another is chosen. */
const BEST: Placed = { by: 'rule', choice: 0 };

/** Where something is put: the size, and all that there are. */
export interface Sized {
  readonly size: SizeId;
  readonly sizes: readonly SizeId[];
}

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };

/** Fields of a piece: those of all sizes, and those of the one; rows of sections apart. */
export function splitPiece({ shape, hemRows, sections, ...fields }: Partial<Piece>): {
  readonly shared: Mutable<Partial<PieceInSizes>>;
  readonly numbers: Partial<SizeNumbers>;
} {
  const { lengths, leftAsIs, ...shared } = fields;
  return {
    shared: {
      ...shared,
      ...(sections && { sections: sections.map(({ rows: _, lengthMm: __, ...section }) => section) }),
    },
    numbers: {
      ...(shape && { shape }),
      ...(hemRows !== undefined && { hemRows }),
      ...('lengths' in fields && ({ lengths } as Pick<SizeNumbers, 'lengths'>)),
      ...('leftAsIs' in fields && ({ leftAsIs } as Pick<SizeNumbers, 'leftAsIs'>)),
    },
  };
}

/**
 * The rows that a size, in which sections had the rows `own`, gives to them
 * after a change of sections in another size. A section that was as high in
 * all sizes (`alike`) stays so; one that a size has other rows for, or that
 * the change leaves as high, keeps its own. Sections are known by their names,
 * or where none comes or goes by their places.
 */
export function sectionRowsAfter(
  before: readonly Section[],
  after: readonly Section[],
  own: readonly SectionRows[],
  alike: readonly boolean[],
): SectionRows[] {
  return after.map((section, index) => {
    const named = before.findIndex(({ name }) => name === section.name);
    const was = named >= 0 || before.length !== after.length ? named : index;
    const earlier = before[was];
    const follows = earlier !== undefined && alike[was] === true && !isAsHigh(earlier, section);
    return sectionRowsOf((follows ? undefined : own[was]) ?? section);
  });
}

/** For each section, whether all sizes have the same rows for it. */
export function sectionsAlike({ perSize }: Pick<PieceInSizes, 'perSize'>): boolean[] {
  const [first, ...others] = perSize;
  return (first?.sectionRows ?? []).map((rows, index) =>
    others.every(({ sectionRows }) => {
      const there = sectionRows[index];
      return there !== undefined && isAsHigh(rows, there);
    }),
  );
}

function isAsHigh(one: SectionRows, other: SectionRows): boolean {
  return one.rows === other.rows && one.lengthMm === other.lengthMm;
}

export function sectionRowsOf({ rows, lengthMm }: SectionRows): SectionRows {
  return { rows, ...(lengthMm !== undefined && { lengthMm }) };
}

/** What of a piece in one size is its size. */
export function numbersOf({ shape, hemRows, lengths, leftAsIs, sections }: Piece): SizeNumbers {
  const optional = { ...(lengths && { lengths }), ...(leftAsIs && { leftAsIs }) };
  return { shape, hemRows, ...optional, sectionRows: sections.map(sectionRowsOf) };
}

/** The fields of the pattern that change when it is to have these, which are of its kind, in one size. */
export function patternFields(
  before: PatternInSizes,
  to: Partial<Pattern>,
  sized: Sized,
): Partial<Omit<PatternInSizes, 'id'>> {
  return before.kind === 'band' ? bandFields(before, to as Partial<Band>, sized) : to;
}

function bandFields(
  before: Pick<BandInSizes, 'rule' | 'placed'>,
  { groups, rule, choice, ...rest }: Partial<Band>,
  sized: Sized,
): Partial<BandInSizes> {
  return {
    ...rest,
    ...(groups && { groups: groups.map((group) => groupInSizes(group, sized)) }),
    ...(rule !== undefined && solved(rule)),
    ...((rule !== undefined || choice !== undefined) && { placed: placedWith(before.placed, rule, choice, sized) }),
  };
}

function solved(rule: Band['rule']): Partial<BandInSizes> {
  if (rule.kind !== 'by-hand') return { rule };
  return rule.before ? { rule: rule.before.rule } : {};
}

function placedWith(
  before: InSizes<Placed>,
  rule: Band['rule'] | undefined,
  choice: number | undefined,
  { size, sizes }: Sized,
): InSizes<Placed> {
  if (rule?.kind === 'by-hand') {
    const { first, before: found } = rule;
    // Needles by hand that no rule found are all there is to say, in every size.
    if (!found) return inAllSizes({ by: 'hand', first, before: null });
    return withValueIn(ruled(before), size, { by: 'hand', first, before: found.choice }, sizes);
  }
  const now = before.but.find((one) => one.size === size)?.value ?? before.all;
  const kept = now.by === 'rule' ? now.choice : 0;
  // A choice of a band that stays by hand says nothing.
  if (rule === undefined && now.by === 'hand') return before;
  return withValueIn(ruled(before), size, { by: 'rule', choice: choice ?? kept }, sizes);
}

/** With the best choice in every size of which nothing else is said. */
function ruled(placed: InSizes<Placed>): InSizes<Placed> {
  return placed.all.by === 'rule' ? placed : inAllSizes(BEST);
}

function groupInSizes({ across, acrossInSizes, ...group }: Group, { size, sizes }: Sized): GroupInSizes {
  if (!acrossInSizes) return { ...group, across: inAllSizes(across) };
  return { ...group, across: settled(withValueIn(acrossInSizes, size, across, sizes), sizes) };
}

/** A pattern as it is put on a piece. */
export function patternInSizes(id: PatternId, pattern: Pattern, sized: Sized): PatternInSizes {
  if (pattern.kind === 'all-over') return { id, ...pattern };
  const { kind, groups, rule, choice, ...rest } = pattern;
  const empty = { rule: { kind: 'seam' }, placed: inAllSizes(BEST) } as const;
  return { id, kind, ...rest, ...empty, groups: [], ...bandFields(empty, { groups, rule, choice }, sized) };
}

/** A piece as it is in one size, in all sizes. */
export function pieceInSizes(
  id: PieceId,
  piece: Piece,
  patterns: PieceInSizes['patterns'],
  sizes: readonly SizeId[],
): PieceInSizes {
  const { shape: _, hemRows: __, lengths: ___, sections, ...fields } = piece;
  return {
    id,
    knit: 1,
    ...fields,
    sections: sections.map(({ rows: _rows, lengthMm: _mm, ...section }) => section),
    perSize: sizes.map((size) => ({ size, ...numbersOf(piece) })),
    patterns,
  };
}
