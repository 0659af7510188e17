/** The piece is wider than the bed, or stands beside it. */
import { widthOf } from '../../bed/index.ts';
import { needlesOf } from '../../knitting/on-bed.ts';
import { beyondBed, coarserBed, looserFabric, moveOntoBed, panelsOf } from '../../knitting/wide/index.ts';
import { gaugeAt, needlesTaken } from '../../piece/index.ts';
import type { BedRemedy, Finding } from '../types.ts';
import type { Inspected } from './question.ts';

/**
 * `wider-than-bed`: rows that leave the bed, planned as if it were long enough.
 * Where the piece would fit elsewhere on it, that is all there is to do.
 */
export function widerThanBed({ project, outline, gauges, groups }: Inspected): Finding[] {
  const { bed, offset } = project.piece;
  if (bed.needles === null) return [];
  const there = needlesOf(bed.needles);
  const beyond = beyondBed(outline, there);
  if (!beyond) return [];
  const { spans, row, edges } = beyond;
  const gauge = gaugeAt(gauges, row);
  const move = moveOntoBed(outline, offset, there);
  const stitches = widthOf(needlesTaken(outline));
  const remedy: BedRemedy =
    move !== null
      ? { kind: 'move', needles: move, offset: offset + move }
      : {
          kind: 'divide',
          panels: panelsOf(
            outline,
            groups.map(({ place }) => place),
            bed.needles,
          ),
          looser: looserFabric(stitches, gauge, bed.needles),
          coarser: coarserBed(stitches, gauge, bed),
        };
  const rows = [spans[0]?.[0] ?? row, spans.at(-1)?.[1] ?? row] as const;
  return [{ code: 'wider-than-bed', rows, spans, row, edges, bed: there, remedy }];
}
