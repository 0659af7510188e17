/** What the status line says of a stitch: how it is knitted, and what the running order has done to its needle before. */
import type { Slot } from '@shared/bed/index.ts';
import { actsOnNeedle, runningOrderOf, stitchAt } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Planned } from './planned.ts';

/** Null beside the piece. `planned` is that of the project. */
export function sayStitch(project: ProjectAt, { plan, problem }: Planned, row: number, needle: Slot): string | null {
  const facts = stitchAt(plan, row, needle);
  if (!facts) return null;
  const running = problem ? null : runningOrderOf(pieceIn(project), plan);
  const acts = running?.isKnittable ? actsOnNeedle(running.order, row, needle) : [];
  const { yarns } = project;
  return words.piece.stitch(facts, acts, yarns[facts.yarn]?.name ?? '', yarns.length);
}
