/** The row-by-row plan of a piece. */
import { withAnchors } from '../anchors/index.ts';
import { needlesOf, type Slot } from '../bed/index.ts';
import {
  asChosenUnseen,
  endNeedleRowsOf,
  makeFabric,
  placePatterns,
  runOn,
  withEndNeedles,
  type EndNeedles,
  type PlacedGroup,
  type PlacedPatterns,
} from '../fabric/index.ts';
import { beyondBed, gaugesOf, needlesTaken, sectionAt, type Outline, type SectionSpan } from '../piece/index.ts';
import { allOversOf, bandsOf, copiesIn } from '../pattern/index.ts';
import type { KnitPiece } from '../project/index.ts';
import {
  carriesOf,
  layStrands,
  mendFloats,
  wrapsOf,
  type Carry,
  type LaidStrands,
  type Mended,
  type LaidRow,
  type OwnBall,
  type StrandId,
  type Ways,
} from '../strands/index.ts';
import { finishingOf, loopsOf, texOf, wrapStrandsOf, yarnNeed, type StrandTotal } from '../yarn/index.ts';
import { mendingByRow } from './mending.ts';
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
 *
 * `placed` is where the patterns of the piece lie, if that is known: half of the
 * work is finding it.
 */
export function makePlan(piece: KnitPiece, placed: PlacedPatterns = placePatterns(piece)): Plan {
  const gauges = gaugesOf(piece);
  const { outline, sections, extents, patterns } = placed;
  const groups = bandsOf(placed).flatMap((band) => band.groups);
  const main = piece.mainYarn;
  const endNeedleRows = endNeedleRowsOf(piece, placed);
  const ownBalls = ownBallsOf(piece, groups, outline);
  const { chooses, bed } = piece.machine;
  const drawn = makeFabric(outline, copiesIn(placed), main);
  const figure = chooses === 'ahead-unseen' ? asChosenUnseen(drawn, outline, main) : drawn;
  const { fabric: plain, endNeedles } = withEndNeedles(figure, outline, main, endNeedleRows, rowsOf(ownBalls), chooses);
  const wishes = piece.patterns.map(({ anchors }) => anchors);
  const { fabric, ...anchors } = withAnchors(plain, figure, {
    placed,
    wishes,
    main,
    ownBalls,
    endNeedleRows,
    chooses,
  });

  const settings = { gauges, floatLimit: piece.floatLimit };
  const mending = mendingByRow(piece, placed);
  const lying = layStrands(fabric, { main, outline, ownBalls, startSide: piece.startSide, ...settings });
  const mended = mendFloats(lying.rows, fabric, { ...settings, mendingOf: mending.ofFloats });
  const laid = { ...lying, rows: mended.rows };
  const ways = carriesOf(laid, settings, mending.isCutAside);
  const wraps = wrapsOf(fabric, laid, { main, isAllOver: isAllOverIn(placed), seamAllowance: piece.seamAllowance });
  const rows = planRows(mended, sections, endNeedles, anchors.rows, ways, wraps);
  const loops = loopsOf(piece, texOf(piece.yarns[main]));
  return {
    outline,
    sections,
    extents,
    patterns,
    gauges,
    beyondBed: bed.needles === null ? null : beyondBed(outline, needlesOf(bed.needles)),
    groups,
    ownBalls,
    endNeedleRows,
    fabric,
    looseFloats: anchors.loose,
    rows,
    wrapStrands: wrapStrandsOf(laid, wraps, { ...settings, loopMmOf: loops.mmOf }),
    yarn: yarnNeed(totalsOf(laid, ways), {
      yarns: piece.yarns,
      loops,
      finishing: finishingOf(piece, outline, gauges),
      margin: piece.yarnMargin / 100,
    }),
  };
}

/**
 * The groups with a ball of their own. On rows where no other group lies
 * further out on a side, the ball reaches as far as the piece does there, so
 * that an edge needle is knitted from it.
 */
function ownBallsOf(piece: KnitPiece, groups: readonly PlacedGroup[], outline: Outline): OwnBall[] {
  const given = bandsOf(piece).flatMap((band) => band.groups);
  const taken = needlesTaken(outline);
  return groups.flatMap((own, group) => {
    if (!given[group]?.hasOwnBall) return [];
    return stretchesOf(own, groups).map(({ firstRow, lastRow }) => {
      const beside = groups.filter((other) => other.firstRow <= lastRow && firstRow <= other.lastRow);
      const isLeftmost = beside.every(({ block }) => block.first >= own.block.first);
      const isRightmost = beside.every(({ block }) => block.last <= own.block.last);
      const first = isLeftmost && taken.first < own.block.first ? taken.first : own.block.first;
      const last = isRightmost && taken.last > own.block.last ? taken.last : own.block.last;
      return { group, first, last, firstRow, lastRow };
    });
  });
}

/** The rows of a group, parted where another begins or ends. */
function stretchesOf(
  { firstRow, lastRow }: PlacedGroup,
  groups: readonly PlacedGroup[],
): { readonly firstRow: number; readonly lastRow: number }[] {
  const begins = new Set([firstRow, ...groups.flatMap((other) => [other.firstRow, other.lastRow + 1])]);
  const inside = [...begins].filter((row) => row >= firstRow && row <= lastRow).sort((a, b) => a - b);
  return inside.map((row, index) => ({ firstRow: row, lastRow: (inside[index + 1] ?? lastRow + 1) - 1 }));
}

function rowsOf(balls: readonly OwnBall[]): ReadonlySet<number> {
  const rows = new Set<number>();
  for (const { firstRow, lastRow } of balls) for (let row = firstRow; row <= lastRow; row++) rows.add(row);
  return rows;
}

/** Whether a needle of a row belongs to an all-over pattern. */
function isAllOverIn(placed: PlacedPatterns): (row: number, needle: Slot) => boolean {
  const allOvers = allOversOf(placed);
  return (row, needle) =>
    allOvers.some((place) => {
      const run = row >= place.firstRow && row <= place.lastRow ? runOn(place, placed.outline, row) : null;
      return run !== null && needle >= run.first && needle <= run.last;
    });
}

function planRows(
  { rows, lifts, chains }: Mended<LaidRow>,
  sections: readonly SectionSpan[],
  endNeedles: readonly (EndNeedles | undefined)[],
  anchors: readonly (PlanRow['anchors'] | undefined)[],
  { carries, cuts }: Ways,
  wraps: readonly (PlanRow['wraps'] | undefined)[],
): PlanRow[] {
  return rows.map(({ from, edges, contrast, isMainKnitted, floats, isOver }, index) => ({
    row: index + 1,
    section: sectionAt(sections, index + 1).name,
    from,
    edges,
    contrast,
    isMainKnitted,
    endNeedles: endNeedles[index] ?? null,
    anchors: anchors[index] ?? NONE,
    wraps: wraps[index] ?? NONE,
    floats,
    isOver,
    carries: carries[index] ?? NONE,
    cuts: cuts[index] ?? NONE,
    lifts: lifts[index] ?? NONE,
    chains: chains[index] ?? NONE,
  }));
}

function totalsOf(laid: LaidStrands, { carries, cuts }: Ways): StrandTotal[] {
  const byStrand = new Map(laid.strands.map((strand) => [strand, { carries: [] as Carry[], cuts: 0 }]));
  const of = (strand: StrandId): { carries: Carry[]; cuts: number } =>
    byStrand.get(strand) as { carries: Carry[]; cuts: number };
  for (const row of carries) for (const carry of row ?? NONE) of(carry.strand).carries.push(carry);
  for (const row of cuts) for (const { strand } of row ?? NONE) of(strand).cuts++;
  return laid.strands.map((strand, index) => ({
    strand,
    byGauge: laid.totals.map(({ gauge, stitches, floated }) => ({
      gauge,
      stitches: stitches[index] as number,
      floated: floated[index] as number,
    })),
    ...of(strand),
    firstRow: laid.firstRow[index] as number,
    lastRow: laid.lastRow[index] as number,
  }));
}
