/** What can be done about what was found, each with its effect worked out before it is taken. */
import { makePlan, type Plan } from '../../plan/index.ts';
import { outcome } from '../../problem/index.ts';
import type { KnitPiece } from '../../project/piece-in.ts';
import type { Finding } from '../finding.ts';
import { gatherFindings, type GatheredFinding } from '../gather.ts';
import { pieceAfter } from '../intent.ts';
import { cellsBetween, longHere, tallyOf, type Effect, type Tally } from './effect.ts';
import { kindOf, REMEDY_CODES, type RemedyIntent } from './kinds.ts';

/** An intent, and what would come of it. */
export interface Remedy {
  readonly intent: RemedyIntent;
  readonly effect: Effect;
}

/** A plan with a remedy taken, and what is told of it. */
interface Tried {
  readonly plan: Plan;
  readonly tally: Tally;
}

/** Works out what remedies do to a piece; each intent is tried once, whichever findings it is for. `plan` is that of `piece`. */
export class Remedies {
  readonly #now: Tally;
  readonly #tried = new Map<string, Tried | null>();

  constructor(
    private readonly piece: KnitPiece,
    private readonly plan: Plan,
  ) {
    this.#now = tallyOf(plan);
  }

  /** What could be done about a finding; whether it helps is not known yet. `inPlace`: patterns stay where they are. */
  proposed(gathered: GatheredFinding, inPlace = false): RemedyIntent[] {
    const { piece, plan } = this;
    return REMEDY_CODES.filter((code) => !inPlace || kindOf(code).keepsPlaces).flatMap((code) =>
      kindOf(code).propose({ piece, plan, gathered }),
    );
  }

  /** The remedy, if it leaves fewer long floats and carries where the finding is and no more on the piece. Takes as long as a plan, if it was not tried before. */
  tried(gathered: GatheredFinding, intent: RemedyIntent): Remedy | null {
    const then = this.#planWith(intent);
    if (!then) return null;
    const here = { before: longHere(this.plan, gathered), after: longHere(then.plan, gathered) };
    if (here.after >= here.before || then.tally.long >= this.#now.long) return null;
    return { intent, effect: this.#effect(intent, then, here) };
  }

  /** The plan with a remedy taken; null where there is nothing to take, or it cannot be knitted so. */
  planWith(intent: RemedyIntent): Plan | null {
    return this.#planWith(intent)?.plan ?? null;
  }

  #planWith(intent: RemedyIntent): Tried | null {
    const key = JSON.stringify(intent);
    const known = this.#tried.get(key);
    if (known !== undefined) return known;
    const { keepsPlaces, planAfter } = kindOf(intent.code);
    const then = pieceAfter(this.piece, intent);
    const after =
      then && outcome(() => planAfter?.(then, this.plan) ?? makePlan(then, keepsPlaces ? this.plan : undefined));
    const tried = after?.ok ? { plan: after.value, tally: tallyOf(after.value) } : null;
    this.#tried.set(key, tried);
    return tried;
  }

  #effect(intent: RemedyIntent, { plan, tally }: Tried, here: Effect['here']): Effect {
    const now = this.#now;
    return {
      long: { before: now.long, after: tally.long },
      here,
      balls: { before: now.balls, after: tally.balls },
      wrapsAdded: tally.wraps - now.wraps,
      liftsAdded: tally.lifts - now.lifts,
      chainsAdded: tally.chains - now.chains,
      cutsAdded: tally.cuts - now.cuts,
      mmAdded: tally.mm - now.mm,
      cellsChanged: kindOf(intent.code).changesCells ? cellsBetween(this.plan, plan) : null,
    };
  }
}

/**
 * The remedies in place that would leave fewer long floats and carries, the
 * most effective first; each once, though it be for several findings. Empty
 * where there are none to mend. `plan` is that of `piece`, and `findings` are
 * theirs.
 */
export function remediesFor(piece: KnitPiece, plan: Plan, findings: readonly Finding[]): Remedy[] {
  const steps = remediesInSteps(piece, plan, findings);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same, one remedy a step. */
export function* remediesInSteps(
  piece: KnitPiece,
  plan: Plan,
  findings: readonly Finding[],
): Generator<null, Remedy[], void> {
  const remedies = new Remedies(piece, plan);
  const found = new Map<string, Remedy>();
  for (const gathered of gatherFindings(findings).filter(isMendable)) {
    for (const intent of remedies.proposed(gathered, true)) {
      const key = JSON.stringify(intent);
      if (found.has(key)) continue;
      yield null;
      const remedy = remedies.tried(gathered, intent);
      if (remedy) found.set(key, remedy);
    }
  }
  return mostEffectiveFirst([...found.values()]);
}

/** Of those that leave as many on the whole piece, in the order of their kinds. */
export function mostEffectiveFirst(remedies: readonly Remedy[]): Remedy[] {
  return [...remedies].sort(({ effect: one }, { effect: other }) => one.long.after - other.long.after);
}

/** Whether a finding is about strands that are too long, which remedies are for. */
export function isMendable({ finding: { code } }: Pick<GatheredFinding, 'finding'>): boolean {
  return MENDABLE.has(code);
}

const MENDABLE: ReadonlySet<Finding['code']> = new Set<Finding['code']>([
  'long-floats',
  'long-carry',
  'contrast-loose-across',
  'contrast-to-edges',
]);
