import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alikeRound,
  bandsRound,
  closedPiece,
  gapsOnRing,
  figuresOf,
  stitchesIn,
  type BandRound,
  type PlacedBand,
} from '@shared/fabric/index.ts';
import { needleRound, type Ring, type Tube } from '@shared/piece/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import type { PlacementChoice } from '@shared/placement/index.ts';
import { closedPanelWords } from '@shared/words/closed-panel.ts';
import { plainText, words } from '@shared/words/index.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from './pieces.ts';

/**
 * Stitches without figure on all rows `first` … `last`, run by run round the
 * rolled picture from the seam to the right, the run across the seam last:
 * counted cell by cell, without the placing.
 */
function groundRuns(plan: Plan, tube: Tube, first: number, last: number): number[] {
  const rings = tube.rings.filter(({ row }) => row >= first && row <= last);
  const { stitches } = rings[0] as Ring;
  const isFigure = Array.from({ length: stitches }, (_, place) =>
    rings.some((ring) => {
      const { fabric } = plan;
      const cell = (ring.row - 1) * fabric.width + needleRound(tube, ring, place) - fabric.first;
      return fabric.cells[cell] !== 0;
    }),
  );
  const runs: number[] = [];
  let run = 0;
  for (const figure of isFigure) {
    if (figure) {
      if (run > 0) runs.push(run);
      run = 0;
    } else run++;
  }
  // The first run goes on where the last one ends: across the seam.
  return isFigure[0] ? [...runs, run] : [...runs.slice(1), run + (runs[0] ?? 0)];
}

function round(project: ProjectAt) {
  const plan = makePlan(pieceIn(project));
  return { plan, tube: closedPiece(plan, pieceIn(project)) };
}

const SOLID = ['XXX', 'XXX'];

describe('the gaps round the closed piece', () => {
  it('are those that are counted on the rolled picture, and across the seam that of the placing', () => {
    fc.assert(
      fc.property(
        fc.record({
          stitches: fc.integer({ min: 40, max: 90 }),
          copies: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 3 }),
          left: fc.nat(2),
          right: fc.nat(2),
          face: fc.constantFrom('knit' as const, 'purl' as const),
          kind: fc.constantFrom('seam' as const, 'even' as const),
        }),
        ({ stitches, copies, left, right, face, kind }) => {
          // One solid run of figure between one blank column at the left and two at the right.
          const project = projectWith({
            motif: ['.XX..', '.XX..'],
            copies: copies.map(() => 1),
            stitches,
            rows: 9,
            piece: { seamAllowance: { left, right }, finishedFace: face },
            band: { rule: { kind }, unit: 'whole', judge: 'figure' },
          });
          const { plan, tube } = round(project);
          const [band] = bandsRound(plan, tube);
          const [placed] = bandsOf(plan);
          if (!band || !placed) throw new Error('The band is not seen');
          const counted = groundRuns(plan, tube, placed.firstRow, placed.lastRow);
          expect([...band.gaps, band.acrossSeam]).toEqual(counted);
          expect(band.acrossSeam).toBe(placed.choices[placed.taken]?.acrossSeam);
          expect(counted.reduce((sum, gap) => sum + gap, 0) + 2 * copies.length).toBe(stitches - left - right);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('are judged in the same words on a card, on the command line and where the piece is closed', () => {
    const kinds = fc.constantFrom('seam' as const, 'even' as const);
    const given = fc.record({
      stitches: fc.integer({ min: 40, max: 90 }),
      copies: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 2, maxLength: 3 }),
      takes: fc.nat(2),
      judge: fc.constantFrom('figure' as const, 'blocks' as const),
      kind: kinds,
    });
    const JUDGEMENT =
      /even all the way round|the seam shows \d+ (more|fewer) than between the groups|the gaps differ by up to \d+(?=[.;])/;
    fc.assert(
      fc.property(given, ({ stitches, copies, takes, judge, kind }) => {
        const project = projectWith({
          motif: ['.XX..', '.XX..'],
          copies: copies.map(() => 1),
          stitches,
          rows: 9,
          piece: { seamAllowance: { left: takes, right: takes } },
          band: { rule: { kind }, unit: 'whole', judge },
        });
        const { plan, tube } = round(project);
        const [seen] = bandsRound(plan, tube);
        const [placed] = bandsOf(plan);
        if (!seen || !placed) throw new Error('The band is seen');
        const closed = JUDGEMENT.exec(plainText(closedPanelWords.band(seen, 0)))?.[0];
        expect(closed).toBeDefined();
        const choice = placed.choices[placed.taken] as PlacementChoice;
        // The last of what is said of all round: a head says what the rule asks, which is another thing.
        for (const said of [words.placement.why(choice), words.placement.whyBesideDrawing(choice)]) {
          expect(said).toContain(`; ${closed}`);
        }
      }),
      { numRuns: 100 },
    );
  });

  // common practice, no source: 120 stitches, two groups of three copies of 12
  // with the first column blank. The eye sees 13 / 24 / 13, so 26 across a
  // seam that takes nothing, and 24 across one that takes a stitch of each edge.
  it.each([
    { takes: 0, acrossSeam: 26 },
    { takes: 1, acrossSeam: 24 },
  ])('are $acrossSeam across the seam and 24 between the groups where it takes $takes of each edge', (given) => {
    const project = projectWith({
      motif: BLANK_FIRST_12_BY_31,
      copies: [3, 3],
      stitches: 120,
      rows: 60,
      piece: { seamAllowance: { left: given.takes, right: given.takes } },
      band: { rule: { kind: 'by-hand', first: [-48, 11] as never }, unit: 'whole' },
    });
    const { plan, tube } = round(project);
    expect(bandsRound(plan, tube)).toMatchObject([{ acrossSeam: given.acrossSeam, gaps: [24], shaped: null }]);
  });

  it('grow across the seam as a sleeve widens, and only there', () => {
    const project = projectWith({
      motif: SOLID,
      copies: [1, 1],
      group: { up: 4 },
      stitches: 30,
      rows: 20,
      piece: { shape: { kind: 'tapered', stitches: 30, stitchesAtTop: 38, rows: 21, straightRows: 1 } },
      band: { position: { kind: 'from-row', row: 3 }, unit: 'whole' },
    });
    const { plan, tube } = round(project);
    const [band] = bandsRound(plan, tube);
    // Rows 3–10 of 8 stitches more in 20 rows and one straight: two more on row 5, two more on row 10.
    expect(tube.rings.slice(2, 10).map(({ stitches }) => stitches)).toEqual([30, 30, 32, 32, 32, 32, 32, 34]);
    expect(band?.shaped).toEqual({ row: 10, stitches: (band?.acrossSeam ?? 0) + 4 });
    const gaps = tube.rings
      .slice(2, 10)
      .map((ring) => gapsOnRing(tube, ring, figuresOf(bandsOf(plan)[0] as PlacedBand)).map(stitchesIn));
    expect(new Set(gaps.map(([between]) => between)).size).toBe(1);
  });

  it('are not given for a band inside a folded hem', () => {
    const project = projectWith({
      motif: SOLID,
      copies: [1],
      stitches: 20,
      rows: 20,
      piece: { hemRows: 12 },
      band: { position: { kind: 'from-row', row: 2 }, unit: 'whole' },
    });
    const { plan, tube } = round(project);
    expect(tube.rings[0]?.row).toBe(7);
    expect(bandsRound(plan, tube)).toEqual([null]);
  });

  it('are said once for bands that are alike', () => {
    const project = projectWith({ motif: SOLID, copies: [1, 1], stitches: 30, rows: 40 });
    const [band] = bandsOf(project);
    if (!band) throw new Error('There is a band');
    const at = (row: number): typeof band => ({ ...band, position: { kind: 'from-row', row } });
    const { plan, tube } = round({
      ...project,
      patterns: [at(1), at(11), { ...at(21), groups: band.groups.slice(1) }],
    });
    const [two, one] = alikeRound(bandsRound(plan, tube).filter((seen) => seen !== null));
    // The solid motif repeats at every stitch: two groups of 1 on 30 leave 28, 14 and 14; one leaves 29 all round.
    expect(plainText(closedPanelWords.band(two?.band as BandRound, two?.more ?? 0))).toBe(
      'Rows 1–2 and 1 more pattern band alike: across the seam 14, between the groups 14; even all the way round.',
    );
    expect(plainText(closedPanelWords.band(one?.band as BandRound, one?.more ?? 0))).toBe(
      'Rows 21–22: across the seam 29, with one group all round.',
    );
  });

  it.each([
    {
      acrossSeam: 22,
      gaps: [24],
      phrase: 'across the seam 22, between the groups 24; the seam shows 2 fewer than between the groups',
    },
    {
      acrossSeam: 25,
      gaps: [24, 24],
      phrase: 'across the seam 25, between the groups 24; the seam shows 1 more than between the groups',
    },
    {
      acrossSeam: 24,
      gaps: [23, 25],
      phrase: 'across the seam 24, between the groups 23 to 25; the gaps differ by up to 2',
    },
    { acrossSeam: -2, gaps: [24], phrase: 'the seam allowance takes 2 of the figure' },
  ])('are told apart: $phrase', ({ acrossSeam, gaps, phrase }) => {
    const seen = { rows: { first: 5, last: 5 }, acrossSeam, gaps, shaped: null };
    expect(plainText(closedPanelWords.band(seen, 0))).toBe(`Row 5: ${phrase}.`);
  });
});
