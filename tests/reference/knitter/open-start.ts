/**
 * A start on waste yarn. Between W needles the first row leaves W − 1 whole
 * loops, and half a loop beyond each edge needle. A hem hangs one to a needle:
 * all whole ones, and the half loop of one edge, which is completed with what
 * is there of it.
 */
import { each, labelOf, type Side, type Span } from './needles.ts';
import { refuse } from './refusal.ts';

/** An open loop: between two needles of the cast-on, or half of one beyond its edge. */
export type OpenLoop = { readonly between: readonly [string, string] } | { readonly half: Side };

export interface HungLoop {
  readonly needle: string;
  readonly loop: OpenLoop;
}

export class OpenStart {
  private isOnWaste = true;
  private isHung = false;

  constructor(private readonly needles: Span) {}

  /** Which loop hangs on which needle. Loops may be counted as hung, or as the whole ones that are looked for. */
  hang(onto: Span, loops: number, edgeLoop: Side): HungLoop[] {
    if (this.isHung) refuse('the hem hangs already');
    if (!this.isOnWaste) refuse('the waste yarn has been taken out: the loops of the cast-on row have run');
    const open = each(this.needles).length;
    const needles = each(onto);
    if (needles.length !== open) refuse(`${open} loops (one of them half) are there for ${needles.length} needles`);
    if (loops !== open && loops !== open - 1) refuse(`${loops} loops are to be hung, but there are ${open}`);
    this.isHung = true;
    const castOn = each(this.needles).map(labelOf);
    const whole = castOn.slice(1).map((label, at): OpenLoop => ({ between: [castOn[at] as string, label] }));
    const half: OpenLoop = { half: edgeLoop };
    const hung = edgeLoop === 'left' ? [half, ...whole] : [...whole, half];
    return needles.map((needle, at) => ({ needle: labelOf(needle), loop: hung[at] as OpenLoop }));
  }

  removeWaste(): void {
    if (!this.isHung) refuse('the hem does not hang yet: the loops of the cast-on row would run');
    if (!this.isOnWaste) refuse('the waste yarn has been taken out');
    this.isOnWaste = false;
  }

  /**
   * At the end the waste of a hem is out. Without a hem it stays, for what is
   * added later (a rib).
   */
  isDone(): 'joined' | 'on waste yarn' {
    if (this.isHung && this.isOnWaste) refuse('the waste yarn has not been taken out');
    return this.isHung ? 'joined' : 'on waste yarn';
  }
}
