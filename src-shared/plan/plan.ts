/** The row-by-row plan of a piece. */
import { needlesOf } from '../bed/index.ts';
import { makeFabric, placePatterns, type PlacedBand, type PlacedPatterns } from '../fabric/index.ts';
import { beyondBed, gaugesOf, sectionAt, type SectionSpan } from '../piece/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { carriesOf, layStrands, wrapsOf, type Carry, type LaidStrands, type OwnBall } from '../strands/index.ts';
import { loopLengthMm, wrapStrandsOf, yarnNeed, type StrandTotal } from '../yarn/index.ts';
import { hemRowsOf } from './hem-notes.ts';
import type { Plan, PlanRow } from './types.ts';

const NONE: readonly never[] = [];

/**
 * Works out everything a piece asks for: where the groups lie, what every
 * needle of every row knits, where each strand floats, is carried and needs a
 * wrap, and how much yarn it takes.
 *
 * Throws `ProblemError` with the code of what cannot be knitted as described:
 * `shaping-impossible`, `hem-longer-than-piece`, `sections-longer-than-piece`,
 * `no-figure`, `section-missing`, `motif-taller-than-section`, `motif-leaves-section`,
 * `rows-outside-piece`, `choice-unknown`,
 * `bands-overlap`, `fill-rows-turned`, `fill-without-room`,
 * `fill-overlaps-band`, `fills-overlap`, and what placing
 * throws.
 */
export function makePlan(piece: KnitPiece): Plan {
  const gauges = gaugesOf(piece);
  const placed = placePatterns(piece);
  const { outline, sections, bands, fills } = placed;
  const groups = bands.flatMap((band) => band.groups);
  const main = piece.mainYarn;
  const fabric = makeFabric(outline, groups, fills, main);

  const endNeedleRows = endNeedleRowsOf(piece, placed);
  const ownBalls = ownBallsOf(piece, bands);
  const settings = { gauges, floatLimit: piece.floatLimit, endNeedleRows };
  const laid = layStrands(fabric, {
    main,
    outline,
    ownBalls,
    startSide: piece.startSide,
    ...settings,
  });
  const carries = carriesOf(laid, settings);
  const wraps = wrapsOf(fabric, laid, { main, ...settings });
  const rows = planRows(laid, sections, carries, wraps);
  return {
    ...placed,
    gauges,
    beyondBed: piece.bed.needles === null ? null : beyondBed(outline, needlesOf(piece.bed.needles)),
    hem: hemRowsOf(piece.hem, sections, [...bands, ...fills]),
    groups,
    ownBalls,
    endNeedleRows,
    fabric,
    rows,
    wrapStrands: wrapStrandsOf(laid, wraps, { ...settings, loopMmOf: loopLengthMm }),
    yarn: yarnNeed(totalsOf(laid, carries), piece.yarns),
  };
}

/** The rows of the patterns for which end-needle selection is on. Where two share a row, the switch has one position: on. */
function endNeedleRowsOf(piece: KnitPiece, { bands, fills }: PlacedPatterns): ReadonlySet<number> {
  const on = [
    ...bands.filter((_, band) => piece.bands[band]?.endNeedles),
    ...fills.filter(({ fill }) => piece.fills[fill]?.endNeedles),
  ];
  const rows = new Set<number>();
  for (const { firstRow, lastRow } of on) for (let row = firstRow; row <= lastRow; row++) rows.add(row);
  return rows;
}

function ownBallsOf(piece: KnitPiece, bands: readonly PlacedBand[]): OwnBall[] {
  const given = piece.bands.flatMap((band) => band.groups);
  return bands
    .flatMap((band) => band.groups)
    .flatMap(({ block, firstRow, lastRow }, group) =>
      given[group]?.hasOwnBall ? [{ group, first: block.first, last: block.last, firstRow, lastRow }] : [],
    );
}

function planRows(
  laid: LaidStrands,
  sections: readonly SectionSpan[],
  carries: readonly (PlanRow['carries'] | undefined)[],
  wraps: readonly (PlanRow['wraps'] | undefined)[],
): PlanRow[] {
  return laid.rows.map(({ from, edges, contrast, isMainKnitted, floats, isOver }, index) => ({
    row: index + 1,
    section: sectionAt(sections, index + 1).name,
    from,
    edges,
    contrast,
    isMainKnitted,
    wraps: wraps[index] ?? NONE,
    floats,
    isOver,
    carries: carries[index] ?? NONE,
  }));
}

function totalsOf(laid: LaidStrands, carries: readonly (readonly Carry[] | undefined)[]): StrandTotal[] {
  const byStrand = new Map(laid.strands.map((strand) => [strand, [] as Carry[]]));
  for (const row of carries) for (const carry of row ?? NONE) byStrand.get(carry.strand)?.push(carry);
  return laid.strands.map((strand, index) => ({
    strand,
    byGauge: laid.totals.map(({ gauge, stitches, floated }) => ({
      gauge,
      stitches: stitches[index] as number,
      floated: floated[index] as number,
    })),
    carries: byStrand.get(strand) ?? [],
  }));
}
