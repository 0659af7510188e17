import { remediesInSteps } from '@shared/check/index.ts';
import { planFor } from '@shared/plan/index.ts';
import type { Job } from './table.ts';

export const remediesJob: Job<'remedies'> = (piece) =>
  function* () {
    const plan = planFor(piece);
    yield null;
    return plan.ok ? yield* remediesInSteps(piece, plan.value) : [];
  };
