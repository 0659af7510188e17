/**
 * What a piece is knitted of, with nothing left to resolve: what planners are given.
 *
 * They know neither projects nor sizes, motifs come as drawings and not as
 * names, and what is only looked at (pictures to trace) or only kept (other
 * sizes, motifs that are not knitted) is left out.
 */
import type { Machine } from '../bed/index.ts';
import type { Motif, MotifId } from '../motif/index.ts';
import { copiesIn, type AllOver, type Band, type Group, type Pattern } from '../pattern/index.ts';
import type { Piece } from '../piece/index.ts';
import { motifOf } from './model.ts';
import type { Workpiece } from './project-at.ts';
import type { Yarn } from './yarn-model.ts';

export type KnitMotif = Omit<Motif, 'underlay'>;

export interface KnitGroup extends Omit<Group, 'motif' | 'acrossInSizes'> {
  readonly motif: KnitMotif;
}

export interface KnitBand extends Omit<Band, 'groups'> {
  readonly groups: readonly KnitGroup[];
}

export interface KnitAllOver extends Omit<AllOver, 'motif'> {
  readonly motif: KnitMotif;
}

export type KnitPattern = KnitBand | KnitAllOver;

/** A piece in one size, and what is knitted on it. */
export interface KnitPiece extends Piece {
  /** In the order in which they are laid. */
  readonly patterns: readonly KnitPattern[];
  /** The palette: cells hold indices into it. */
  readonly yarns: readonly Yarn[];
  /** Palette index of the yarn of the plain fabric. */
  readonly mainYarn: number;
  readonly machine: Machine;
  /** To wind above what is needed, in percent. */
  readonly yarnMargin: number;
}

/**
 * The piece that is looked at, in the size that is. The same object while what
 * it is made of is the same, whatever else of the project changes, so that a
 * plan is made once. Throws `motif-missing`.
 */
export function pieceIn(project: Workpiece): KnitPiece {
  const known = ofProject.get(project) ?? lastOr(knitPiece(project), project.piece);
  ofProject.set(project, known);
  return known;
}

const ofProject = new WeakMap<Workpiece, KnitPiece>();

/** Of each piece the last that was asked for: what a change leaves alone is found here. */
const ofPiece = new WeakMap<Piece, Made>();

interface Made {
  readonly knit: KnitPiece;
  /** What it was made of; projects that share these have the same one. */
  readonly of: readonly unknown[];
}

function lastOr(made: Made, piece: Piece): KnitPiece {
  const last = ofPiece.get(piece);
  if (last?.of.length === made.of.length && last.of.every((part, index) => part === made.of[index])) return last.knit;
  ofPiece.set(piece, made);
  return made.knit;
}

function knitPiece(project: Workpiece): Made {
  const { piece, patterns, yarns, mainYarn, machine, yarnMargin } = project;
  const motifs = new Map<MotifId, KnitMotif>();
  for (const { motif } of copiesIn(project)) motifs.set(motif, knitMotif(motifOf(project, motif)));
  const knit = patterns.map((pattern) => knitPattern(pattern, motifs));
  return {
    knit: { ...piece, patterns: knit, yarns, mainYarn, machine, yarnMargin },
    of: [patterns, yarns, mainYarn, machine, yarnMargin, ...motifs.values()],
  };
}

function knitPattern(pattern: Pattern, motifs: ReadonlyMap<MotifId, KnitMotif>): KnitPattern {
  const knit = <T extends { readonly motif: MotifId }>({ motif, ...copies }: T) => ({
    ...copies,
    motif: motifs.get(motif) as KnitMotif,
  });
  if (pattern.kind === 'all-over') return knit(pattern);
  return { ...pattern, groups: pattern.groups.map(({ acrossInSizes: _, ...group }) => knit(group)) };
}

/** By the drawing, so that the picture behind it can move; of each motif that has it, the last. */
const ofGrid = new WeakMap<Motif['grid'], Map<MotifId, KnitMotif>>();

function knitMotif({ underlay: _, ...motif }: Motif): KnitMotif {
  const drawn = ofGrid.get(motif.grid) ?? new Map<MotifId, KnitMotif>();
  ofGrid.set(motif.grid, drawn);
  const keys = Object.keys(motif) as (keyof KnitMotif)[];
  const last = drawn.get(motif.id);
  if (last && keys.every((key) => last[key] === motif[key])) return last;
  drawn.set(motif.id, motif);
  return motif;
}
