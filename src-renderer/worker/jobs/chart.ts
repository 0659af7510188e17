/** What is asked while the corners of a chart are moved over its photo, and how the answer is found. */
import { outcome, problemError, problemOf } from '@shared/problem/index.ts';
import {
  findCharts,
  naturalSize,
  photoOf,
  proposeGrid,
  readCells,
  settledCorners,
  straighten,
  type GridProposal,
  type Photo,
  type Steps,
} from '@shared/reading/index.ts';
import type { ChartAnswer, ChartQuestion, FoundCharts, Job } from './table.ts';

const QUICK_PIXELS = 150_000;
const SHOWN_PIXELS = 800_000;

/** Throws what `straighten` throws; problems further on come in the answer, with what was found until then. */
function* answerTo(photo: Photo, question: ChartQuestion): Steps<ChartAnswer> {
  const { levels, isByHand, isQuick } = question;
  let { corners } = question;
  let { columns, rows } = question;
  let proposal: GridProposal | null = null;
  if (!isQuick && (columns === null || rows === null)) {
    proposal = yield* proposeGrid(photo, corners);
    columns ??= proposal.columns?.count ?? null;
    rows ??= proposal.rows?.count ?? null;
  }
  if (isByHand && !isQuick && columns !== null && rows !== null) {
    corners = yield* settledCorners(photo, corners, columns, rows);
  }
  const isSettled = corners !== question.corners;
  const straight = yield* straighten(photo, corners, naturalSize(corners, isQuick ? QUICK_PIXELS : SHOWN_PIXELS));
  const found = { straight, isSettled, proposal, columns, rows };
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

function* charts(photo: Photo): Steps<FoundCharts> {
  return { charts: yield* findCharts(photo) };
}

export const chartJob: Job<'chart'> = (picture) => {
  const photo = photoOf(picture);
  return (question) => (question === 'find' ? charts(photo) : answerTo(photo, question));
};
