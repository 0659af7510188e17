/** How each job is done: what the worker knows. A window that lost its worker does its own by itself. */
import { chartJob } from './chart.ts';
import { garmentYarnJob } from './garment-yarn.ts';
import { joinJob } from './join.ts';
import { lookaheadJob } from './lookahead.ts';
import { measureJob } from './measure.ts';
import { pictureJob } from './picture.ts';
import { sheetJob } from './sheet.ts';
import { sizesJob } from './sizes.ts';
import type { Job, JobName } from './table.ts';

export const jobs: { readonly [Name in JobName]: Job<Name> } = {
  measure: measureJob,
  lookahead: lookaheadJob,
  sizes: sizesJob,
  'garment-yarn': garmentYarnJob,
  sheet: sheetJob,
  chart: chartJob,
  join: joinJob,
  picture: pictureJob,
};
