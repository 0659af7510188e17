/** `follow PROJECT`: what to do from casting on to casting off, in order. */
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import type { Command } from '../command.ts';
import { planJson } from '../json/plan.ts';
import { readProject } from '../motif-argument.ts';
import { placed } from '../placed.ts';
import { atGivenPlace } from '../place-option.ts';
import { unit, value } from '../values.ts';
import { followText } from '../text/follow.ts';

export const followCommand: Command = {
  name: 'follow',
  argument: 'PROJECT',
  options: ['piece', 'size', 'colourway', 'unit'],
  required: [],
  async run(args) {
    const [path] = args.names as [string];
    const project = atGivenPlace(await readProject(path), args);
    const lengthUnit = value(args, 'unit', unit) ?? 'cm';
    const plan = placed(path, () => makePlan(pieceIn(project)));
    const { size, piece, knit, runningOrder, findings } = planJson(project, plan);
    return {
      json: { size, piece, knit, runningOrder, findings },
      text: () => followText(project, plan, lengthUnit),
    };
  },
};
