/** What the strip along the rows shows: which yarn is in which feeder. */
import { feedingRuns } from '@shared/plan/feeding.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import type { FeedingScene } from './drawing/feeding-strip.ts';
import type { Lookahead } from './lookahead-debounced.ts';

/** Null as long as the running order of the plan is not there. */
export function feedingOf(
  { yarns }: Pick<ProjectAt, 'yarns'>,
  plan: Plan,
  ahead: Lookahead | null,
): FeedingScene | null {
  if (ahead?.plan !== plan) return null;
  return { runs: feedingRuns(ahead.order), names: yarns.map(({ name }) => name) };
}
