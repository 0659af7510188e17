/** The sizes that all pieces of a project come in, smallest first. */
import { valueIn, type Size, type SizeNumbers } from '../piece/index.ts';
import type { Group } from '../pattern/index.ts';
import { pieceOf, type Project } from './model.ts';
import { projectAt, type ProjectAt, type Workpiece } from './project-at.ts';

/** A size, and what the piece that is looked at is in it. */
export interface SizeOfPiece extends Size, SizeNumbers {}

/** All sizes, the one that is looked at among them. */
export function sizesOf({ whole, at }: ProjectAt): SizeOfPiece[] {
  const { perSize } = pieceOf(whole, at.piece);
  return whole.sizes.map(({ id, name }, index) => {
    const { size: _, ...numbers } = perSize[index] as (typeof perSize)[number];
    return { id, name, ...numbers };
  });
}

/** Index in {@link sizesOf} of the size that is looked at. */
export function currentSize({ sizes, at }: Pick<Workpiece, 'sizes' | 'at'>): number {
  return sizes.findIndex(({ id }) => id === at.size);
}

export function hasSeveralSizes({ sizes }: Pick<Project, 'sizes'>): boolean {
  return sizes.length > 1;
}

/** The name of the size that is looked at where there are several, which tells it from the others; null where there is one. */
export function sizeName(project: Pick<Workpiece, 'sizes' | 'at'>): string | null {
  return hasSeveralSizes(project) ? (project.sizes[currentSize(project)]?.name ?? null) : null;
}

/** How many copies across a group has in a size. */
export function acrossIn({ across, acrossInSizes }: Group, size: Size['id']): number {
  return acrossInSizes ? valueIn(acrossInSizes, size) : across;
}

/** The same piece of the project in the size `index`. Throws `RangeError` for one that is not there. */
export function inSize({ whole, at }: ProjectAt, index: number): ProjectAt {
  const size = whole.sizes[index];
  if (!size) throw new RangeError(`Size ${index} of ${whole.sizes.length}`);
  return projectAt(whole, { ...at, size: size.id });
}
