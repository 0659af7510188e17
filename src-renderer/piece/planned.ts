/**
 * The plan that is drawn, whatever stands in the way.
 *
 * While a form holds something that cannot be knitted, the plain piece stays
 * on the stage and the problem is said beside it.
 */
import { allOversOf, bandsOf } from '@shared/pattern/index.ts';
import { makePlan, planFor, type Plan } from '@shared/plan/index.ts';
import { outcome, type Problem } from '@shared/problem/index.ts';
import { pieceIn, type KnitPiece, type ProjectAt } from '@shared/project/index.ts';

export interface Planned {
  readonly plan: Plan;
  /** Why nothing is placed; null for the whole plan. */
  readonly problem: Problem | null;
}

const kept = new WeakMap<KnitPiece, Planned>();

/** The plan of a project, or of its plain piece with the problem. */
export function plannedOf(project: ProjectAt): Planned {
  const piece = pieceIn(project);
  let planned = kept.get(piece);
  if (!planned) kept.set(piece, (planned = plan(piece)));
  return planned;
}

/** By its shape, which stays the same value while its motifs are painted: the last plan of a piece. */
const lastOf = new WeakMap<KnitPiece['shape'], Plan>();

function plan(piece: KnitPiece): Planned {
  const whole = planFor(piece, lastOf.get(piece.shape));
  if (whole.ok) lastOf.set(piece.shape, whole.value);
  if (whole.ok) return { plan: whole.value, problem: null };
  for (const plain of plainer(piece)) {
    const planned = outcome(() => makePlan(plain));
    if (planned.ok) return { plan: planned.value, problem: whole.problem };
  }
  throw new Error('A straight piece without patterns can always be planned');
}

/** The piece with less and less of what can be wrong. */
function* plainer(piece: KnitPiece): Generator<KnitPiece> {
  yield { ...piece, patterns: allOversOf(piece) };
  yield { ...piece, patterns: bandsOf(piece) };
  const bare = { ...piece, patterns: [] };
  yield bare;
  const free = { ...bare, hemRows: 0, sections: [] };
  yield free;
  const { stitches, rows } = piece.shape;
  yield { ...free, shape: { kind: 'rectangle', stitches, rows } };
}
