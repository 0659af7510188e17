/** `demo`: the main job without a screen, from the sample project. */
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject } from '@shared/project/index.ts';
import type { Command } from '../command.ts';
import { planJson } from '../json/plan.ts';
import { dateOf } from '../date-option.ts';
import { filesText, writeFiles } from '../output.ts';
import { planText } from '../text/plan.ts';
import { folder, paper, unit, value } from '../values.ts';

export const demoCommand: Command = {
  name: 'demo',
  argument: null,
  options: ['to', 'paper', 'unit', 'date', 'replace'],
  required: [],
  async run(args) {
    const into = value(args, 'to', folder) ?? 'demo-output';
    const project = projectAt(sampleProject());
    const plan = makePlan(pieceIn(project));
    const onPaper = value(args, 'paper', paper) ?? 'a4';
    const lengthUnit = value(args, 'unit', unit) ?? 'cm';
    const replaces = args.switches.has('replace');
    const own = { kind: 'sample' } as const;
    const files = await writeFiles(project, {
      folder: into,
      paper: onPaper,
      lengthUnit,
      date: dateOf(args),
      replaces,
      own,
    });
    return {
      json: { files, plan: planJson(project, plan) },
      text: () => `${planText(project, plan, lengthUnit)}\n\n${filesText(files, into)}`,
    };
  },
};
