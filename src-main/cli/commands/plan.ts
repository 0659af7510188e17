/** `plan PROJECT` or `plan MOTIF`: what to do row by row. */
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { blaming } from '../blame.ts';
import type { Command } from '../command.ts';
import { planJson } from '../json/plan.ts';
import { readMotif } from '../motif-argument.ts';
import { projectOfMotif, projectWithOptions } from '../piece-options.ts';
import { namedAtGivenPlace } from '../place-option.ts';
import { planText } from '../text/plan.ts';
import { unit, value } from '../values.ts';
import { placeCommand } from './place.ts';

export const planCommand: Command = {
  name: 'plan',
  argument: 'PROJECT or MOTIF',
  options: [
    ...placeCommand.options,
    'choice',
    'rows',
    'hem',
    'first-row',
    'gauge',
    'start-side',
    'float-limit',
    'own-balls',
    'end-needles',
    'begins',
    'ends',
    'machine',
    'unit',
  ],
  required: [],
  async run(args) {
    const [path] = args.names as [string];
    const named = namedAtGivenPlace(await readMotif(path, args.values.get('ground')), args);
    const project = named.isProject ? projectWithOptions(named, args) : projectOfMotif(named, args);
    const lengthUnit = value(args, 'unit', unit) ?? 'cm';
    const plan = blaming(args, path, () => makePlan(pieceIn(project)));
    return { json: planJson(project, plan), text: () => planText(project, plan, lengthUnit) };
  },
};
