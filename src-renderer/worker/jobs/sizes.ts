import { sizeColumn } from '@shared/fabric/index.ts';
import { projectSent } from './sent-project.ts';
import type { Job } from './table.ts';

/** A size a step: only placing is worked out, in about a millisecond, of a crowded piece in some more. */
export const sizesJob: Job<'sizes'> = (sent) => {
  const project = projectSent(sent);
  return function* (_, tell) {
    for (const index of project.sizes.keys()) {
      tell({ index, column: sizeColumn(project, index) });
      yield null;
    }
    return null;
  };
};
