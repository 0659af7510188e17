/** What is to be set on a piece so that something is as it should be, and how that becomes a change or a piece. */
import { applyPatch, type Patch } from '../grid/index.ts';
import type { MotifId } from '../motif/index.ts';
import { namesOf, type AllOver, type Band, type Group, type Pattern } from '../pattern/index.ts';
import { scaledAcross, type Piece } from '../piece/index.ts';
import { changeOf, type Change, type ChangeName } from '../project/change.ts';
import type { Edit } from '../project/edit.ts';
import { paintCells, setNumbers, setPattern, setPiece } from '../project/edit-makers.ts';
import type { KnitMotif, KnitPattern, KnitPiece } from '../project/piece-in.ts';
import type { ProjectAt } from '../project/project-at.ts';
import { inSize } from '../project/sizes.ts';

/** Fields of a group that a setting may give it; which motif it has is no matter of how it is knitted. */
export type GroupFields = Partial<Omit<Group, 'motif' | 'acrossInSizes'>>;

/** Fields of a pattern that a setting may give it. */
export type PatternFields = Partial<Omit<Band, 'kind' | 'groups'>> &
  Partial<Omit<AllOver, 'kind' | 'motif' | 'position'>>;

/** What one pattern of the piece is given. */
export interface PatternSetting {
  /** Which of the piece's patterns, from 0. */
  readonly index: number;
  readonly to?: PatternFields;
  /** Of a band, what each group is given. */
  readonly groups?: (group: number) => GroupFields;
}

/** Cells of a motif, wherever its copies are. */
export interface MotifSetting {
  readonly motif: MotifId;
  readonly cells: Patch;
}

/** The fields that the piece and its patterns get, in one step of undo. */
export interface Setting {
  readonly change: ChangeName;
  readonly piece?: Partial<Piece>;
  /** The widths in stitches of the other sizes become so many times as many. */
  readonly widthsTimes?: number;
  readonly patterns?: readonly PatternSetting[];
  readonly motifs?: readonly MotifSetting[];
}

/** The change that sets it in the size that is looked at; null where nothing is set. */
export function changeSetting(
  project: ProjectAt,
  { change, piece, widthsTimes, patterns = [], motifs = [] }: Setting,
): Change | null {
  const edits: Edit[] = piece ? [...setPiece(project, piece)] : [];
  if (widthsTimes !== undefined) {
    for (const index of project.whole.sizes.keys()) {
      const { at, piece: other } = inSize(project, index);
      const shape = at.size === project.at.size ? null : scaledAcross(other.shape, widthsTimes);
      if (shape) edits.push(setNumbers(at, { shape }));
    }
  }
  const names = namesOf(project.patterns);
  for (const { index, to = {}, groups } of patterns) {
    const [name, pattern] = [names[index], project.patterns[index]];
    if (!name || !pattern) continue;
    const fields = groups && pattern.kind === 'band' ? { ...to, groups: withFields(pattern.groups, groups) } : to;
    edits.push(setPattern(project, name.kind, name.number, fields as Partial<Pattern>));
  }
  for (const { motif, cells } of motifs) edits.push(paintCells(motif, cells));
  const [first, ...others] = edits;
  return first ? changeOf(change, first, ...others) : null;
}

/** The piece with it set. */
export function pieceWith(given: KnitPiece, { piece, patterns = [], motifs = [] }: Setting): KnitPiece {
  const after = { ...given, ...piece };
  if (patterns.length === 0 && motifs.length === 0) return after;
  const changed = motifs.length > 0 ? painted(given.patterns, motifs) : [...given.patterns];
  for (const { index, to = {}, groups } of patterns) {
    const pattern = changed[index];
    if (!pattern) continue;
    const own = groups && pattern.kind === 'band' ? { ...to, groups: withFields(pattern.groups, groups) } : to;
    changed[index] = { ...pattern, ...own } as KnitPattern;
  }
  return { ...after, patterns: changed };
}

function painted(patterns: readonly KnitPattern[], motifs: readonly MotifSetting[]): KnitPattern[] {
  const known = new Map<KnitMotif, KnitMotif>();
  const after = (motif: KnitMotif): KnitMotif => {
    const cells = motifs.find((each) => each.motif === motif.id)?.cells;
    const other = known.get(motif) ?? (cells ? { ...motif, grid: applyPatch(motif.grid, cells) } : motif);
    known.set(motif, other);
    return other;
  };
  return patterns.map((pattern) =>
    pattern.kind === 'all-over'
      ? { ...pattern, motif: after(pattern.motif) }
      : { ...pattern, groups: pattern.groups.map((group) => ({ ...group, motif: after(group.motif) })) },
  );
}

function withFields<G extends object>(groups: readonly G[], to: (group: number) => GroupFields): G[] {
  return groups.map((group, index) => ({ ...group, ...to(index) }));
}

/** The index among a piece's patterns of a band; null where it is gone. */
export function indexOfBand(patterns: readonly { readonly kind: Pattern['kind'] }[], band: number): number | null {
  const index = namesOf(patterns).findIndex(({ kind, number }) => kind === 'band' && number === band);
  return index < 0 ? null : index;
}
