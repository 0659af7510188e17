/** The piece is wider than the bed, or stands beside it. */
import { widthOf } from '../bed/index.ts';
import { gaugeAt, moveOntoBed, needlesTaken } from '../piece/index.ts';
import type { Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { coarserBed, looserFabric } from './coarser-bed.ts';
import type { BedRemedy, Finding } from './finding.ts';
import { inspected, type Inspected } from './inspected.ts';
import { panelsOf } from './panels.ts';

/**
 * `wider-than-bed`: rows that leave the bed, planned as if it were long enough.
 * Where the piece would fit elsewhere on it, that is all there is to do.
 */
export function widerThanBed({ piece, outline, gauges, groups, beyondBed }: Inspected): Finding[] {
  if (!beyondBed) return [];
  const { offset, machine } = piece;
  const { spans, row, edges, bed } = beyondBed;
  const needles = widthOf(bed);
  const gauge = gaugeAt(gauges, row);
  const move = moveOntoBed(outline, offset, bed);
  const stitches = widthOf(needlesTaken(outline));
  const remedy: BedRemedy =
    move !== null
      ? { kind: 'move', needles: move, offset: offset + move }
      : {
          kind: 'divide',
          panels: panelsOf(outline, groups, needles),
          looser: looserFabric(stitches, gauge, needles),
          coarser: coarserBed(stitches, gauge, machine.bed),
        };
  const rows = [spans[0]?.[0] ?? row, spans.at(-1)?.[1] ?? row] as const;
  return [{ code: 'wider-than-bed', rows, spans, row, edges, bed, remedy }];
}

/** The finding about the bed alone, or null where the bed holds the piece. `plan` is that of `piece`. */
export function bedFinding(piece: KnitPiece, plan: Plan): Extract<Finding, { readonly code: 'wider-than-bed' }> | null {
  const [found] = widerThanBed(inspected(piece, plan));
  return found?.code === 'wider-than-bed' ? found : null;
}
