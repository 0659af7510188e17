/**
 * The bed: needles with the loops on them. A needle that is not in work is not
 * here. Nothing in a running order puts needles on hold (short rows are not
 * told), so none can be.
 */
import { each, labelOf, labelsOf, type Side, type Span } from './needles.ts';
import { refuse } from './refusal.ts';

export interface Loop {
  readonly of: 'cast-on' | 'increase' | 'row' | 'hem' | 'float';
  readonly yarn: string;
}

interface Needle {
  stands: 'work' | 'forward';
  /** The first lies deepest; all of them are knitted together. */
  loops: Loop[];
}

export class Bed {
  private readonly needles = new Map<number, Needle>();

  get isEmpty(): boolean {
    return this.needles.size === 0;
  }

  /** The outermost needles in work. */
  get edges(): Span {
    if (this.isEmpty) refuse('no needle is in work');
    return this.inWork.reduce<Span>(
      ([first, last], needle) => [Math.min(first, needle), Math.max(last, needle)],
      [Infinity, -Infinity],
    );
  }

  get inWork(): number[] {
    return [...this.needles.keys()];
  }

  get forward(): number[] {
    return this.inWork.filter((needle) => this.isForward(needle)).sort((a, b) => a - b);
  }

  isInWork(needle: number): boolean {
    return this.needles.has(needle);
  }

  isForward(needle: number): boolean {
    return this.needles.get(needle)?.stands === 'forward';
  }

  push(needle: number, to: Needle['stands']): void {
    this.at(needle).stands = to;
  }

  /** Hangs one more loop on a needle in work. */
  hang(needle: number, loop: Loop): void {
    this.at(needle).loops.push(loop);
  }

  holds(needle: number, of: Loop['of']): boolean {
    return this.at(needle).loops.some((loop) => loop.of === of);
  }

  /** A row's stitch: all loops of the needle are knocked off over the new one, and it goes back. */
  knit(needle: number, yarn: string): void {
    const at = this.at(needle);
    at.loops = [{ of: 'row', yarn }];
    at.stands = 'work';
  }

  castOn(needles: Span, yarn: string): void {
    if (!this.isEmpty) refuse('there are stitches on the needles already');
    for (const needle of each(needles)) this.bring(needle, { of: 'cast-on', yarn });
  }

  /** Brings needles into work beside the work at an edge. */
  widen(edge: Side, needles: Span, loop: Loop): void {
    const [first, last] = this.edges;
    const isBeside = edge === 'left' ? needles[1] === first - 1 : needles[0] === last + 1;
    if (!isBeside) {
      const beside = labelOf(edge === 'left' ? first - 1 : last + 1);
      refuse(`${labelsOf(each(needles))} is not beside the work: at the ${edge} ${beside} is`);
    }
    for (const needle of each(needles)) this.bring(needle, loop);
  }

  /** Moves the loops of the edge needle to its neighbour, then takes it out of work. */
  decrease(edge: Side, needle: number): void {
    this.isOutermost(edge, [needle, needle]);
    const neighbour = this.needles.get(edge === 'left' ? needle + 1 : needle - 1);
    if (!neighbour) refuse(`${labelOf(needle)} has no neighbour to take its loop`);
    neighbour.loops.push(...this.at(needle).loops);
    this.needles.delete(needle);
  }

  /** Moves the loops of a needle to a neighbour that keeps its own; the needle stays in work, and the next row leaves a hole. */
  empty(needle: number, emptied: readonly number[]): void {
    const at = this.at(needle);
    if (at.loops.length === 0) refuse(`${labelOf(needle)} holds no loop`);
    const [first, last] = this.edges;
    if (needle === first || needle === last) refuse(`${labelOf(needle)} is at the edge, which an eyelet would open`);
    const to = [needle + 1, needle - 1].find((beside) => !emptied.includes(beside));
    if (to === undefined) refuse(`both neighbours of ${labelOf(needle)} are emptied too`);
    this.at(to).loops.push(...at.loops);
    at.loops = [];
  }

  /** Closes the loops at an edge and takes their needles out of work. */
  castOff(edge: Side, needles: Span): void {
    this.isOutermost(edge, needles);
    const count = needles[1] - needles[0] + 1;
    if (count === this.needles.size) refuse('no stitch would be left to knit');
    for (const needle of each(needles)) this.needles.delete(needle);
  }

  /** Takes off all loops. */
  takeOff(needles: Span): void {
    const [first, last] = this.edges;
    if (needles[0] !== first || needles[1] !== last) {
      refuse(`the stitches are on ${labelOf(first)}–${labelOf(last)}, not on ${needles.map(labelOf).join('–')}`);
    }
    this.needles.clear();
  }

  private isOutermost(edge: Side, needles: Span): void {
    const [first, last] = this.edges;
    const isSo =
      edge === 'left' ? needles[0] === first && needles[1] <= last : needles[1] === last && needles[0] >= first;
    if (!isSo) refuse(`the outermost needle at the ${edge} is ${labelOf(edge === 'left' ? first : last)}`);
  }

  private bring(needle: number, loop: Loop): void {
    this.needles.set(needle, { stands: 'work', loops: [loop] });
  }

  private at(needle: number): Needle {
    return this.needles.get(needle) ?? refuse(`${labelOf(needle)} is not in work`);
  }
}
