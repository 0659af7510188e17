import { plannedPlace } from '@shared/output/index.ts';
import { garmentNeed, type PieceToKnit } from '@shared/plan/index.ts';
import { placesIn } from '@shared/project/index.ts';
import { projectSent } from './sent-project.ts';
import type { Job } from './table.ts';

/** A piece a step. */
export const garmentYarnJob: Job<'garment-yarn'> = (sent) => {
  const project = projectSent(sent);
  return function* () {
    const pieces: PieceToKnit[] = [];
    for (const at of placesIn(project, { pieces: 'all', sizes: 'this' }).flat()) {
      const { place, plan } = plannedPlace(at);
      pieces.push({ name: place.piece.name, knit: place.knit, plan });
      yield null;
    }
    return garmentNeed(pieces, project);
  };
};
