/** Wraps beside the figure, each with the strand that makes it. */
import type { StrandId, Wrap } from '../../strands/index.ts';
import type { WrapStrand } from '../../yarn/index.ts';
import type { Work } from './work.ts';

interface Numbered extends WrapStrand {
  /** From 1, in the order in which they are taken up. */
  readonly number: number;
}

function numbered({ plan }: Work): readonly Numbered[] {
  return plan.wrapStrands.map((strand, index) => ({ ...strand, number: index + 1 }));
}

/** Works in the strands that have made their last wrap. */
export function endStrands(work: Work): void {
  for (const { number, lastRow, mm } of numbered(work)) {
    work.do(lastRow, { kind: 'strand', strand: number, at: 'end', mm });
  }
}

export function wrapNeedles(work: Work): void {
  const byStrand = new Map<StrandId, Numbered[]>();
  for (const strand of numbered(work)) {
    const known = byStrand.get(strand.strand);
    if (known) known.push(strand);
    else byStrand.set(strand.strand, [strand]);
  }
  const started = new Set<number>();
  for (const { row, wraps } of work.plan.rows) {
    for (const wrap of wraps) {
      const strand = strandOf(byStrand.get(wrap.strand) ?? [], wrap, row);
      if (!started.has(strand.number)) {
        started.add(strand.number);
        work.do(row - 1, { kind: 'strand', strand: strand.number, at: 'start', mm: strand.mm });
      }
      const { needle, edge } = wrap;
      work.do(row - 1, { kind: 'wrap', needle, edge, yarn: work.piece.mainYarn, strand: strand.number });
    }
  }
}

/** The strand that wraps an edge on a row: its own, or one folded in two for both. */
function strandOf(strands: readonly Numbered[], { edge }: Wrap, row: number): Numbered {
  const reaching = strands.filter(({ firstRow, lastRow }) => firstRow <= row && row <= lastRow);
  const strand = reaching.find((one) => one.edge === edge) ?? reaching.find((one) => one.edge === 'both');
  if (!strand) throw new RangeError(`No strand wraps the ${edge} on row ${row}`);
  return strand;
}
