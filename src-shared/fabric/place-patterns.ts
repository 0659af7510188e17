/** The groups and fills of a project put on its piece, before anything is knitted. */
import { outlineOf, sectionsOf } from '../piece/index.ts';
import { motifOf, type MotifId, type Project } from '../project/project.ts';
import { assertApart, placeBand } from './bands.ts';
import { extentOf } from './copy.ts';
import { assertFillsApart } from './fills-apart.ts';
import { placeFill } from './fills.ts';
import type { MotifExtent, PlacedPatterns } from './types.ts';

/** Places groups and fills on the piece. Throws what `makePlan` throws: nothing that comes after can be wrong. */
export function placePatterns(project: Project): PlacedPatterns {
  const { piece } = project;
  const sections = sectionsOf(piece.shape.rows, piece);
  const outline = outlineOf(piece.shape, piece);
  const extents = extentsOf(project);
  const bands = project.bands.map((_, index) => placeBand(project, index, outline, sections, extents));
  assertApart(bands);
  const fills = project.fills.map((_, index) => placeFill(project, index, outline, extents));
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
    if (!extents.has(id)) extents.set(id, extentOf(motifOf(project, id)));
  }
  return extents;
}
