/** The JSON of `plan`. Needles are labels, runs go from left to right, rows count from 1. */
import { label, type Side } from '@shared/bed/index.ts';
import { findingsOf } from '@shared/check/index.ts';
import { lengthMm, sizeOf, stitchesAt } from '@shared/piece/index.ts';
import type { Plan, PlanRow } from '@shared/plan/index.ts';
import { hasSeveralSizes, pieceIn, type Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { loopLengthMm } from '@shared/yarn/index.ts';
import { fillJson, type FillJson } from './fill.ts';
import { findingJson, type FindingJson } from './finding.ts';
import { groupJson, type GroupJson } from './placement.ts';

type Role = 'main' | 'contrast';
type RunJson = readonly [first: string, last: string];

export interface PlanJson {
  /** Name of the size, or null for a project of one size. */
  readonly size: string | null;
  readonly piece: {
    /** Stitches of row 1. */
    readonly stitches: number;
    readonly rows: number;
    /** Of all rows, at the gauges that they have. */
    readonly lengthMm: number;
    /** Of row 1. */
    readonly widthMm: number;
    readonly sections: readonly SectionJson[];
  };
  readonly groups: readonly (GroupJson & { readonly firstRow: number; readonly lastRow: number })[];
  readonly fills: readonly FillJson[];
  /** Reading of the row counter, of the first band; null if there is no row for it. */
  readonly setUpAt: number | null;
  readonly rows: readonly RowJson[];
  readonly findings: readonly FindingJson[];
  readonly yarn: {
    /** At the piece's own gauge. */
    readonly loopMm: number;
    readonly main: { readonly metres: number };
    /** All contrast yarns together. */
    readonly contrast: { readonly metres: number };
  };
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
  readonly contrast: readonly RunJson[];
  readonly wraps: readonly string[];
  readonly floats: readonly {
    readonly yarn: Role;
    readonly first: string;
    readonly last: string;
    readonly stitches: number;
    readonly mm: number;
    readonly over: boolean;
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
}

export function planJson(project: Project, plan: Plan): PlanJson {
  const { outline, sections, gauges, groups, bands, rows } = plan;
  const { piece } = project;
  const { widths, lengthMm: wholeMm } = sizeOf(piece.shape, gauges);
  return {
    size: hasSeveralSizes(project) ? project.sizes.name : null,
    piece: {
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
    groups: groups.map((group) => ({ ...groupJson(group), firstRow: group.firstRow, lastRow: group.lastRow })),
    fills: plan.fills.map((_, index) => fillJson(plan, index)),
    setUpAt: bands[0]?.setUpAt ?? null,
    rows: rows.map(rowJson),
    findings: findingsOf(pieceIn(project), plan).map((finding) => findingJson(finding, project)),
    yarn: {
      loopMm: thousandths(loopLengthMm(piece.gauge)),
      main: { metres: metresOf(plan, 'main') },
      contrast: { metres: metresOf(plan, 'contrast') },
    },
  };
}

function rowJson(row: PlanRow): RowJson {
  return {
    row: row.row,
    section: words.sections.name(row.section),
    from: row.from,
    contrast: row.contrast.map(({ first, last }) => [label(first), label(last)]),
    wraps: row.wraps.map(({ needle }) => label(needle)),
    floats: row.floats.map(({ strand, first, last, stitches, mm, isOver }) => ({
      yarn: strand.role,
      first: label(first),
      last: label(last),
      stitches,
      mm: thousandths(mm),
      over: isOver,
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
  };
}

function metresOf({ yarn }: Plan, role: Role): number {
  const mm = yarn.uses.filter((use) => use.role === role).reduce((sum, use) => sum + use.totalMm, 0);
  return thousandths(mm / 1000);
}

/** Lengths are estimates; what lies behind the third place is noise. */
function thousandths(value: number): number {
  return Math.round(value * 1000) / 1000;
}
