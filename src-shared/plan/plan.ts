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
  mendFloats,
  type Carry,
  type LaidStrands,
  type Mended,
  type LaidRow,
  type OwnBall,
  type StrandId,
  type Ways,
  type Wrap,
} from '../strands/index.ts';
import { finishingOf, loopsOf, texOf, wrapStrandsOf, yarnNeed, type StrandTotal } from '../yarn/index.ts';
import { mendingByRow } from './mending.ts';
import { onwardAgain, strandsAgain, type StrandsOfPiece } from './strands-again.ts';
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
 * work is finding it. `before` is a plan that was made, best of the piece before
 * it was painted: rows that are still the same are taken from it, and the plan
 * is the one that would be made without it.
 */
export function makePlan(
  piece: KnitPiece,
  placed: PlacedPatterns = placePatterns(piece),
  before: Plan | null = null,
): Plan {
  const strandsBefore = before && isOnSameRows(placed, before) ? (strandsOfPlan.get(before) ?? null) : null;
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
  const laying = { main, outline, ownBalls, startSide: piece.startSide, ...settings };
  const { laid: lying, painted } = strandsAgain(piece, fabric, laying, strandsBefore);
  const mended = mendFloats(lying.rows, fabric, { ...settings, mendingOf: mending.ofFloats });
  const isMended = mended.rows !== lying.rows;
  const laid = { ...lying, rows: mended.rows };
  const rules = { main, isAllOver: isAllOverIn(placed), seamAllowance: piece.seamAllowance };
  const onward = onwardAgain(
    fabric,
    laid,
    settings,
    mending.isCutAside,
    rules,
    isMended ? null : painted,
    strandsBefore,
  );
  const { ways, wraps } = onward;
  const kept = painted && before && !isMended && strandsBefore?.onward ? before.rows : null;
  const rows = planRows(mended, sections, endNeedles, anchors.rows, ways, wraps, kept);
  const loops = loopsOf(piece, texOf(piece.yarns[main]));
  const plan = {
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
  strandsOfPlan.set(plan, { piece, fabric, laid: lying, onward: isMended ? null : onward });
  return plan;
}

function isOnSameRows({ patterns }: PlacedPatterns, before: PlacedPatterns): boolean {
  return patterns.every(({ firstRow, lastRow }, index) => {
    const other = before.patterns[index];
    return other?.firstRow === firstRow && other.lastRow === lastRow;
  });
}

/** What a later plan can go on from. */
const strandsOfPlan = new WeakMap<Plan, StrandsOfPiece>();

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

/** `before`: rows that a plan has already; those that say the same are taken. */
function planRows(
  { rows, lifts, chains }: Mended<LaidRow>,
  sections: readonly SectionSpan[],
  endNeedles: readonly (EndNeedles | undefined)[],
  anchors: readonly (PlanRow['anchors'] | undefined)[],
  { carries, cuts }: Ways,
  wraps: readonly (readonly Wrap[] | undefined)[],
  before: readonly PlanRow[] | null,
): PlanRow[] {
  return rows.map(({ from, edges, contrast, isMainKnitted, floats, isOver }, index) => {
    const known = before?.[index];
    if (
      known?.floats === floats &&
      known.contrast === contrast &&
      known.wraps === (wraps[index] ?? NONE) &&
      known.carries === (carries[index] ?? NONE) &&
      known.cuts === (cuts[index] ?? NONE) &&
      isSameList(known.anchors, anchors[index] ?? NONE) &&
      known.endNeedles?.isBlank === endNeedles[index]?.isBlank &&
      isSameList(known.endNeedles?.needles ?? NONE, endNeedles[index]?.needles ?? NONE)
    ) {
      return known;
    }
    return {
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
    };
  });
}

function isSameList(one: readonly number[], other: readonly number[]): boolean {
  return one === other || (one.length === other.length && one.every((item, index) => item === other[index]));
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
