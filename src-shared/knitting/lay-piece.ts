/** The piece and where its groups and fills stand, before anything is knitted. */
import { outlineOf, sectionsOf, type Outline, type Section } from '../piece/index.ts';
import { motifOf, type Motif, type MotifId, type Project } from '../project/project.ts';
import { assertApart, layBand, type LaidBand } from './bands.ts';
import { extentOf } from './copy.ts';
import { assertFillsApart } from './fills-apart.ts';
import { layFill, type LaidFill } from './fills.ts';
import type { MotifExtent } from './types.ts';

export interface LaidPiece {
  readonly outline: Outline;
  readonly sections: readonly Section[];
  /** The motifs that are placed. */
  readonly extents: ReadonlyMap<MotifId, MotifExtent>;
  readonly bands: readonly LaidBand[];
  readonly fills: readonly LaidFill[];
}

/** Lays groups and fills on the piece. Throws what `makePlan` throws: nothing that comes after can be wrong. */
export function layPiece(project: Project): LaidPiece {
  const { piece } = project;
  const sections = sectionsOf(piece.shape.rows, piece);
  const outline = outlineOf(piece.shape, piece);
  const extents = extentsOf(project);
  const bands = project.bands.map((_, index) => layBand(project, index, outline, sections, extents));
  assertApart(bands);
  const fills = project.fills.map((_, index) => layFill(project, index, outline, extents));
  assertFillsApart(
    fills,
    bands.flatMap((band) => band.groups),
    outline,
  );
  return { outline, sections, extents, bands, fills };
}

function extentsOf(project: Project): Map<MotifId, MotifExtent> {
  const extents = new Map<MotifId, MotifExtent>();
  for (const { motif: id } of [...project.bands.flatMap(({ groups }) => groups), ...project.fills]) {
    if (!extents.has(id)) extents.set(id, extentFor(motifOf(project, id)));
  }
  return extents;
}

/** A large drawing takes longer to measure than to place, and is placed in every size. */
const known = new WeakMap<Motif, MotifExtent>();

function extentFor(motif: Motif): MotifExtent {
  let extent = known.get(motif);
  if (!extent) known.set(motif, (extent = extentOf(motif)));
  return extent;
}
