/** The yarns: in the two feeders, waiting at a needle, laid by hand, cut; and the ends that all of them leave. */
import { each, labelOf } from './needles.ts';
import { refuse } from './refusal.ts';
import type { Step, StrandLaid } from './way.ts';

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
  /** The ball that it hangs from, where that is told. */
  readonly ball: string | null;
  /** The needle that it knitted last, in the carriage's direction; null before it has knitted. */
  knittedLast: number | null;
  readonly begunAt: number;
  cutAt: number | null;
  /** Where it lies, in the order in which it came there. */
  readonly way: Step[];
}

export class Yarns {
  readonly ends: YarnEnd[] = [];
  private readonly lengths: Length[] = [];
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

  /** The ball of a feeder's yarn, where that is told. */
  ballIn(feeder: Feeder): string | null {
    return this.feeders[feeder]?.ball ?? null;
  }

  /** A yarn with which stitches were cast on by hand: it hangs at the edge until it is threaded. */
  castOn(yarn: string, ball: string | null, reading: number): void {
    if (this.in(1) === yarn && this.ballIn(1) === ball) return;
    this.waiting.push(this.begin(yarn, ball, reading));
  }

  /** Takes up a length that waits, or begins a new one. */
  thread(feeder: Feeder, yarn: string, ball: string | null, reading: number): void {
    if (this.feeders[feeder]) refuse(`feeder ${feeder} holds ${this.in(feeder)}`);
    this.feeders[feeder] = this.takeUp(yarn, ball, reading);
  }

  /** A ball in hand: the one that hangs there, or a new one. */
  layFrom(ball: string, yarn: string, reading: number): void {
    const inFeeder = Object.values(this.feeders).some((length) => length?.ball === ball);
    if (inFeeder) refuse(`ball ${ball} is in a feeder`);
    const length = this.takeUp(yarn, ball, reading);
    length.knittedLast = null;
    this.waiting.push(length);
  }

  cutBall(ball: string, yarn: string, reading: number): void {
    const at = this.waiting.findIndex((length) => length.ball === ball);
    if (at < 0) refuse(`no ball ${ball} hangs there to be cut`);
    const [length] = this.waiting.splice(at, 1) as [Length];
    if (length.yarn !== yarn) refuse(`ball ${ball} is ${length.yarn}, not ${yarn}`);
    this.end(length, reading);
  }

  /** A yarn that waits at the edge and is of no ball. */
  cutWaiting(yarn: string, reading: number): void {
    const at = this.waiting.findIndex((length) => length.ball === null && length.yarn === yarn);
    if (at < 0) refuse(`no ${yarn} waits at the edge to be cut`);
    this.end(this.waiting.splice(at, 1)[0] as Length, reading);
  }

  /** The length that waits, or the beginning of a new one. */
  private takeUp(yarn: string, ball: string | null, reading: number): Length {
    const at = this.waiting.findIndex((length) => length.ball === ball && (ball !== null || length.yarn === yarn));
    if (at < 0) return this.begin(yarn, ball, reading);
    const [length] = this.waiting.splice(at, 1) as [Length];
    if (length.yarn !== yarn) refuse(`ball ${ball} is ${length.yarn}, not ${yarn}`);
    return length;
  }

  private begin(yarn: string, ball: string | null, reading: number): Length {
    const length: Length = { yarn, ball, knittedLast: null, begunAt: reading, cutAt: null, way: [] };
    this.lengths.push(length);
    this.ends.push({ yarn, end: 'first', reading, of: ball === null ? 'feeder' : 'ball' });
    return length;
  }

  private end(length: Length, reading: number): void {
    length.cutAt = reading;
    this.ends.push({ yarn: length.yarn, end: 'last', reading, of: length.ball === null ? 'feeder' : 'ball' });
  }

  /**
   * Takes a yarn out. One that is not cut waits where it knitted last, or at
   * the edge needle where the carriage stands.
   */
  unthread(
    feeder: Feeder,
    { yarn, ball }: { readonly yarn: string; readonly ball: string | null },
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
    if (length.ball !== ball)
      refuse(`feeder ${feeder} holds ${length.ball === null ? 'no ball' : `ball ${length.ball}`}`);
    if (length.knittedLast === null) refuse(`${yarn} has knitted nothing since it was threaded`);
    this.feeders[feeder] = null;
    if (waitsAt === 'cut') {
      this.end(length, reading);
      if (feeder === 1) this.cut = { reading, tailMm };
      return;
    }
    if (waitsAt !== length.knittedLast && waitsAt !== edge) {
      refuse(`${yarn} was knitted last on ${labelOf(length.knittedLast)}: it cannot wait at ${labelOf(waitsAt)}`);
    }
    this.waiting.push(length);
  }

  knitted(feeder: Feeder, last: number, way: readonly Step[]): void {
    const length = this.feeders[feeder];
    if (!length) return;
    length.knittedLast = last;
    length.way.push(...way);
  }

  /** The ball laid by hand has been knitted in. */
  knittedBall(ball: string, way: readonly Step[]): void {
    this.waiting.find((length) => length.ball === ball)?.way.push(...way);
  }

  /**
   * The float of the row just knitted that goes from one needle to another is
   * hung on one of them; one of another ball of the yarn that only passes there is not.
   */
  hook(yarn: string, row: number, needle: number, [first, last]: readonly [number, number]): void {
    for (const { way } of this.lengths.filter((length) => length.yarn === yarn)) {
      const start = way.findLastIndex((step) => step.row < row) + 1;
      const behind = new Set(way.slice(start).flatMap((step) => (step.does === 'knit' ? [] : [step.needle])));
      const isAllBehind = each([first, last]).every((at) => behind.has(at));
      if (!isAllBehind || behind.has(first - 1) || behind.has(last + 1)) continue;
      const at = way.findLastIndex((step) => step.needle === needle);
      way[at] = { row, needle, does: 'lifted' };
    }
  }

  /**
   * Where a yarn floats behind a needle of a row, it is taken into a chain that
   * is hung on it. Where no ball is told, all that floats there of the yarn is.
   */
  lift(yarn: string, ball: string | null, row: number, needle: number): void {
    for (const { way } of this.lengths.filter((one) => one.yarn === yarn && (ball === null || one.ball === ball))) {
      const at = way.findLastIndex((step) => step.row === row && step.needle === needle && step.does === 'float');
      if (at >= 0) way[at] = { row, needle, does: 'lifted' };
    }
  }

  /** What lies in the fabric of each uncut length. */
  laid(): StrandLaid[] {
    return this.lengths.map(({ yarn, ball, begunAt, cutAt, way }) => ({ yarn, ball, begunAt, cutAt, way }));
  }

  /** Cuts the first feeder's yarn with what the last row takes to be taken off, which a cast-off needs. */
  finishWith(reading: number, castOffMm: number | null): void {
    const length = this.feeders[1];
    if (length) {
      this.feeders[1] = null;
      this.end(length, reading);
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
    if (left?.ball) refuse(`ball ${left.ball} still hangs there, uncut`);
    if (left) refuse(`${left.yarn} still waits at the edge, uncut`);
  }
}
