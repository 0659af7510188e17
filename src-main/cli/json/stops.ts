/** The JSON of the running order one reading at a time, and of what is set where one goes on in the middle. Needles are labels, yarns and motifs are named. */
import { label, type Run, type Side } from '@shared/bed/index.ts';
import type { GoesOn, KnittingStop, PutBack, StopRow, StandingGroup } from '@shared/knitting/index.ts';
import { motifOf, type Workpiece } from '@shared/project/index.ts';
import { actJson, type ActJson } from './running-order.ts';

type RunJson = readonly [first: string, last: string];

/** An act, and the needles that it is done on. */
export interface ToDoJson {
  readonly act: ActJson;
  readonly on: readonly RunJson[];
}

export interface KnittingStopJson {
  readonly counter: number;
  readonly carriageAt: Side;
  /** Where the carriage goes with the row; null at the end. */
  readonly carriageTo: Side | null;
  readonly acts: readonly ToDoJson[];
  /** Null at the end. */
  readonly row: StopRowJson | null;
  /** Rows that go on alike with nothing to do between them, this one included, and the reading after them. */
  readonly goesOn: GoesOn | null;
  readonly nextAt: number | null;
}

export interface StopRowJson {
  readonly row: number;
  readonly carriage: 'plain' | 'pattern';
  readonly selecting: boolean;
  readonly needles: RunJson;
  readonly stitches: number;
  readonly selected: readonly { readonly first: string; readonly last: string; readonly yarn: string }[];
  readonly selectedCount: number;
  readonly feeders: { readonly 1: string | null; readonly 2: string | null };
  readonly laid: readonly ActJson[];
  readonly wraps: readonly string[];
  readonly groups: readonly { readonly needles: RunJson; readonly motif: string; readonly copies: number }[];
}

export function stopsJson(stops: readonly KnittingStop[], project: Workpiece): KnittingStopJson[] {
  return stops.map(({ counter, carriageAt, carriageTo, acts, row, goesOn, nextAt }) => ({
    counter,
    carriageAt,
    carriageTo,
    acts: acts.map(({ act, needles }) => ({ act: actJson(act, project), on: needles.map(runJson) })),
    row: row && rowJson(row, project),
    goesOn,
    nextAt,
  }));
}

function rowJson(of: StopRow, project: Workpiece): StopRowJson {
  const { row, carriage, isSelecting, needles, stitches, selected, selectedCount, feeders, laid, wraps, groups } = of;
  const named = (yarn: number): string => project.yarns[yarn]?.name ?? '';
  const fed = (yarn: number | null): string | null => (yarn === null ? null : named(yarn));
  return {
    row,
    carriage,
    selecting: isSelecting,
    needles: runJson(needles),
    stitches,
    selected: selected.map(({ first, last, yarn }) => ({ first: label(first), last: label(last), yarn: named(yarn) })),
    selectedCount,
    feeders: { 1: fed(feeders[1]), 2: fed(feeders[2]) },
    laid: laid.map((act) => actJson(act, project)),
    wraps: wraps.map(({ needle }) => label(needle)),
    groups: groups.map((group) => groupJson(group, project)),
  };
}

function groupJson({ needles, motif, copies }: StandingGroup, project: Workpiece): StopRowJson['groups'][number] {
  return { needles: runJson(needles), motif: motifOf(project, motif).name, copies };
}

/** What is set at the machine, each with its facts. */
export type ToSetJson = { readonly set: PutBack['kind'] } & Readonly<Record<string, unknown>>;

export function toSetJson(put: PutBack, project: Workpiece): ToSetJson {
  const named = (yarn: number): string => project.yarns[yarn]?.name ?? '';
  switch (put.kind) {
    case 'stitches':
      return {
        set: put.kind,
        row: put.row,
        needles: runJson(put.needles),
        back: put.back.map(runJson),
        out: put.out.map(runJson),
      };
    case 'hem-off':
      return { set: put.kind, waste: put.hasWaste };
    case 'carriage-to':
      return { set: put.kind, side: put.side };
    case 'counter':
      return { set: put.kind, reading: put.reading };
    case 'carriage':
      return { set: put.kind, to: put.set };
    case 'selecting':
    case 'end-needles':
      return { set: put.kind, on: put.isOn };
    case 'tension':
      return { set: put.kind, part: put.part, text: put.text };
    case 'weights':
      return { set: put.kind, do: put.do };
    case 'choose-again':
      return { set: put.kind, row: put.row, needles: put.needles.map(runJson), count: put.count, how: put.how };
    case 'pattern-row':
      return { set: put.kind, row: put.row, pattern: actJson(put.pattern, project) };
    case 'yarn-out':
    case 'yarn-in':
      return { set: put.kind, feeder: put.feeder, yarn: named(put.yarn), ball: put.ball };
    case 'yarn-waits':
      return { set: put.kind, yarn: named(put.yarn), ball: put.ball, needle: label(put.needle) };
    case 'strand-waits':
      return { set: put.kind, id: put.strand, needle: put.needle === null ? null : label(put.needle) };
    case 'strand-out':
      return { set: put.kind, id: put.strand };
  }
}

function runJson({ first, last }: Run): RunJson {
  return [label(first), label(last)];
}
