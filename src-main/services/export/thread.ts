/** The script of the thread that makes files from a project. */
import { projectAt, projectFromText } from '@shared/project/index.ts';
import { answerOnce } from '../worker/index.ts';
import type { ExportsAsked } from './in-thread.ts';
import { makeExports } from './index.ts';

void answerOnce(async ({ project, at, ...wanted }: ExportsAsked, made) =>
  makeExports({ ...wanted, project: projectAt(projectFromText(project), at) }, made),
);
