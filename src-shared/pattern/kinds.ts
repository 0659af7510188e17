/**
 * Bands and all-overs, the two kinds of pattern, wherever patterns stand in a
 * list: in a file, in one size, as they are knitted, or placed on the piece.
 */
import { withPlaces, type Place } from '../piece/index.ts';
import type { Pattern, PatternInSizes } from './model.ts';

export type PatternKind = PatternInSizes['kind'];

/** What a pattern is called by: people count bands by themselves, and all-overs. `number` from 0. */
export interface PatternName {
  readonly kind: PatternKind;
  readonly number: number;
}

interface OfSomeKind {
  readonly kind: PatternKind;
}

interface Patterned<P extends OfSomeKind> {
  readonly patterns: readonly P[];
}

type OfKind<P extends OfSomeKind, Kind extends PatternKind> = Extract<P, { readonly kind: Kind }>;

/** The patterns of one kind, in their order. */
export function patternsOf<P extends OfSomeKind, Kind extends PatternKind>(
  { patterns }: Patterned<P>,
  kind: Kind,
): OfKind<P, Kind>[] {
  return patterns.filter((pattern): pattern is OfKind<P, Kind> => pattern.kind === kind);
}

/** The bands, in their order. */
export function bandsOf<P extends OfSomeKind>(patterned: Patterned<P>): OfKind<P, 'band'>[] {
  return patternsOf(patterned, 'band');
}

/** The all-overs, in their order. */
export function allOversOf<P extends OfSomeKind>(patterned: Patterned<P>): OfKind<P, 'all-over'>[] {
  return patternsOf(patterned, 'all-over');
}

/** The names of patterns, in their order. */
export function namesOf(patterns: readonly OfSomeKind[]): PatternName[] {
  const many = { band: 0, 'all-over': 0 };
  return patterns.map(({ kind }) => ({ kind, number: many[kind]++ }));
}

type CopiesOf<P> = P extends { readonly groups: readonly (infer Group)[] } ? Group : P;

/** What copies of one motif a pattern has: the groups of a band; an all-over is one by itself. */
export function copiesOf<P extends OfSomeKind>(pattern: P): readonly CopiesOf<P>[] {
  return ('groups' in pattern ? pattern.groups : [pattern]) as readonly CopiesOf<P>[];
}

/** The same of several patterns. */
export function copiesIn<P extends OfSomeKind>({ patterns }: Patterned<P>): readonly CopiesOf<P>[] {
  return patterns.flatMap((pattern) => copiesOf(pattern));
}

/** The pattern where it stands with each of its places changed into one of the same kind. */
export function repositioned<P extends PatternInSizes | Pattern>(
  pattern: P,
  change: <Of extends Place>(place: Of) => Of,
): P {
  const position = pattern.kind === 'band' ? change(pattern.position) : withPlaces(pattern.position, change);
  return { ...pattern, position };
}
