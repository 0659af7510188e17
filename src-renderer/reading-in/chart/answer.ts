/** What the worker is asked while corners move, and how it finds the answer. */
import { outcome, problemError, problemOf, type Problem } from '@shared/problem/index.ts';
import {
  naturalSize,
  proposeGrid,
  readCells,
  straighten,
  type ChartReading,
  type Corners,
  type GridProposal,
  type Levels,
  type Photo,
  type Picture,
  type Steps,
} from '@shared/reading/index.ts';

export interface Question {
  readonly corners: Corners;
  /** Null: as many as are found. */
  readonly columns: number | null;
  readonly rows: number | null;
  readonly levels: Levels;
  /** While a corner moves: a coarse picture, and nothing is counted. */
  readonly isQuick: boolean;
}

export interface Answer {
  /** The chart brought to a rectangle, as large as a screen shows it. */
  readonly straight: Picture;
  /** What was counted; null where both counts were given, or the question was quick. */
  readonly proposal: GridProposal | null;
  readonly columns: number | null;
  readonly rows: number | null;
  /** Null with a problem, or where the counts are not known yet. */
  readonly reading: ChartReading | null;
  readonly problem: Problem | null;
}

const QUICK_PIXELS = 150_000;
const SHOWN_PIXELS = 800_000;

/** Throws what `straighten` throws; problems further on come in the answer, with what was found until then. */
export function* answerTo(photo: Photo, question: Question): Steps<Answer> {
  const { corners, levels, isQuick } = question;
  const straight = yield* straighten(photo, corners, naturalSize(corners, isQuick ? QUICK_PIXELS : SHOWN_PIXELS));
  let { columns, rows } = question;
  let proposal: GridProposal | null = null;
  if (!isQuick && (columns === null || rows === null)) {
    proposal = yield* proposeGrid(photo, corners);
    columns ??= proposal.columns?.count ?? null;
    rows ??= proposal.rows?.count ?? null;
  }
  const found = { straight, proposal, columns, rows };
  if (columns === null || rows === null) {
    const missing = outcome(() => {
      throw problemError('grid-not-found', { across: columns === null, up: rows === null });
    });
    return { ...found, reading: null, problem: isQuick || missing.ok ? null : missing.problem };
  }
  try {
    return { ...found, reading: yield* readCells(photo, corners, columns, rows, levels), problem: null };
  } catch (thrown) {
    return { ...found, reading: null, problem: problemOf(thrown) };
  }
}
