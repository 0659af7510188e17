/** What is asked while the corners of a chart are moved over its photo, and how the answer is found. */
import { MOST_COLUMNS, MOST_ROWS } from '@shared/grid/index.ts';
import { outcome, problemError, problemOf } from '@shared/problem/index.ts';
import {
  findCharts,
  glimpseChart,
  naturalSize,
  photoOf,
  proposeGrid,
  readCells,
  roughCells,
  settledCorners,
  straighten,
  type GridProposal,
  type Levels,
  type Lit,
  type Photo,
  type Point,
  type Steps,
} from '@shared/reading/index.ts';
import type { ChartAnswer, ChartQuestion, FoundCharts, Glimpse, Job } from './table.ts';

/** Of a chart at a glance so many pixels are enough, and so many a cell. */
const QUICK_PIXELS = 100_000;
const LEAST_QUICK_CELL = 4;

const SHOWN_PIXELS = 800_000;

/** Throws what `straighten` throws; problems further on come in the answer, with what was found until then. */
function* answerTo(photo: Photo, question: ChartQuestion): Steps<ChartAnswer> {
  const { levels, isByHand } = question;
  let { corners } = question;
  let { columns, rows } = question;
  let proposal: GridProposal | null = null;
  if (columns === null || rows === null) {
    proposal = yield* proposeGrid(photo, corners);
    columns ??= proposal.columns?.count ?? null;
    rows ??= proposal.rows?.count ?? null;
  }
  if (isByHand && columns !== null && rows !== null) {
    corners = yield* settledCorners(photo, corners, columns, rows);
  }
  const isSettled = corners !== question.corners;
  const straight = yield* straighten(photo, corners, naturalSize(corners, SHOWN_PIXELS));
  const found = { straight, isSettled, proposal, columns, rows };
  if (columns === null || rows === null) {
    const missing = outcome(() => {
      throw problemError('grid-not-found', { across: columns === null, up: rows === null });
    });
    return { ...found, reading: null, problem: missing.ok ? null : missing.problem };
  }
  try {
    return { ...found, reading: yield* readCells(photo, corners, columns, rows, levels), problem: null };
  } catch (thrown) {
    return { ...found, reading: null, problem: problemOf(thrown) };
  }
}

/** About what is between the corners of a small copy. Throws what `straighten` throws. */
function* quickAnswer(
  photo: Photo,
  { corners, columns, rows, levels, known }: Omit<ChartQuestion, 'isByHand' | 'isQuick'>,
  lit: Lit = { light: null },
): Steps<ChartAnswer> {
  const shown = naturalSize(corners, QUICK_PIXELS);
  const nothing = { isSettled: false, proposal: null, columns, rows, problem: null };
  if (columns === null || rows === null || columns > MOST_COLUMNS || rows > MOST_ROWS) {
    return { ...nothing, straight: yield* straighten(photo, corners, shown), reading: null };
  }
  // A whole number of pixels for each cell, so that they are looked at as they are shown.
  const whole = (length: number, cells: number): number =>
    cells * Math.max(LEAST_QUICK_CELL, Math.round(length / cells));
  const size = { width: whole(shown.width, columns), height: whole(shown.height, rows) };
  const straight = yield* straighten(photo, corners, size);
  return { ...nothing, straight, reading: roughCells(straight, columns, rows, levels, known, lit) };
}

/** Where corners lie no further than this from where they were, in pixels of the small copy, the light is about the same. */
const NEAR = 24;

/** The light of the chart that was answered before, as long as the corners stay near and the counts as they are. */
function litNearby(): (question: Pick<ChartQuestion, 'corners' | 'columns' | 'rows'>) => Lit {
  let before: (Pick<ChartQuestion, 'corners' | 'columns' | 'rows'> & { readonly lit: Lit }) | null = null;
  return ({ corners, columns, rows }) => {
    const isNear = before?.corners.every(({ x, y }, i) => {
      const corner = corners[i] as Point;
      return Math.hypot(corner.x - x, corner.y - y) <= NEAR;
    });
    if (!before || !isNear || before.columns !== columns || before.rows !== rows) {
      before = { corners, columns, rows, lit: { light: null } };
    }
    return before.lit;
  };
}

const AS_FOUND: Levels = { kind: 'colours', count: null };

function* glimpse(photo: Photo): Steps<Glimpse> {
  const chart = yield* glimpseChart(photo);
  if (chart === null) return { seen: null };
  return { seen: { chart, answer: yield* quickAnswer(photo, { ...chart, levels: AS_FOUND, known: null }) } };
}

function* charts(photo: Photo): Steps<FoundCharts> {
  return { charts: yield* findCharts(photo) };
}

export const chartJob: Job<'chart'> = (picture) => {
  const photo = photoOf(picture);
  const litBefore = litNearby();
  return (question) => {
    if (question === 'find') return charts(photo);
    if (question === 'glimpse') return glimpse(photo);
    return question.isQuick ? quickAnswer(photo, question, litBefore(question)) : answerTo(photo, question);
  };
};
