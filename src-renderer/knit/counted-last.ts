/** Which piece of a project its knitter counted last, so that whoever comes back finds the one on the needles. */
import type { Host, Result } from '@shared/host/index.ts';
import type { PieceKey } from '@shared/journal/index.ts';
import type { Project } from '@shared/project/index.ts';

export interface CountedLast {
  readonly of: PieceKey;
  readonly reading: number;
}

type Listed = Result<'knitting.list'>[number];

/**
 * The piece, of those that the project still has, that was counted last and is
 * not off the needles; null where there is none, or where it cannot be found out.
 */
export async function countedLast(host: Host, project: Project, at: PieceKey['project']): Promise<CountedLast | null> {
  const listed = await host.call('knitting.list', {});
  if (!listed.ok) return null;
  const found = listed.value.find(
    (one): one is Extract<Listed, { readonly kind: 'piece' }> =>
      one.kind === 'piece' && one.countedAt !== null && isOf(one.of.project, at) && isIn(project, one.of),
  );
  return found && !found.isFinished ? { of: found.of, reading: found.reading } : null;
}

function isOf(one: PieceKey['project'], project: PieceKey['project']): boolean {
  return one.path === project.path && (one.path !== null || one.name === project.name);
}

function isIn({ pieces, sizes }: Project, { piece, size, copy }: PieceKey): boolean {
  const there = pieces.find(({ id }) => id === piece.id);
  return there !== undefined && copy <= there.knit && sizes.some(({ id }) => id === size.id);
}
