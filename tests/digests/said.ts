/**
 * What the program says of a project file: what `plan --json` prints for each
 * of its sizes, and the file as it is saved again.
 *
 * The only place here that knows the program: what is renamed there, is renamed
 * here.
 */
import { makePlan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { pieceIn, projectAt, projectFromText, projectToText, sampleProject } from '@shared/project/index.ts';
import { planJson } from '../../src-main/cli/json/plan.ts';
import { problemJson } from '../../src-main/cli/json/problem.ts';

export interface Said {
  /** In canonical JSON, one for each size of each piece, smallest first: the plan, or why there is none. */
  readonly plans: readonly string[];
  /** The text of the file, saved again. */
  readonly file: string;
  /** How many sizes can be knitted. */
  readonly planned: number;
}

/** Throws `ProblemError` for a text that is no project file. */
export function saidOf(text: string): Said {
  const project = projectFromText(text);
  const results = project.pieces.flatMap((piece) =>
    project.sizes.map((size) =>
      outcome(() => {
        const looked = projectAt(project, { piece: piece.id, size: size.id });
        return planJson(looked, makePlan(pieceIn(looked)));
      }),
    ),
  );
  return {
    plans: results.map((result) => canonical(result.ok ? result.value : problemJson(result.problem))),
    file: projectToText(project),
    planned: results.filter(({ ok }) => ok).length,
  };
}

/** The file of the sample project, as the program has it. */
export function sampleText(): string {
  return projectToText(sampleProject());
}

/** JSON that is the same whatever order fields were made in. */
export function canonical(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
