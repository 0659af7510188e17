/**
 * How much of each yarn goes row by row, from the bottom up: what a row knits
 * and floats, the carries that begin in it, and the ends of strands where they
 * are. All rows together are what the piece takes (`yarnNeed`), the strands cut
 * for wrapping apart. Lengths in mm.
 */
import { widthOf } from '../bed/index.ts';
import { gaugeAt, isSameGauge, type Gauge, type SectionName } from '../piece/index.ts';
import { TAIL_MM } from '../yarn/index.ts';
import type { Plan, PlanRow } from './types.ts';

/** By palette index; index 0 of the lengths is row 1. */
export type YarnByRow = ReadonlyMap<number, Float64Array>;

/** `stretch`: stitches so many times as long as they are reckoned, e.g. 1.1 at the most that they may be. */
export function yarnByRow(plan: Plan, mainYarn: number, stretch = 1): YarnByRow {
  const { rows, gauges, yarn } = plan;
  const byRow = new Map<number, Float64Array>();
  const of = (index: number): Float64Array => {
    const known = byRow.get(index) ?? new Float64Array(rows.length);
    byRow.set(index, known);
    return known;
  };
  const add = (index: number, row: number, mm: number): void => {
    const lengths = of(index);
    lengths[row - 1] = (lengths[row - 1] as number) + mm;
  };
  const loopMm = (gauge: Gauge): number =>
    stretch * (yarn.loops.find((loop) => isSameGauge(loop.gauge, gauge))?.mm ?? 0);
  for (const planned of rows) {
    const { row, contrast, floats, carries, cuts } = planned;
    const loop = loopMm(gaugeAt(gauges, row));
    add(mainYarn, row, mainStitches(planned) * loop);
    for (const run of contrast) add(run.yarn, row, (run.last - run.first + 1) * loop);
    for (const { strand, mm } of floats) add(strand.yarn, row, mm);
    for (const { strand, mm } of carries) add(strand.yarn, row, mm);
    for (const { strand } of cuts) add(strand.yarn, row, 2 * TAIL_MM);
  }
  for (const { yarn: index, balls } of yarn.uses) {
    for (const { firstRow, lastRow, castOffMm, sewingMm } of balls) {
      // The tail for sewing up is left where the piece begins.
      add(index, Math.max(1, firstRow), TAIL_MM + sewingMm);
      add(index, castOffMm > 0 ? rows.length : Math.max(1, lastRow), TAIL_MM + castOffMm);
    }
  }
  return byRow;
}

function mainStitches({ edges, contrast }: PlanRow): number {
  return contrast.reduce((left, run) => left - (run.last - run.first + 1), widthOf(edges));
}

/** What a section takes of a yarn. */
export interface SectionYarn {
  readonly section: SectionName;
  readonly first: number;
  readonly last: number;
  /** Of each yarn that it takes, by palette index, in the order of the plan's uses. */
  readonly yarns: readonly { readonly yarn: number; readonly mm: number }[];
}

/** What each section of the piece takes, from the bottom up. */
export function yarnBySection(plan: Plan, mainYarn: number): SectionYarn[] {
  const byRow = yarnByRow(plan, mainYarn);
  return plan.sections.map(({ name, first, last }) => ({
    section: name,
    first,
    last,
    yarns: plan.yarn.uses.flatMap(({ yarn }) => {
      const mm =
        byRow
          .get(yarn)
          ?.subarray(first - 1, last)
          .reduce((sum, row) => sum + row, 0) ?? 0;
      return mm > 0 ? [{ yarn, mm }] : [];
    }),
  }));
}
