/** `demo`: the main job without a screen, from the sample project. */
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject } from '@shared/project/index.ts';
import type { Command } from '../command.ts';
import { planJson } from '../json/plan.ts';
import { filesText, outputOptions, writeFiles } from '../output.ts';
import { planText } from '../text/plan.ts';
import { folder, value } from '../values.ts';

export const demoCommand: Command = {
  name: 'demo',
  argument: null,
  options: ['to', 'paper', 'charts', 'unit', 'date', 'replace'],
  required: [],
  async run(args, passing) {
    const into = value(args, 'to', folder) ?? 'demo-output';
    const options = outputOptions(args);
    const project = projectAt(sampleProject());
    const plan = makePlan(pieceIn(project));
    const files = await writeFiles(project, { ...options, folder: into, passing, own: { kind: 'sample' } });
    return {
      json: { files, plan: planJson(project, plan) },
      text: () => `${planText(project, plan, options.lengthUnit)}\n\n${filesText(files, into)}`,
    };
  },
};
