/** The row-by-row plan of a piece. */
import { withAnchors } from '../anchors/index.ts';
import { needlesOf, type Slot } from '../bed/index.ts';
import {
  endNeedleRowsOf,
  figureOf,
  knitPatterns,
  knitPatternsAgain,
  placePatterns,
  runOn,
  type PlacedPatterns,
} from '../fabric/index.ts';
import { beyondBed, gaugesOf } from '../piece/index.ts';
import { allOversOf, bandsOf } from '../pattern/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { layAgain, layStrands, mendFloats, type LaidStrands, type StrandId, type Ways } from '../strands/index.ts';
import { finishingOf, loopsOf, texOf, wrapStrandsOf, yarnNeed, type StrandTotal } from '../yarn/index.ts';
import { mendingByRow } from './mending.ts';
import { ownBallsOf, rowsOfBalls } from './own-balls.ts';
import { planRows } from './plan-rows.ts';
import { keepMade, onwardSince, rowsSince, sincePlan, type Since } from './since.ts';
import type { Plan } from './types.ts';

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
 * work is finding it. Else `before` may be a plan that was made, best of the
 * piece before it was painted: what is still the same is taken from it, and the
 * plan is the one that would be made without it.
 */
export function makePlan(piece: KnitPiece, placedAlready?: PlacedPatterns, before: Plan | null = null): Plan {
  const since = before && !placedAlready ? sincePlan(piece, before) : null;
  const placed = placedAlready ?? placePatterns(piece, since?.painted);
  const gauges = gaugesOf(piece);
  const { outline, sections, extents, patterns } = placed;
  const groups = bandsOf(placed).flatMap((band) => band.groups);
  const main = piece.mainYarn;
  const endNeedleRows = since?.plan.endNeedleRows ?? endNeedleRowsOf(piece, placed);
  const ownBalls = ownBallsOf(piece, groups, outline);
  const { chooses, bed } = piece.machine;
  const selecting = { outline, main, on: endNeedleRows, parted: rowsOfBalls(ownBalls), chooses };
  const knittedAgain = since && knitPatternsAgain(placed, selecting, since.knitted, since.copies);
  const knitted = knittedAgain ?? knitPatterns(placed, selecting);
  const wishes = piece.patterns.map(({ anchors }) => anchors);
  const anchoring = { placed, wishes, main, ownBalls, endNeedleRows, chooses };
  const isAnchored = wishes.some((wish) => wish !== null);
  const drawn = isAnchored ? figureOf(knitted, main) : knitted.fabric;
  const { fabric, ...anchors } = withAnchors(knitted.fabric, drawn, anchoring);
  const rowsAnew = knittedAgain && rowsSince(since as Since, fabric, anchors.rows, knittedAgain.painted);

  const settings = { gauges, floatLimit: piece.floatLimit };
  const mending = mendingByRow(piece, placed);
  const laying = { main, outline, ownBalls, startSide: piece.startSide, ...settings };
  const laidAgain = rowsAnew && layAgain(fabric, laying, (since as Since).laid, rowsAnew);
  const lying = laidAgain ?? layStrands(fabric, laying);
  const mended = mendFloats(lying.rows, fabric, { ...settings, mendingOf: mending.ofFloats });
  const isMended = mended.rows !== lying.rows;
  const laid = { ...lying, rows: mended.rows };
  const rules = { main, isAllOver: isAllOverIn(placed), seamAllowance: piece.seamAllowance };
  const painted = laidAgain && !isMended ? rowsAnew : null;
  const { changed, ...onward } = onwardSince(since, fabric, laid, settings, mending.isCutAside, rules, painted);
  const { ways, wraps } = onward;
  const parts = { mended, sections, endNeedles: knitted.endNeedles, anchors: anchors.rows, ways, wraps };
  const rows = planRows(parts, since && changed ? { rows: since.plan.rows, changed } : null);
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
    // What had no wraps has no strands for them.
    wrapStrands:
      wraps === since?.onward?.wraps && since.plan.wrapStrands.length === 0
        ? since.plan.wrapStrands
        : wrapStrandsOf(laid, wraps, { ...settings, loopMmOf: loops.mmOf }),
    yarn: yarnNeed(totalsOf(laid, ways), {
      yarns: piece.yarns,
      loops,
      finishing: finishingOf(piece, outline, gauges),
      margin: piece.yarnMargin / 100,
    }),
  };
  keepMade(plan, { piece, knitted, laid: lying, onward: isMended ? null : onward });
  return plan;
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

function totalsOf(laid: LaidStrands, ways: Ways): StrandTotal[] {
  const { carriesMm, cuts } = waysInAll(laid.strands, ways);
  return laid.strands.map((strand, index) => ({
    strand,
    byGauge: laid.totals.map(({ gauge, stitches, floated }) => ({
      gauge,
      stitches: stitches[index] as number,
      floated: floated[index] as number,
    })),
    carriesMm: carriesMm[index] as number,
    cuts: cuts[index] as number,
    firstRow: laid.firstRow[index] as number,
    lastRow: laid.lastRow[index] as number,
  }));
}

/** By strand: the length of all its carries (mm), and how often it is cut. */
interface WaysInAll {
  readonly of: LaidStrands['strands'];
  readonly carriesMm: readonly number[];
  readonly cuts: readonly number[];
}

/** Few cells that are painted change the way of a strand. */
const inAll = new WeakMap<Ways, WaysInAll>();

function waysInAll(strands: LaidStrands['strands'], ways: Ways): WaysInAll {
  const known = inAll.get(ways);
  if (known?.of === strands) return known;
  const carriesMm = strands.map(() => 0);
  const cuts = strands.map(() => 0);
  const add = (sums: number[], strand: StrandId, more: number): void => {
    const at = strands.indexOf(strand);
    sums[at] = (sums[at] as number) + more;
  };
  for (const row of ways.carries) if (row) for (const { strand, mm } of row) add(carriesMm, strand, mm);
  for (const row of ways.cuts) if (row) for (const { strand } of row) add(cuts, strand, 1);
  const all = { of: strands, carriesMm, cuts };
  inAll.set(ways, all);
  return all;
}
