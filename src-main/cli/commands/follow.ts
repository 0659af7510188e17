/** `follow PROJECT`: what to do from casting on to casting off, in order. */
import { comingIn, knittingOrderOf, stopsOf } from '@shared/knitting/index.ts';
import { makePlan, runningOrderOf, type Plan } from '@shared/plan/index.ts';
import { pieceIn, type Workpiece } from '@shared/project/index.ts';
import type { Command } from '../command.ts';
import { planJson } from '../json/plan.ts';
import { stopsJson, toSetJson, type KnittingStopJson, type ToSetJson } from '../json/stops.ts';
import { readProject } from '../motif-argument.ts';
import { placed } from '../placed.ts';
import { atGivenPlace } from '../place-option.ts';
import { from, unit, value } from '../values.ts';
import { followText } from '../text/follow.ts';

export const followCommand: Command = {
  name: 'follow',
  argument: 'PROJECT',
  options: ['piece', 'size', 'colourway', 'unit', 'from'],
  required: [],
  async run(args) {
    const [path] = args.names as [string];
    const project = atGivenPlace(await readProject(path), args);
    const lengthUnit = value(args, 'unit', unit) ?? 'cm';
    const plan = placed(path, () => makePlan(pieceIn(project)));
    const fromRow = value(args, 'from', from(1, plan.rows.length)) ?? 1;
    const { size, piece, knit, runningOrder, findings } = planJson(project, plan);
    return {
      json: { size, piece, knit, runningOrder, ...stopsFrom(project, plan, fromRow), findings },
      text: () => followText(project, plan, lengthUnit, fromRow),
    };
  },
};

/** The stops from a row on, and what is set before it; null where there is no order. */
function stopsFrom(
  project: Workpiece,
  plan: Plan,
  fromRow: number,
): { readonly toSet: readonly ToSetJson[] | null; readonly stops: readonly KnittingStopJson[] | null } {
  const piece = pieceIn(project);
  const running = runningOrderOf(piece, plan);
  if (!running.isKnittable) return { toSet: null, stops: null };
  const knitting = knittingOrderOf(piece, plan, running.order);
  return {
    toSet: comingIn(knitting, fromRow - 1).map((put) => toSetJson(put, project)),
    stops: stopsJson(stopsOf(knitting).slice(fromRow - 1), project),
  };
}
