/** The row-by-row plan of a project. */
import { gaugesOf, sectionAt, type Section } from '../piece/index.ts';
import { mainYarn, type Project } from '../project/project.ts';
import {
  carriesOf,
  findingsOf,
  layStrands,
  wrapStrandsOf,
  wrapsOf,
  type Carry,
  type LaidStrands,
  type OwnBall,
} from '../strands/index.ts';
import { loopLengthMm, yarnNeed, type StrandTotal } from '../yarn/index.ts';
import type { LaidBand } from './bands.ts';
import { makeFabric } from './fabric.ts';
import { hemRowsOf } from './hem-notes.ts';
import { layPiece } from './lay-piece.ts';
import type { Plan, PlanRow } from './types.ts';

const NONE: readonly never[] = [];

/**
 * Works out everything a project asks for: where the groups lie, what every
 * needle of every row knits, where each strand floats, is carried and needs a
 * wrap, what will go wrong, and how much yarn it takes.
 *
 * Throws `ProblemError` with the code of what cannot be knitted as described:
 * `shaping-impossible`, `hem-longer-than-piece`, `sections-longer-than-piece`,
 * `motif-missing`, `no-figure`, `section-missing`, `motif-taller-than-section`,
 * `motif-leaves-section`, `rows-outside-piece`, `choice-unknown`,
 * `bands-overlap`, `fill-rows-turned`, `fill-without-room`,
 * `fill-overlaps-band`, `fills-overlap`, and what placing
 * throws.
 */
export function makePlan(project: Project): Plan {
  const { piece } = project;
  const gauges = gaugesOf(piece);
  const { outline, sections, extents, bands, fills } = layPiece(project);
  const groups = bands.flatMap((band) => band.groups);
  const main = mainYarn(project);
  const fabric = makeFabric(outline, groups, fills, main);

  const settings = { gauges, floatLimit: piece.floatLimit };
  const laid = layStrands(fabric, {
    main,
    outline,
    ownBalls: ownBallsOf(project, bands),
    startSide: piece.startSide,
    endNeedleSelection: piece.endNeedleSelection,
    ...settings,
  });
  const carries = carriesOf(laid, { ...settings, endNeedleSelection: piece.endNeedleSelection });
  const wraps = piece.endNeedleSelection ? [] : wrapsOf(fabric, laid, main);
  const rows = planRows(laid, sections, carries, wraps);
  const placed = bands.map((band) => band.placed);
  const filled = fills.map(({ place, copies }) => ({ ...place, copies }));
  return {
    outline,
    sections,
    gauges,
    hem: hemRowsOf(piece.hem, sections, [...placed, ...filled]),
    extents,
    bands: placed,
    groups: groups.map((group) => group.place),
    fills: filled,
    fabric,
    rows,
    findings: findingsOf({
      project,
      main,
      outline,
      sections,
      gauges,
      bands: placed,
      groups,
      fills: filled,
      laid,
      rows,
    }),
    wrapStrands: wrapStrandsOf(laid, wraps, { ...settings, loopMmOf: loopLengthMm }),
    yarn: yarnNeed(totalsOf(laid, carries), project.yarns),
  };
}

function ownBallsOf(project: Project, bands: readonly LaidBand[]): OwnBall[] {
  const given = project.bands.flatMap((band) => band.groups);
  return bands
    .flatMap((band) => band.groups)
    .flatMap(({ place: { block, firstRow, lastRow } }, group) =>
      given[group]?.hasOwnBall ? [{ group, first: block.first, last: block.last, firstRow, lastRow }] : [],
    );
}

function planRows(
  laid: LaidStrands,
  sections: readonly Section[],
  carries: readonly (PlanRow['carries'] | undefined)[],
  wraps: readonly (PlanRow['wraps'] | undefined)[],
): PlanRow[] {
  return laid.rows.map(({ from, edges, contrast, isMainKnitted, floats }, index) => ({
    row: index + 1,
    section: sectionAt(sections, index + 1).name,
    from,
    edges,
    contrast,
    isMainKnitted,
    wraps: wraps[index] ?? NONE,
    floats,
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
