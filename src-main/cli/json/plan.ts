/** The JSON of `plan`. Needles are labels, runs go from left to right, rows count from 1. */
import { label, type Side, type Slot } from '@shared/bed/index.ts';
import { findingsOf, leftAmong } from '@shared/check/index.ts';
import { allOversOf, bandsOf } from '@shared/pattern/index.ts';
import { lengthMm, sizeOf, stitchesAt } from '@shared/piece/index.ts';
import { ballsToWind, runningOrderOf, type Plan, type PlanRow } from '@shared/plan/index.ts';
import { pieceIn, sizeName, type KnitPiece, type Workpiece } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { loopsOf, texOf, type LoopsFrom } from '@shared/yarn/index.ts';
import { allOverJson, type AllOverJson } from './all-over.ts';
import { finishingJson, swatchesJson, type FinishingJson, type SwatchJson } from './beside-stitches.ts';
import { findingJson, type FindingJson } from './finding.ts';
import { groupJson, type GroupJson } from './placement.ts';
import { runningOrderJson, type StopJson, type StretchJson } from './running-order.ts';
import { thousandths } from './thousandths.ts';

type Role = 'main' | 'contrast';
type RunJson = readonly [first: string, last: string];

export interface PlanJson {
  /** Name of the size, or null for a project of one size. */
  readonly size: string | null;
  readonly piece: {
    readonly name: string;
    /** Stitches of row 1. */
    readonly stitches: number;
    readonly rows: number;
    /** Of all rows, at the gauges that they have. */
    readonly lengthMm: number;
    /** Of row 1. */
    readonly widthMm: number;
    readonly sections: readonly SectionJson[];
  };
  /** So many of the piece are knitted; all figures are for one. */
  readonly knit: number;
  readonly groups: readonly (GroupJson & { readonly firstRow: number; readonly lastRow: number })[];
  readonly fills: readonly AllOverJson[];
  /** Reading of the row counter, of the first band; null if there is no row for it. */
  readonly setUpAt: number | null;
  readonly rows: readonly RowJson[];
  /** From casting on to casting off; null where a finding blocks. */
  readonly runningOrder: readonly (StopJson | StretchJson)[] | null;
  readonly findings: readonly FindingJson[];
  readonly yarn: {
    /** At the piece's own gauge. */
    readonly loopMm: number;
    /** Where that length comes from, and by which share it may be off. */
    readonly loopFrom: LoopsFrom;
    readonly loopShare: number;
    readonly main: { readonly metres: number };
    /** All contrast yarns together. */
    readonly contrast: { readonly metres: number };
    /** What is wound off by itself: main, then each contrast, one ball or one for each group that has its own. */
    readonly balls: readonly BallJson[];
    /** What of these lengths is for ends, casting off and sewing up. */
    readonly finishing: FinishingJson;
  };
  /** At which gauge each pattern is knitted, and what that does to the width. */
  readonly swatches: readonly SwatchJson[];
}

export interface BallJson {
  /** Name of the yarn. */
  readonly yarn: string;
  readonly role: Role;
  /** Number of the group whose own ball it is, from 1 as on the sheet; null where it serves all others. */
  readonly group: number | null;
  /** What acts of laying by hand call it; null where the carriage feeds it. */
  readonly ball: number | null;
  /** The rows that it is knitted on, from the first to the last. */
  readonly rows: readonly [first: number, last: number];
  readonly metres: number;
}

export interface SectionJson {
  readonly name: string;
  readonly first: number;
  readonly last: number;
  readonly lengthMm: number;
  /** Stitches and rows in 10 cm. */
  readonly gauge: { readonly stitches: number; readonly rows: number };
}

export interface RowJson {
  readonly row: number;
  readonly section: string;
  /** The carriage's side before the row. */
  readonly from: Side;
  /** The outermost needles in work. */
  readonly edges: RunJson;
  /** All yarns of the row, from left to right; neighbours in one yarn are one run. */
  readonly runs: readonly { readonly first: string; readonly last: string; readonly yarn: string }[];
  readonly contrast: readonly RunJson[];
  /** Needles that knit an anchor, added to break a float. */
  readonly anchors: readonly string[];
  readonly wraps: readonly string[];
  readonly floats: readonly {
    readonly yarn: Role;
    readonly first: string;
    readonly last: string;
    readonly stitches: number;
    readonly mm: number;
    /** What lies loose of it is too long. */
    readonly over: boolean;
    /** The needles at which it is held: hooked or latched up. */
    readonly held: readonly string[];
  }[];
  readonly carries: readonly {
    readonly yarn: Role;
    readonly toRow: number;
    readonly first: string;
    readonly last: string;
    readonly stitches: number;
    /** Sideways and up. */
    readonly mm: number;
    readonly over: boolean;
  }[];
  /** Strands that are cut after the row, since the next stitch of them is too far up or aside. */
  readonly cuts: readonly { readonly yarn: Role; readonly toRow: number; readonly because: 'far-up' | 'far-aside' }[];
}

export function planJson(project: Workpiece, plan: Plan): PlanJson {
  const { outline, sections, gauges, groups, rows } = plan;
  const { piece } = project;
  const knit = pieceIn(project);
  const running = runningOrderOf(knit, plan);
  const found = findingsOf(knit, plan);
  const left = leftAmong(found, plan.patterns, piece.leftAsIs);
  const { widths, lengthMm: wholeMm } = sizeOf(piece.shape, gauges);
  return {
    size: sizeName(project),
    piece: {
      name: piece.name,
      stitches: stitchesAt(outline, 1),
      rows: outline.rows,
      lengthMm: thousandths(wholeMm),
      widthMm: thousandths(widths[0]?.mm ?? 0),
      sections: sections.map(({ name, first, last, gauge: { stitches, rows: inTenCm } }) => ({
        name: words.sections.name(name),
        first,
        last,
        lengthMm: thousandths(lengthMm(gauges, first, last)),
        gauge: { stitches, rows: inTenCm },
      })),
    },
    knit: project.knit,
    groups: groups.map((group) => ({ ...groupJson(group), firstRow: group.firstRow, lastRow: group.lastRow })),
    fills: allOversOf(plan).map((placed) => allOverJson(placed, outline)),
    setUpAt: bandsOf(plan)[0]?.setUpAt ?? null,
    rows: rows.map((row) => rowJson(row, knit)),
    runningOrder: running.isKnittable ? runningOrderJson(running.order, project) : null,
    findings: found.map((finding) => findingJson(finding, project, left.has(finding))),
    yarn: {
      loopMm: thousandths(loopsOf(piece, texOf(knit.yarns[knit.mainYarn])).mmOf(piece.gauge)),
      loopFrom: plan.yarn.from,
      loopShare: thousandths(plan.yarn.share),
      main: { metres: metresOf(plan, 'main') },
      contrast: { metres: metresOf(plan, 'contrast') },
      balls: ballsJson(knit, plan),
      finishing: finishingJson(plan),
    },
    swatches: swatchesJson(plan, piece.gauge),
  };
}

function rowJson(row: PlanRow, piece: KnitPiece): RowJson {
  return {
    row: row.row,
    section: words.sections.name(row.section),
    from: row.from,
    edges: [label(row.edges.first), label(row.edges.last)],
    runs: runsOf(row, piece),
    contrast: row.contrast.map(({ first, last }) => [label(first), label(last)]),
    anchors: row.anchors.map(label),
    wraps: row.wraps.map(({ needle }) => label(needle)),
    floats: row.floats.map(({ strand, first, last, stitches, mm, isOver, held }) => ({
      yarn: strand.role,
      first: label(first),
      last: label(last),
      stitches,
      mm: thousandths(mm),
      over: isOver,
      held: held.map(label),
    })),
    carries: row.carries.map(({ strand, toRow, first, last, stitches, mm, isOver }) => ({
      yarn: strand.role,
      toRow,
      first: label(first),
      last: label(last),
      stitches,
      mm: thousandths(mm),
      over: isOver,
    })),
    cuts: row.cuts.map(({ strand, toRow, because }) => ({ yarn: strand.role, toRow, because })),
  };
}

/** The contrast of a row, and main between and beside it. */
function runsOf({ edges, contrast }: PlanRow, { yarns, mainYarn }: KnitPiece): RowJson['runs'] {
  const runs: RowJson['runs'][number][] = [];
  const add = (first: number, last: number, yarn: number): void => {
    if (first > last) return;
    runs.push({ first: label(first as Slot), last: label(last as Slot), yarn: yarns[yarn]?.name ?? '' });
  };
  let next: number = edges.first;
  for (const { first, last, yarn } of contrast) {
    add(next, first - 1, mainYarn);
    add(first, last, yarn);
    next = last + 1;
  }
  add(next, edges.last, mainYarn);
  return runs;
}

function ballsJson(piece: KnitPiece, plan: Plan): BallJson[] {
  return ballsToWind(piece, plan).map(({ yarn, role, group, number, firstRow, lastRow, mm }) => ({
    yarn: piece.yarns[yarn]?.name ?? '',
    role,
    group: group === null ? null : group + 1,
    ball: number,
    rows: [firstRow, lastRow],
    metres: thousandths(mm / 1000),
  }));
}

function metresOf({ yarn }: Plan, role: Role): number {
  const mm = yarn.uses.filter((use) => use.role === role).reduce((sum, use) => sum + use.totalMm, 0);
  return thousandths(mm / 1000);
}
