/** The yarns: in the two feeders, waiting at a needle, cut; and the ends that all of them leave. */
import { labelOf } from './needles.ts';
import { refuse } from './refusal.ts';

export type Feeder = 1 | 2;

export interface YarnEnd {
  readonly yarn: string;
  readonly end: 'first' | 'last';
  /** Of the row counter. */
  readonly reading: number;
  readonly of: 'feeder' | 'strand' | 'ball';
}

/** One uncut length of yarn. */
interface Length {
  readonly yarn: string;
  /** The needle that it knitted last, in the carriage's direction; null before it has knitted. */
  knittedLast: number | null;
}

export class Yarns {
  readonly ends: YarnEnd[] = [];
  private readonly feeders: Record<Feeder, Length | null> = { 1: null, 2: null };
  private readonly waiting: Length[] = [];
  /** Where a yarn was cut last: its tail can still be cast off with there, if it is long enough. Null: nobody said how long. */
  private cut: { readonly reading: number; readonly tailMm: number | null } | null = null;
  /** The yarn that the finish has cut: that it is cut may be told once more, behind it. */
  private cutByFinish: string | null = null;

  /** The yarn of a feeder, or null. */
  in(feeder: Feeder): string | null {
    return this.feeders[feeder]?.yarn ?? null;
  }

  /** A yarn with which stitches were cast on by hand: it hangs at the edge until it is threaded. */
  castOn(yarn: string, reading: number): void {
    if (this.in(1) === yarn) return;
    this.waiting.push({ yarn, knittedLast: null });
    this.ends.push({ yarn, end: 'first', reading, of: 'feeder' });
  }

  /** Takes up a length that waits, or begins a new one. */
  thread(feeder: Feeder, yarn: string, reading: number): void {
    if (this.feeders[feeder]) refuse(`feeder ${feeder} holds ${this.in(feeder)}`);
    const at = this.waiting.findIndex((length) => length.yarn === yarn);
    if (at >= 0) {
      this.feeders[feeder] = this.waiting.splice(at, 1)[0] as Length;
      return;
    }
    this.feeders[feeder] = { yarn, knittedLast: null };
    this.ends.push({ yarn, end: 'first', reading, of: 'feeder' });
  }

  /**
   * Takes a yarn out. One that is not cut waits where it knitted last, or at
   * the edge needle where the carriage stands.
   */
  unthread(
    feeder: Feeder,
    yarn: string,
    waitsAt: number | 'cut',
    {
      edge,
      reading,
      tailMm,
    }: { readonly edge: number | null; readonly reading: number; readonly tailMm: number | null },
  ): void {
    if (feeder === 1 && this.cutByFinish === yarn && waitsAt === 'cut') {
      this.cutByFinish = null;
      return;
    }
    const length = this.feeders[feeder];
    if (length?.yarn !== yarn) refuse(`feeder ${feeder} holds ${length?.yarn ?? 'no yarn'}, not ${yarn}`);
    if (length.knittedLast === null) refuse(`${yarn} has knitted nothing since it was threaded`);
    this.feeders[feeder] = null;
    if (waitsAt === 'cut') {
      this.ends.push({ yarn, end: 'last', reading, of: 'feeder' });
      if (feeder === 1) this.cut = { reading, tailMm };
      return;
    }
    if (waitsAt !== length.knittedLast && waitsAt !== edge) {
      refuse(`${yarn} was knitted last on ${labelOf(length.knittedLast)}: it cannot wait at ${labelOf(waitsAt)}`);
    }
    this.waiting.push(length);
  }

  knitted(feeder: Feeder, last: number): void {
    const length = this.feeders[feeder];
    if (length) length.knittedLast = last;
  }

  /** Cuts the first feeder's yarn with what the last row takes to be taken off, which a cast-off needs. */
  finishWith(reading: number, castOffMm: number | null): void {
    const length = this.feeders[1];
    if (length) {
      this.feeders[1] = null;
      this.ends.push({ yarn: length.yarn, end: 'last', reading, of: 'feeder' });
      this.cutByFinish = length.yarn;
    } else if (castOffMm !== null) {
      if (this.cut?.reading !== reading) refuse('there is no yarn at the edge to cast off with');
      if (this.cut.tailMm !== null && this.cut.tailMm < castOffMm) {
        refuse(`the yarn was cut to ${this.cut.tailMm} mm, and casting off takes ${castOffMm}`);
      }
    }
  }

  /** Refuses where a length is still uncut. */
  allCut(): void {
    for (const feeder of [1, 2] as const) {
      if (this.feeders[feeder]) refuse(`${this.in(feeder)} is still in feeder ${feeder}`);
    }
    const [left] = this.waiting;
    if (left) refuse(`${left.yarn} still waits at the edge, uncut`);
  }
}
