/**
 * Twenty sizes of a crowded piece take longer than a frame, so they are placed
 * one after the other, with the hand's events in between.
 */
import { sizeColumn, type SizeColumn } from '@shared/fabric/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';

/** Calls `found` with each size once it is placed; returns a function that gives up. */
export function columnsInTurns(project: ProjectAt, found: (index: number, column: SizeColumn) => void): () => void {
  const count = project.sizes.length;
  let index = 0;
  let timer = setTimeout(next, 0);
  function next(): void {
    found(index, sizeColumn(project, index));
    if (++index < count) timer = setTimeout(next, 0);
  }
  return () => clearTimeout(timer);
}
