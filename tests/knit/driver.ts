/**
 * A knitter who reads the stops alone, one at a time, ticks off what is done,
 * counts the row, and now and then leaves the machine and comes back. What was
 * read is what the simulated knitter is handed.
 */
import { slotLabelled } from '@shared/bed/index.ts';
import {
  afterEvent,
  AT_THE_START,
  bedAt,
  knittingOrderOf,
  stopsOf,
  tickedAt,
  type KnittingOrder,
  type Progress,
} from '@shared/knitting/index.ts';
import { planFor, runningOrderOf } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { planJson, type PlanJson } from '../../src-main/cli/json/plan.ts';
import type { StopJson } from '../../src-main/cli/json/running-order.ts';
import { stopsJson, type KnittingStopJson } from '../../src-main/cli/json/stops.ts';
import { wrongWith } from './knit-plan.ts';

/** Rows between two times that the machine is left. */
const LEFT_EVERY = 17;

export interface Driven {
  /** How many rows were counted. */
  readonly rows: number;
  /** What the simulated knitter could not do, or came out otherwise than designed; empty where all is well. */
  readonly wrong: readonly string[];
}

/** Knits the piece that is looked at, to its end; null where there is no order for it. */
export function drive(project: ProjectAt): Driven | null {
  const piece = pieceIn(project);
  const planned = planFor(piece);
  if (!planned.ok) return null;
  const plan = planned.value;
  const running = runningOrderOf(piece, plan);
  if (!running.isKnittable) return null;
  const knitting = knittingOrderOf(piece, plan, running.order);
  const shown = stopsJson(stopsOf(knitting), project);
  let progress: Progress = { knitting, place: AT_THE_START };
  const read: StopJson[] = [];
  while (progress.place.phase !== 'finished') {
    const { reading } = progress.place;
    const stop = shown[reading] as KnittingStopJson;
    read.push(asRead(stop));
    for (const act of stop.acts.keys()) progress = afterEvent(progress, { kind: 'ticked', reading, act });
    if (tickedAt(progress.place).length !== stop.acts.length) throw new Error(`Not all is ticked off at ${reading}`);
    if (reading % LEFT_EVERY === LEFT_EVERY - 1) {
      progress = afterEvent(progress, { kind: 'go-to', reading, to: reading });
      progress = afterEvent(progress, { kind: 'carriage-seen', reading, at: stop.carriageAt });
    }
    progress = afterEvent(progress, { kind: stop.row ? 'row-done' : 'finished', reading });
  }
  const json = planJson(project, plan);
  return {
    rows: progress.place.reading,
    wrong: [...wrongWith(project, plan, json, read), ...bedsUnlike(knitting, json, project)],
  };
}

/** Rows that the bed shows in other yarns than they are designed in. */
function bedsUnlike(knitting: KnittingOrder, { rows }: PlanJson, { yarns }: ProjectAt): string[] {
  return rows.flatMap(({ row, runs }) => {
    const designed = runs.flatMap(({ first, last, yarn }) => {
      const [from, to] = [slotLabelled(first), slotLabelled(last)];
      return Array.from({ length: to - from + 1 }, (_, at) => `${from + at} ${yarn}`);
    });
    const shown = bedAt(knitting, row - 1).needles.flatMap(({ needle, yarn }) =>
      yarn === null ? [] : [`${needle} ${yarns[yarn]?.name}`],
    );
    return shown.join() === designed.join() ? [] : [`row ${row} is shown otherwise than it is designed`];
  });
}

/** A stop in the form of an order, whatever stands between. */
function asRead({ counter, carriageAt, acts, row }: KnittingStopJson): StopJson {
  const said = acts.map(({ act }) => act);
  const base = { kind: 'stop', id: `read-at-${counter}`, counter, carriageAt, acts: said } as const;
  if (row) {
    const { carriage, selecting, needles, feeders } = row;
    return { ...base, row: row.row, carriage, selecting, needles, feeders };
  }
  const finish = said.find((act) => act.act === 'finish');
  if (!finish) throw new Error(`Nothing takes the piece off at ${counter}`);
  return {
    ...base,
    row: null,
    carriage: 'plain',
    selecting: false,
    needles: finish.needles,
    feeders: { 1: null, 2: null },
  };
}
