/** The lengths of yarn that the simulated knitter has laid, put together by the strand that each is of. */
import { bandsOf } from '@shared/pattern/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { groupAt } from '../property/needle-by-needle.ts';
import type { Knitted, StrandLaid } from '../reference/knitter/index.ts';
import { measureYarn, type Gauging, type MeasuredYarn } from '../reference/knitter/measure.ts';

/** All lengths of one strand: of a yarn, or of the ball that a group has of it. */
export interface Strand {
  readonly name: string;
  readonly lengths: readonly (StrandLaid & { readonly measured: MeasuredYarn })[];
}

export const MAIN = 'main';

/** As differences call a strand. */
export function nameOf(project: ProjectAt, { yarn, group }: { yarn: number; group: number | null }): string {
  const name = project.yarns[yarn]?.name ?? '';
  if (yarn === project.mainYarn) return MAIN;
  return group === null ? name : `${name} of group ${group + 1}`;
}

/** The plan is asked where its groups stand; nothing that is measured is taken from it. */
export function strandsOf(project: ProjectAt, plan: Plan, { laid }: Knitted, gauging: Gauging): Strand[] {
  const strands = new Map<string, Strand['lengths'][number][]>();
  for (const length of laid) {
    if (length.way.length === 0) continue;
    const yarn = project.yarns.findIndex(({ name }) => name === length.yarn);
    const name = nameOf(project, { yarn, group: groupOf(project, plan, length) });
    const measured = measureYarn(length, gauging, name === MAIN);
    strands.set(name, [...(strands.get(name) ?? []), { ...length, measured }]);
  }
  return [...strands].map(([name, lengths]) => ({ name, lengths }));
}

/**
 * The group whose own ball a length is: the one whose stitches it knits. An
 * edge needle beside all groups says nothing, but where a length knits no
 * other, as one that was cut far aside may, it is of the ball that reaches there.
 */
function groupOf(project: ProjectAt, plan: Plan, { yarn, way }: StrandLaid): number | null {
  const given = bandsOf(project).flatMap(({ groups }) => groups);
  const found = new Set<number | null>();
  for (const { row, needle, does } of way) {
    const group = does === 'knit' ? groupAt(plan, row, needle) : null;
    if (group !== null) found.add(given[group]?.hasOwnBall ? group : null);
  }
  if (yarn === project.yarns[project.mainYarn]?.name) return null;
  if (found.size === 0) {
    const [{ row, needle }] = way as [StrandLaid['way'][number]];
    const reaching = plan.ownBalls.find(
      ({ first, last, firstRow, lastRow }) => row >= firstRow && row <= lastRow && needle >= first && needle <= last,
    );
    return reaching?.group ?? null;
  }
  if (found.size > 1) throw new Error(`one length of ${yarn} knits groups ${[...found].join(' and ')}`);
  return [...found][0] ?? null;
}
