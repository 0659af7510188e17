/** Where on the piece findings are. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { bedFinding, placesOf, type Finding } from '@shared/check/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';
import { checkedPlan, COLUMNS, onlyFindings } from './found.ts';

/** 10 stitches, then 14 from row 4 on: L5–R5, and L7–R7. */
const STEPPED = makePlan(
  pieceIn(
    projectWith({
      motif: ['XX'],
      copies: [1],
      stitches: 10,
      rows: 6,
      piece: { shape: { kind: 'steps', stitches: 10, rows: 6, steps: [{ row: 4, left: 2, right: 2 }] } },
    }),
  ),
);

describe('the places of findings', () => {
  it('are the needles and rows of floats', () => {
    const plan = checkedPlan(COLUMNS);
    const [floats] = onlyFindings(plan, 'long-floats');
    // Columns on L5 and R5: eight needles between them, on rows 2–4.
    expect(floats && placesOf(floats, plan)).toEqual([{ rows: [2, 4], needles: { first: -4, last: 3 } }]);
  });

  it('are all that stands beyond both ends of the bed, span by span', () => {
    const project = projectWith({
      motif: ['XX'],
      copies: [1],
      stitches: 10,
      rows: 10,
      bed: { needles: 12, pitchMm: 4.5 },
      // L5–R5; L7–R6 from row 3 on, and L6–R6 again from row 7: on a bed of L6–R6 only L7 is too many.
      piece: {
        shape: {
          kind: 'steps',
          stitches: 10,
          rows: 10,
          steps: [
            { row: 3, left: 2, right: 1 },
            { row: 7, left: -1, right: 0 },
          ],
        },
      },
    });
    const plan = makePlan(pieceIn(project));
    const finding = bedFinding(pieceIn(project), plan) as Finding;
    const places = placesOf(finding, plan);
    expect(places).toHaveLength(1);
    expect(places[0]?.needles).toEqual({ first: -7, last: -7 });
  });

  it.each<[string, Finding, ReturnType<typeof placesOf>]>([
    [
      'the stitches at an edge that the seam takes, wherever it is on the rows',
      { code: 'figure-in-seam', side: 'left', stitches: 2, rows: [2, 5] },
      [{ rows: [2, 5], needles: { first: -7 as Slot, last: -4 as Slot } }],
    ],
    [
      'the edge stitches of both edges',
      { code: 'end-needles-seen', edge: 'both', count: 2, seam: { left: 1, right: 1 }, rows: [1, 2] },
      [
        { rows: [1, 2], needles: { first: -5 as Slot, last: -5 as Slot } },
        { rows: [1, 2], needles: { first: 4 as Slot, last: 4 as Slot } },
      ],
    ],
    [
      'from one needle to the other that should be alike',
      { code: 'off-fixed-places', one: 3 as Slot, other: -2 as Slot, repeat: 5, rows: [3, 3] },
      [{ rows: [3, 3], needles: { first: -2 as Slot, last: 3 as Slot } }],
    ],
    [
      'whole rows where it is of no needles',
      { code: 'no-set-up-row', rows: [1, 1] },
      [{ rows: [1, 1], needles: null }],
    ],
  ])('are %s', (_, finding, places) => {
    expect(placesOf(finding, STEPPED)).toEqual(places);
  });

  it('are the block of the group that is meant', () => {
    const cut: Finding = { code: 'cut-copies', rows: [1, 2], copies: 1, group: 0 };
    expect(placesOf(cut, STEPPED)[0]?.needles).toEqual(STEPPED.groups[0]?.block);
  });
});

it('there is nothing to find of a bed that holds the piece', () => {
  const piece = pieceIn(COLUMNS);
  expect(bedFinding(piece, makePlan(piece))).toBeNull();
});
