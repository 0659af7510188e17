/**
 * Numbers of balls, where their yarn alone does not tell them.
 *
 * A ball that is laid by hand has one on all of its rows. So has a group's own
 * ball that the carriage feeds while another length of the same yarn waits at
 * the piece, or that waits itself while another is fed: told by its yarn alone,
 * the length that waits would be threaded in its place.
 */
import type { KnittedRow, Supply } from './knitted-rows.ts';
import { waitsAfter, type NextUses } from './next-uses.ts';
import type { Work } from './work.ts';

/**
 * What balls are called: from 1, those that are laid by hand in the order in
 * which they are laid for the first time, then those that are fed alone.
 * Balls that their yarn tells are missing.
 */
export type BallNumbers = ReadonlyMap<Supply, number>;

/** The numbers of all balls of a piece; `uses` are those of its rows. */
export function ballNumbers(work: Pick<Work, 'plan' | 'rows'>, uses: NextUses): BallNumbers {
  const byHand = new Set<Supply>();
  for (const { laid } of work.rows) for (const { supply } of laid ?? []) byHand.add(supply);
  const supplies = [...byHand, ...toldApart(work, uses, byHand)];
  return new Map(supplies.map((supply, index) => [supply, index + 1]));
}

/** The number of the ball that a strand comes from; null where it has none. */
export function numberOf(numbers: BallNumbers, { yarn, group }: Supply): number | null {
  for (const [supply, number] of numbers) if (supply.yarn === yarn && supply.group === group) return number;
  return null;
}

/**
 * The own balls that are fed alone and have to be told from another length of
 * their yarn that has no number either, in the order in which they meet one.
 */
function toldApart(
  work: Pick<Work, 'plan' | 'rows'>,
  uses: NextUses,
  byHand: ReadonlySet<Supply>,
): ReadonlySet<Supply> {
  const apart = new Set<Supply>();
  if (work.plan.ownBalls.length === 0) return apart;
  const waiting = new Set<Supply>();
  for (const row of work.rows) {
    const fed = fedIn(row).filter((supply) => !byHand.has(supply));
    for (const supply of fed) {
      for (const other of waiting) {
        if (other === supply || other.yarn !== supply.yarn) continue;
        // What serves all else needs no number: it is the one that no number is told of.
        for (const one of [supply, other]) if (one.group !== null) apart.add(one);
      }
    }
    for (const supply of fed) {
      if (waitsAfter(work, uses, row.row, supply)) waiting.add(supply);
      else waiting.delete(supply);
    }
  }
  return apart;
}

function fedIn({ first, second }: KnittedRow): Supply[] {
  return [first, second].filter((supply) => supply !== null);
}
