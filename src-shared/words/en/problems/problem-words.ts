/**
 * What is said of each problem, and the facts of each folder's problems brought
 * together where each of them has its sentence.
 *
 * `problem/` lies below all that throw, so it cannot name what they say and
 * leaves `ProblemFacts` open; the table is whole in every program that can say
 * a problem. A code in two folders with other facts does not compile.
 */
import type { BedProblems } from '../../../bed/index.ts';
import type { CollectionProblems } from '../../../collection/index.ts';
import type { DayProblems } from '../../../day/index.ts';
import type { FabricProblems } from '../../../fabric/index.ts';
import type { GridProblems } from '../../../grid/index.ts';
import type { CallProblems, FileProblems } from '../../../host/index.ts';
import type { JournalProblems } from '../../../journal/index.ts';
import type { KnittingProblems } from '../../../knitting/index.ts';
import type { PictureProblems } from '../../../picture/index.ts';
import type { PieceProblems } from '../../../piece/index.ts';
import type { PlacementProblems } from '../../../placement/index.ts';
import type { ProjectProblems } from '../../../project/index.ts';
import type { ProblemCode, ProblemFacts } from '../../../problem/index.ts';
import type { ReadingProblems } from '../../../reading/index.ts';

declare module '../../../problem/problem.ts' {
  interface ProblemFacts
    extends
      BedProblems,
      DayProblems,
      GridProblems,
      PictureProblems,
      ReadingProblems,
      PieceProblems,
      ProjectProblems,
      PlacementProblems,
      CollectionProblems,
      FabricProblems,
      JournalProblems,
      KnittingProblems,
      FileProblems,
      CallProblems {}
}

/** `what` happened and how to `mend` it. */
export interface ProblemText {
  readonly what: string;
  readonly mend: string;
}

/** The words of every problem there is. */
export type ProblemWords = { readonly [Code in ProblemCode]: (facts: ProblemFacts[Code]) => ProblemText };
