/** What goes through the knitter's hands beside the feeders: wrapping strands, and what is laid into the hooks. */
import { labelOf, type Side } from './needles.ts';
import { refuse } from './refusal.ts';
import type { YarnEnd } from './yarns.ts';

interface Strand {
  yarn: string | null;
  readonly startedAt: number;
  endedAt: number | null;
  /** As it was cut, where that is told. */
  readonly mm: number | null;
  readonly wraps: WrapLaid[];
}

export interface WrapLaid {
  readonly row: number;
  readonly needle: number;
  readonly edge: Side;
}

/** A wrapping strand as it lies in the fabric. */
export interface WrappingStrand {
  readonly id: string;
  readonly yarn: string;
  /** Its length as it was cut, where that is told. */
  readonly mm: number | null;
  /** From the bottom up. */
  readonly wraps: readonly WrapLaid[];
}

export class Strands {
  private readonly strands = new Map<string, Strand>();
  /** The yarn that lies in the hook of a needle. */
  readonly laid = new Map<number, string>();
  /** The needles of each ball laid for the coming row. */
  private readonly inHooks = new Map<string, readonly number[]>();
  /** Needles wrapped before the coming row. */
  private readonly wrapped = new Set<number>();

  start(id: string, reading: number, mm: number | null): void {
    if (this.strands.has(id)) refuse(`strand ${id} has been started`);
    this.strands.set(id, { yarn: null, startedAt: reading, endedAt: null, mm, wraps: [] });
  }

  end(id: string, reading: number): void {
    const strand = this.inHand(id);
    if (strand.yarn === null) refuse(`strand ${id} has wrapped nothing`);
    strand.endedAt = reading;
  }

  wrap(id: string, yarn: string, wrap: WrapLaid): void {
    const { needle } = wrap;
    const strand = this.inHand(id);
    if (strand.yarn !== null && strand.yarn !== yarn) refuse(`strand ${id} is ${strand.yarn}, not ${yarn}`);
    if (this.wrapped.has(needle)) refuse(`${labelOf(needle)} has been wrapped for this row`);
    strand.yarn = yarn;
    this.wrapped.add(needle);
    strand.wraps.push(wrap);
  }

  /**
   * Where a ball comes to lie right beside another, both yarns turn there, and
   * a gap stays open unless they are crossed; nothing else can be crossed with it.
   */
  lay(id: string, yarn: string, needles: readonly number[], crosses: readonly string[]): void {
    for (const needle of needles) {
      if (this.laid.has(needle)) refuse(`${this.laid.get(needle)} lies in the hook of ${labelOf(needle)} already`);
      this.laid.set(needle, yarn);
    }
    if (this.inHooks.has(id)) refuse(`ball ${id} has been laid for this row`);
    const beside = [...this.inHooks].filter(([, others]) => areBeside(needles, others)).map(([other]) => other);
    const open = beside.find((other) => !crosses.includes(other));
    if (open !== undefined) refuse(`a gap opens between ball ${open} and ball ${id}: their yarns are not crossed`);
    const apart = crosses.find((other) => !beside.includes(other));
    if (apart !== undefined) refuse(`ball ${apart} does not lie right beside ball ${id}`);
    this.inHooks.set(id, needles);
  }

  /** The needles in whose hooks each ball lies for the coming row. */
  get balls(): ReadonlyMap<string, readonly number[]> {
    return this.inHooks;
  }

  isLaid(id: string): boolean {
    return this.inHooks.has(id);
  }

  /** The row has been knitted: what was laid and wrapped is in the fabric. */
  knitIn(): void {
    this.laid.clear();
    this.inHooks.clear();
    this.wrapped.clear();
  }

  /** Both ends of all strands; refuses where one still hangs. */
  ends(): YarnEnd[] {
    return [...this.strands].flatMap(([id, { yarn, startedAt, endedAt }]): YarnEnd[] => {
      if (yarn === null) refuse(`strand ${id} was cut and has wrapped nothing`);
      if (endedAt === null) refuse(`strand ${id} still hangs from its last wrap`);
      return [
        { yarn, end: 'first', reading: startedAt, of: 'strand' },
        { yarn, end: 'last', reading: endedAt, of: 'strand' },
      ];
    });
  }

  /** All strands that have wrapped, as they lie. */
  wrapping(): WrappingStrand[] {
    return [...this.strands].map(([id, { yarn, mm, wraps }]) => ({ id, yarn: yarn ?? '', mm, wraps }));
  }

  private inHand(id: string): Strand {
    const strand = this.strands.get(id);
    if (!strand) refuse(`strand ${id} has not been started`);
    if (strand.endedAt !== null) refuse(`strand ${id} has been worked in`);
    return strand;
  }
}

/** Whether one row of hooks begins where the other ends. */
function areBeside(one: readonly number[], other: readonly number[]): boolean {
  return Math.max(...one) + 1 === Math.min(...other) || Math.max(...other) + 1 === Math.min(...one);
}
