/**
 * Twenty sizes of a crowded piece take longer than a frame, so they are placed
 * one after the other, with the hand's events in between.
 */
import { sizeColumn, type SizeColumn } from '@shared/fabric/index.ts';
import { sizesOf, type Project } from '@shared/project/index.ts';

/** Calls `found` with each size once it is placed; returns a function that gives up. */
export function columnsInTurns(project: Project, found: (index: number, column: SizeColumn) => void): () => void {
  const count = sizesOf(project).length;
  let index = 0;
  let timer = setTimeout(next, 0);
  function next(): void {
    found(index, sizeColumn(project, index));
    if (++index < count) timer = setTimeout(next, 0);
  }
  return () => clearTimeout(timer);
}
