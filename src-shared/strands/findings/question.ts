/** What findings are made from. */
import type { LaidGroup } from '../../knitting/bands.ts';
import type { PlacedBand, Plan, PlanRow } from '../../knitting/types.ts';
import type { Gauges, Outline, Section } from '../../piece/index.ts';
import type { Project } from '../../project/project.ts';
import type { LaidStrands } from '../lay.ts';

export interface Inspected {
  readonly project: Project;
  /** Palette index of the main yarn. */
  readonly main: number;
  readonly outline: Outline;
  readonly sections: readonly Section[];
  readonly gauges: Gauges;
  readonly bands: readonly PlacedBand[];
  readonly groups: readonly LaidGroup[];
  readonly fills: Plan['fills'];
  readonly laid: LaidStrands;
  readonly rows: readonly PlanRow[];
}
