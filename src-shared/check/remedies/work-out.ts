/** What can be done about what was found, each with its effect worked out before it is taken. */
import { makePlan, type Plan } from '../../plan/index.ts';
import { outcome } from '../../problem/index.ts';
import type { KnitPiece } from '../../project/piece-in.ts';
import type { Finding } from '../finding.ts';
import { gatherFindings, type Found } from '../gather.ts';
import { pieceAfter } from '../intent.ts';
import { cellsBetween, longHere, tallyOf, type Effect, type Tally } from './effect.ts';
import { kindOf, REMEDY_CODES, type RemedyCode, type RemedyIntent } from './kinds.ts';
import { strandStrip, stripWindow, type StrandStrip } from './strip.ts';

/** An intent, and what would come of it. */
export interface Remedy {
  readonly intent: RemedyIntent;
  readonly effect: Effect;
}

/** A remedy with the place of its finding as it is and as it would be. */
export interface PicturedRemedy extends Remedy {
  readonly before: StrandStrip;
  readonly after: StrandStrip;
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
    readonly plan: Plan,
  ) {
    this.#now = tallyOf(plan);
  }

  /** What could be done about a finding; whether it helps is not known yet. `inPlace`: patterns stay where they are. */
  proposed(gathered: Found, inPlace = false): RemedyIntent[] {
    const { piece, plan } = this;
    return REMEDY_CODES.map(kindOf)
      .filter(({ isForManyYarns = false }) => isForManyYarns === isAboutManyYarns(gathered))
      .filter(({ keepsPlaces }) => keepsPlaces || !inPlace)
      .flatMap(({ propose }) => propose({ piece, plan, gathered }));
  }

  /**
   * The remedy, if it leaves fewer long floats and carries where the finding is
   * and fewer on the whole piece: what only moves them elsewhere is none. One
   * for rows of many yarns leaves fewer of these. Takes as long as a plan, if
   * it was not tried before.
   */
  tried(gathered: Found, intent: RemedyIntent): Remedy | null {
    const then = this.#planWith(intent);
    if (!then) return null;
    const here = { before: longHere(this.plan, gathered), after: longHere(then.plan, gathered) };
    const isNone = isAboutManyYarns(gathered)
      ? then.tally.manyYarns >= this.#now.manyYarns
      : here.after >= here.before || then.tally.long >= this.#now.long;
    if (isNone) return null;
    return { intent, effect: this.#effect(intent, then, here) };
  }

  /** Lets go of the plans that were made. */
  forget(): void {
    this.#tried.clear();
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
      manyYarns: { before: now.manyYarns, after: tally.manyYarns },
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

/** Of these one can be taken and not two, so that the best is told. */
const ALTERNATIVES: ReadonlySet<RemedyCode> = new Set<RemedyCode>(['other-placing', 'mirrored-order']);

/** What can be done about one finding, the most effective first and of alternatives the best; told one tried intent a step. */
export function* remediesAt(remedies: Remedies, found: Found): Generator<null, PicturedRemedy[], void> {
  const best = new Map<string, Remedy>();
  for (const intent of isMendable(found) ? remedies.proposed(found) : []) {
    yield null;
    const remedy = remedies.tried(found, intent);
    const key = ALTERNATIVES.has(intent.code) ? intent.code : JSON.stringify(intent);
    const known = best.get(key);
    if (remedy && (!known || remedy.effect.long.after < known.effect.long.after)) best.set(key, remedy);
  }
  const window = stripWindow(remedies.plan, found.finding);
  const before = strandStrip(remedies.plan, window);
  const pictured = mostEffectiveFirst([...best.values()]).flatMap((remedy) => {
    const then = remedies.planWith(remedy.intent);
    return then ? [{ ...remedy, before, after: strandStrip(then, window) }] : [];
  });
  remedies.forget();
  return pictured;
}

/** Of those that leave as many on the whole piece, in the order of their kinds. */
export function mostEffectiveFirst(remedies: readonly Remedy[]): Remedy[] {
  const order = ({ intent }: Remedy): number => REMEDY_CODES.indexOf(intent.code);
  return [...remedies].sort(
    (one, other) => one.effect.long.after - other.effect.long.after || order(one) - order(other),
  );
}

/** Whether a finding is about strands that are too long or rows of many yarns, which remedies are for. */
export function isMendable({ finding: { code } }: Pick<Found, 'finding'>): boolean {
  return MENDABLE.has(code);
}

function isAboutManyYarns({ finding }: Pick<Found, 'finding'>): boolean {
  return finding.code === 'many-yarns';
}

const MENDABLE: ReadonlySet<Finding['code']> = new Set<Finding['code']>([
  'long-floats',
  'long-carry',
  'contrast-loose-across',
  'contrast-to-edges',
  'many-yarns',
]);
