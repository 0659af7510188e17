/**
 * What a piece is knitted of, with nothing left to resolve: what planners are given.
 *
 * They know neither projects nor sizes, motifs come as drawings and not as
 * names, and what is only looked at (pictures to trace) or only kept (other
 * sizes, motifs that are not knitted) is left out.
 */
import type { Machine } from '../bed/index.ts';
import type { Motif, MotifId } from '../motif/index.ts';
import type { Band, Fill, Group } from '../pattern/index.ts';
import type { Piece } from '../piece/index.ts';
import { motifOf, type Yarn } from './model.ts';
import type { Workpiece } from './project-at.ts';

export type KnitMotif = Omit<Motif, 'underlay'>;

export interface KnitGroup extends Omit<Group, 'motif' | 'acrossInSizes'> {
  readonly motif: KnitMotif;
}

export interface KnitBand extends Omit<Band, 'groups'> {
  readonly groups: readonly KnitGroup[];
}

export interface KnitFill extends Omit<Fill, 'motif'> {
  readonly motif: KnitMotif;
}

/** A piece in one size, and what is knitted on it. */
export interface KnitPiece extends Piece {
  readonly bands: readonly KnitBand[];
  readonly fills: readonly KnitFill[];
  /** The palette: cells hold indices into it. */
  readonly yarns: readonly Yarn[];
  /** Palette index of the yarn of the plain fabric. */
  readonly mainYarn: number;
  readonly machine: Machine;
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
  const { piece, bands, fills, yarns, mainYarn, machine } = project;
  const motifs: KnitMotif[] = [];
  const knit = (id: MotifId): KnitMotif => {
    const motif = knitMotif(motifOf(project, id));
    motifs.push(motif);
    return motif;
  };
  const made: KnitPiece = {
    ...piece,
    bands: bands.map((band) => ({
      ...band,
      groups: band.groups.map(({ acrossInSizes: _, motif, ...group }) => ({ ...group, motif: knit(motif) })),
    })),
    fills: fills.map(({ motif, ...fill }) => ({ ...fill, motif: knit(motif) })),
    yarns,
    mainYarn,
    machine,
  };
  return { knit: made, of: [bands, fills, yarns, mainYarn, machine, ...motifs] };
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
