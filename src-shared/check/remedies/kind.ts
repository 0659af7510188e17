/**
 * What a remedy is: a file of this folder each, named in `kinds.ts`.
 *
 * A remedy proposes what could be done about one finding. Whether that helps,
 * and what it costs, is not its business: it is worked out for all of them
 * alike, from the plan of the piece with the remedy taken (`work-out.ts`).
 */
import type { Plan } from '../../plan/index.ts';
import type { KnitPiece } from '../../project/piece-in.ts';
import type { Found } from '../gather.ts';
import type { Setting } from '../setting.ts';

/** A finding that is to be mended. `plan` is that of `piece`. */
export interface ToMend {
  readonly piece: KnitPiece;
  readonly plan: Plan;
  readonly gathered: Found;
}

/** One way to mend findings. An intent is plain data: it goes to workers and back. */
export interface RemedyKind<I extends { readonly code: string }> {
  /** It is for rows of more yarns than one pass feeds; all others are for yarn that lies too long. */
  readonly isForManyYarns?: true;
  /** What could be done here; none where it cannot help such a finding. */
  readonly propose: (toMend: ToMend) => readonly I[];
  /** What is to be set for it; null where there is nothing left to do, or what it names is gone. */
  readonly setting: (piece: KnitPiece, intent: I) => Setting | null;
  /** No pattern is moved by it: the plan is made anew over the places that are known, in half the time. */
  readonly keepsPlaces: boolean;
  /** The plan with this in place, where it is known without planning all of it. */
  readonly planAfter?: (then: KnitPiece, plan: Plan) => Plan;
  /** It changes cells of the pattern, and says how many. */
  readonly changesCells?: true;
}
