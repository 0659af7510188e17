/** Rows that are taken over from those a copy below, against the same rows each worked out by itself. */
import { describe, expect, it } from 'vitest';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import type { Shape } from '@shared/piece/index.ts';
import { pieceIn, projectAt, sampleProject, startAllOver } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';

const sample = projectAt(sampleProject());
const [motif] = sample.motifs;
if (!motif) throw new Error('The sample has a motif');

const SHAPES: readonly Shape[] = [
  { kind: 'rectangle', stitches: 75, rows: 140 },
  { kind: 'tapered', stitches: 60, stitchesAtTop: 84, rows: 160, straightRows: 60 },
];

/** A step of a whole copy is none to the eye, and no row is known to be as another. */
function planned(shape: Shape, step: number, endNeedles: boolean, isBehindFigure: boolean): Plan {
  const anchors = { longest: 4, isBehindFigure, byHand: [] };
  return makePlan(
    pieceIn(
      settled(sample, {
        piece: { ...sample.piece, shape },
        patterns: [{ ...startAllOver(motif?.id ?? '', 3), unit: 'whole', step, endNeedles, anchors }],
      }),
    ),
  );
}

describe('rows of an all-over that are the same again', () => {
  for (const shape of SHAPES) {
    for (const endNeedles of [false, true]) {
      for (const isBehindFigure of [false, true]) {
        it(`have the same anchors: ${shape.kind}, end needles ${endNeedles ? 'on' : 'off'}${isBehindFigure ? ', behind the figure too' : ''}`, () => {
          const taken = planned(shape, 0, endNeedles, isBehindFigure);
          const worked = planned(shape, motif.grid.width, endNeedles, isBehindFigure);
          expect(taken.rows.map(({ anchors }) => anchors)).toEqual(worked.rows.map(({ anchors }) => anchors));
          expect(taken.fabric).toEqual(worked.fabric);
          const loose = ({ rows, looseFloats }: Plan) => rows.map((_, at) => looseFloats[at] ?? []);
          expect(loose(taken)).toEqual(loose(worked));
          expect(taken.rows.some(({ anchors }) => anchors.length > 0)).toBe(true);
        });
      }
    }
  }
});
