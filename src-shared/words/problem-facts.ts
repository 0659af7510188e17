/**
 * Every problem that there is: the facts of each folder's problems, brought
 * together where each of them has its sentence.
 *
 * `problem/` lies below all that throw, so it cannot name what they say and
 * leaves `ProblemFacts` open; the table is whole in every program that can say
 * a problem. A code in two folders with other facts does not compile.
 */
import type { BedProblems } from '../bed/problems.ts';
import type { GridProblems } from '../grid/problems.ts';
import type { CallProblems, FileProblems } from '../host/problems.ts';
import type { FabricProblems } from '../knitting/problems.ts';
import type { LetteringProblems } from '../lettering/problems.ts';
import type { PictureProblems } from '../picture/problems.ts';
import type { PieceProblems } from '../piece/problems.ts';
import type { PlacementProblems } from '../placement/problems.ts';
import type { ProjectProblems } from '../project/problems.ts';
import type { ReadingProblems } from '../reading/problems.ts';

declare module '../problem/problem.ts' {
  interface ProblemFacts
    extends
      BedProblems,
      GridProblems,
      LetteringProblems,
      PictureProblems,
      ReadingProblems,
      PieceProblems,
      ProjectProblems,
      PlacementProblems,
      FabricProblems,
      FileProblems,
      CallProblems {}
}

export type { ProblemCode, ProblemFacts } from '../problem/index.ts';
