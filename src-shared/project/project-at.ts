/**
 * A project as it is seen from one of its pieces, in one size: the piece with
 * that size's numbers, and its patterns as they are in it.
 *
 * Looking is not editing: which piece and size are looked at is no part of the
 * project, and all that is computed of a piece is computed of this. What is
 * the same in the project is the same object here, so that what was worked out
 * holds.
 */
import {
  repositioned,
  type Band,
  type BandInSizes,
  type Group,
  type GroupInSizes,
  type Pattern,
  type PatternInSizes,
  type PlacementRule,
} from '../pattern/index.ts';
import {
  placeInSize,
  valueIn,
  type Piece,
  type Place as PlaceUp,
  type SizeId,
  type SizeNumbers,
} from '../piece/index.ts';
import type { PieceId, PieceInSizes, Project } from './model.ts';

/** Names a piece and a size. */
export interface Place {
  readonly piece: PieceId;
  readonly size: SizeId;
}

/** What is made into a plan: a piece in one size, and what of the project belongs to it. */
export interface Workpiece extends Omit<Project, 'pieces'> {
  readonly at: Place;
  readonly piece: Piece;
  /** So many of the piece are knitted. */
  readonly knit: number;
  /** In the order in which they are laid. */
  readonly patterns: readonly Pattern[];
}

export interface ProjectAt extends Workpiece {
  /** The project that is looked at. */
  readonly whole: Project;
}

/** By project, and in it by piece and size. */
const known = new WeakMap<Project, Map<string, ProjectAt>>();

/** The project at that piece and in that size; at the first where there is none of the name. */
export function projectAt(project: Project, wanted: Partial<Place> = {}): ProjectAt {
  const at = placeIn(project, wanted);
  const places = known.get(project) ?? new Map<string, ProjectAt>();
  known.set(project, places);
  const key = JSON.stringify([at.piece, at.size]);
  const there = places.get(key) ?? made(project, at);
  places.set(key, there);
  return there;
}

/** The piece and the size of those names; the first where there is none. */
export function placeIn({ pieces, sizes }: Project, wanted: Partial<Place>): Place {
  const piece = pieces.find(({ id }) => id === wanted.piece) ?? pieces[0];
  const size = sizes.find(({ id }) => id === wanted.size) ?? sizes[0];
  if (!piece || !size) throw new Error('A project has at least one piece and one size');
  return { piece: piece.id, size: size.id };
}

function made(project: Project, at: Place): ProjectAt {
  const { pieces, ...fields } = project;
  const piece = pieces.find(({ id }) => id === at.piece) as PieceInSizes;
  return { ...fields, at, knit: piece.knit, ...pieceInSize(piece, at.size), whole: project };
}

interface InSize extends Pick<Workpiece, 'piece' | 'patterns'> {
  /** What it was made of. */
  readonly of: PieceInSizes;
}

/** The last that was asked for, by the numbers of the size, which few changes replace, and the piece's id. */
const ofNumbers = new WeakMap<SizeNumbers, Map<PieceId, InSize>>();

/** A piece in one of its sizes. What does not differ from what was asked for before is the same object. */
export function pieceInSize(of: PieceInSizes, size: SizeId): Pick<Workpiece, 'piece' | 'patterns'> {
  const numbers = of.perSize.find((one) => one.size === size);
  if (!numbers) throw new RangeError(`There is no size "${size}"`);
  const pieces = ofNumbers.get(numbers) ?? new Map<PieceId, InSize>();
  ofNumbers.set(numbers, pieces);
  const last = pieces.get(of.id);
  if (last?.of === of) return withoutOf(last);
  const piece = last && isSamePiece(last.of, of) ? last.piece : pieceOfSize(of, numbers);
  const inSize = {
    piece,
    patterns: lastOr(
      last?.patterns,
      of.patterns.map((pattern) => standingOn(of, piece, patternInSize(pattern, size))),
    ),
  };
  pieces.set(of.id, { ...inSize, of });
  return inSize;
}

function withoutOf({ of: _, ...inSize }: InSize): Omit<InSize, 'of'> {
  return inSize;
}

/** True if all is the same that a piece in one size is made of, its patterns and numbers apart. */
function isSamePiece(one: PieceInSizes, other: PieceInSizes): boolean {
  const { patterns: _, perSize: __, knit: ___, ...fields } = one;
  return (Object.keys(fields) as (keyof typeof fields)[]).every((key) => one[key] === other[key]);
}

function pieceOfSize(of: PieceInSizes, numbers: SizeNumbers & { readonly size: SizeId }): Piece {
  const { id: _, knit: __, perSize: ___, patterns: ____, sections, ...fields } = of;
  const { size: _____, sectionRows, ...counts } = numbers;
  return {
    ...fields,
    ...counts,
    sections: sections.map((section, index) => ({ ...section, ...(sectionRows[index] ?? { rows: 1 }) })),
  };
}

/** By the pattern, and where it stands. */
const standingKnown = new WeakMap<Pattern, Map<string, Pattern>>();

/** The pattern as far from an edge or from the hem as its lengths say in this size. */
function standingOn(of: PieceInSizes, piece: Piece, pattern: Pattern): Pattern {
  const sizes = (): Piece[] => of.perSize.map((size) => pieceOfSize(of, size));
  let isOther = false;
  const here = repositioned(pattern, <P extends PlaceUp>(place: P): P => {
    const own = placeInSize(place, piece, sizes);
    isOther ||= own !== place;
    return own;
  });
  if (!isOther) return pattern;
  const byPosition = standingKnown.get(pattern) ?? new Map<string, Pattern>();
  standingKnown.set(pattern, byPosition);
  const key = JSON.stringify(here.position);
  const standing = byPosition.get(key) ?? here;
  byPosition.set(key, standing);
  return standing;
}

/** The list before, where each item is the same. */
function lastOr<T>(before: readonly T[] | undefined, now: readonly T[]): readonly T[] {
  return before?.length === now.length && before.every((item, index) => item === now[index]) ? before : now;
}

const patternsKnown = new WeakMap<PatternInSizes, Map<SizeId, Pattern>>();

function patternInSize(pattern: PatternInSizes, size: SizeId): Pattern {
  const inSizes = patternsKnown.get(pattern) ?? new Map<SizeId, Pattern>();
  patternsKnown.set(pattern, inSizes);
  const there = inSizes.get(size) ?? madePattern(pattern, size);
  inSizes.set(size, there);
  return there;
}

function madePattern({ id: _, ...pattern }: PatternInSizes, size: SizeId): Pattern {
  return pattern.kind === 'band' ? madeBand(pattern, size) : pattern;
}

function madeBand({ placed, rule, groups, ...band }: Omit<BandInSizes, 'id'>, size: SizeId): Band {
  const chosen = valueIn(placed, size);
  const isByRule = chosen.by === 'rule';
  return {
    ...band,
    groups: groups.map((group) => groupInSize(group, size)),
    rule: isByRule ? rule : byHand(chosen.first, rule, chosen.before),
    choice: isByRule ? chosen.choice : 0,
  };
}

function byHand(
  first: Extract<PlacementRule, { readonly kind: 'by-hand' }>['first'],
  rule: BandInSizes['rule'],
  choice: number | null,
): PlacementRule {
  return choice === null ? { kind: 'by-hand', first } : { kind: 'by-hand', first, before: { rule, choice } };
}

function groupInSize({ across, ...group }: GroupInSizes, size: SizeId): Group {
  const here = { ...group, across: valueIn(across, size) };
  return across.but.length > 0 ? { ...here, acrossInSizes: across } : here;
}
