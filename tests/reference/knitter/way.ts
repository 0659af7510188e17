/**
 * The way of a yarn through the fabric, needle by needle, as it is laid.
 *
 * What is in the first feeder goes with the carriage from edge to edge; what is
 * in the second one, or laid by hand, from the first needle that it knits to
 * the last. At every needle between it is knitted or lies behind it.
 */
import { refuse } from './refusal.ts';

export interface Step {
  readonly row: number;
  readonly needle: number;
  /** `lifted`: it lies behind the needle, and was hung on it after the row or taken into a chain that was. */
  readonly does: 'knit' | 'float' | 'lifted';
}

/** One uncut length of yarn, from end to end. Where it goes from row to row lies between two of its steps. */
export interface StrandLaid {
  readonly yarn: string;
  /** The ball that it hangs from, where that is told. */
  readonly ball: string | null;
  /** Readings at which it came in and was cut; null where it never was. */
  readonly begunAt: number;
  readonly cutAt: number | null;
  readonly way: readonly Step[];
}

/** The way over needles that stand in the order in which the carriage comes to them. */
export function wayOver(row: number, needles: readonly number[], isKnitted: (needle: number) => boolean): Step[] {
  return needles.map((needle) => ({ row, needle, does: isKnitted(needle) ? 'knit' : 'float' }));
}

/** From the first of the needles that are knitted to the last. */
export function fromFirstToLast(needles: readonly number[], isKnitted: (needle: number) => boolean): number[] {
  const first = needles.findIndex(isKnitted);
  if (first < 0) refuse('a yarn that knits nothing has no way');
  return needles.slice(first, needles.findLastIndex(isKnitted) + 1);
}

/** Whether two fabrics have the same lengths, laid in the same way. */
export function isSameLaid(some: readonly StrandLaid[], others: readonly StrandLaid[]): boolean {
  return (
    some.length === others.length &&
    some.every(({ way, ...one }, index) => {
      const { way: otherWay, ...other } = others[index] as StrandLaid;
      return (
        JSON.stringify(one) === JSON.stringify(other) &&
        way.length === otherWay.length &&
        way.every((step, at) => {
          const { row, needle, does } = otherWay[at] as Step;
          return step.row === row && step.needle === needle && step.does === does;
        })
      );
    })
  );
}
