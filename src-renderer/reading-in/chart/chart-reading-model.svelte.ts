/**
 * One chart being read: where its corners are, what was found between them, and
 * what a person has settled. While a corner moves, quick answers follow it;
 * when it rests the exact one is asked for.
 */
import { problemOf, type Problem } from '@shared/problem/index.ts';
import {
  assertCorners,
  turnedBy,
  type ChartReading,
  type Corners,
  type FoundChart,
  type FigureLevel,
  type Levels,
  type Point,
  type Progress,
} from '@shared/reading/index.ts';
import { copiedPicture } from '../../pictures/copied.ts';
import type { DecodedPicture } from '../../pictures/decode.ts';
import { WorkerClient, type ChartAnswer, type ChartQuestion, type Listener } from '../../worker/index.ts';
import { foundAt, type FoundAt } from './found-charts.ts';
import { SettledCells } from './settled-cells.svelte.ts';

/** After this long without a move a corner rests. */
const REST_MS = 180;

/** Work shorter than this shows no progress: it would only flicker. */
const SILENT_MS = 400;

/** Where the corners lie until somebody moves them. */
const INSET = 0.08;

/** What a person says of the chart as a whole. */
export interface ChartSettings {
  /** Null: as found. */
  readonly givenColumns: number | null;
  readonly givenRows: number | null;
  readonly kind: Levels['kind'];
  /** Null: as many as are found. */
  readonly yarns: number | null;
  readonly figure: FigureLevel;
}

const AS_FOUND: ChartSettings = {
  givenColumns: null,
  givenRows: null,
  kind: 'colours',
  yarns: null,
  figure: 'dark',
};

export class ChartReadingModel {
  corners = $state.raw<Corners>(inset(1, 1));
  /** True once the corners are somewhere on purpose: a person put them there, or a chart was found. */
  isPlaced = $state(false);
  /** Charts that were found, the largest first; null: they are looked for, or a person was quicker. */
  found = $state.raw<readonly FoundChart[] | null>(null);
  isFinding = $state(true);
  /** Why none was found. */
  notFound = $state.raw<Problem | null>(null);
  /** A person set the corners, or said that those that were found are right. */
  isConfirmed = $state(false);
  settings = $state.raw<ChartSettings>(AS_FOUND);
  /** The latest answer, which shows until a better one comes. */
  answer = $state.raw<ChartAnswer | null>(null);
  /** Why there is no answer for the corners as they lie. */
  problem = $state.raw<Problem | null>(null);
  /** What is being worked on for longer than a moment. */
  progress = $state.raw<Progress | null>(null);
  isExact = $state(false);
  /** True if what was being worked on was given up. */
  isStopped = $state(false);

  readonly cells = new SettledCells();
  /** A person set the corners; else they are those of a chart that was found. */
  #isByHand = false;
  /** A question is out, and whether it is a quick one. */
  #isOut = false;
  #isQuick = false;
  #isQuickWanted = false;
  #since = 0;
  #rest: ReturnType<typeof setTimeout> | undefined;
  readonly #reader = new WorkerClient('chart', null, undefined, copiedPicture);
  readonly #heard: Listener<'chart'>;

  /** What was counted last; quick answers count nothing. */
  proposal = $state.raw<ChartAnswer['proposal']>(null);

  /** `settings`: what a person said of another photo of the same chart. */
  constructor(
    readonly picture: DecodedPicture,
    settings: ChartSettings = AS_FOUND,
  ) {
    this.settings = { ...settings, givenColumns: null, givenRows: null };
    this.corners = inset(picture.width, picture.height);
    this.#heard = {
      progress: (progress) => {
        if (performance.now() - this.#since > SILENT_MS) this.progress = progress;
      },
      answer: (answer) => {
        if (!('charts' in answer)) this.#take(answer);
      },
      failed: (problem) => {
        this.#rested();
        this.problem = problem;
      },
    };
    this.#find();
  }

  readonly reading: ChartReading | null = $derived(this.answer?.reading ? this.cells.in(this.answer.reading) : null);
  /** The found chart whose corners these are. */
  readonly foundAt: FoundAt | null = $derived(this.isPlaced && this.found ? foundAt(this.found, this.corners) : null);
  readonly columns: number | null = $derived(
    this.settings.givenColumns ?? this.foundAt?.columns ?? this.proposal?.columns?.count ?? null,
  );
  readonly rows: number | null = $derived(
    this.settings.givenRows ?? this.foundAt?.rows ?? this.proposal?.rows?.count ?? null,
  );
  /** True if what shows is the whole answer for the corners as they lie. */
  readonly isReady: boolean = $derived(
    this.isConfirmed && this.isExact && this.problem === null && this.reading !== null,
  );

  /** Puts a corner somewhere on the picture; those who drag say when they have done. */
  move(index: number, { x, y }: Point): void {
    const { width, height } = this.picture;
    const to = { x: Math.min(width, Math.max(0, x)), y: Math.min(height, Math.max(0, y)) };
    this.place(this.corners.map((corner, i) => (i === index ? to : corner)) as unknown as Corners);
  }

  place(corners: Corners): void {
    this.isConfirmed = true;
    this.#isByHand = true;
    this.#placeAt(corners);
  }

  /** The chart meant is that one of those that were found; one that is not sure is to be confirmed. */
  choose(chart: number): void {
    const chosen = this.found?.[chart];
    if (!chosen) return;
    this.isConfirmed = chosen.sure;
    this.#isByHand = false;
    this.#placeAt(chosen.corners);
  }

  /** The corners that were found are right. */
  confirm(): void {
    this.isConfirmed = true;
  }

  /** The chart is read turned clockwise by a quarter. */
  turn(): void {
    this.#placeAt(turnedBy(this.corners, 1));
  }

  /** The corners of the picture are those of the chart. */
  placeOnWhole(): void {
    const { width, height } = this.picture;
    this.place([
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: height },
      { x: 0, y: height },
    ]);
  }

  /** Counts, or what is told apart, changed by the person. What was settled for other counts goes. */
  set(to: Partial<ChartSettings>): void {
    this.settings = { ...this.settings, ...to };
    if ('givenColumns' in to || 'givenRows' in to) this.cells.forget();
    this.#changed();
  }

  /** Gives up what is being worked on; what shows stays. */
  stop(): void {
    clearTimeout(this.#rest);
    this.#reader.stop();
    this.#rested();
    this.isFinding = false;
    this.isStopped = true;
  }

  /** Takes up again what was given up. */
  again(): void {
    this.#changed();
  }

  close(): void {
    clearTimeout(this.#rest);
    this.#reader.close();
  }

  #placeAt(corners: Corners): void {
    this.corners = corners;
    this.isPlaced = true;
    this.isFinding = false;
    this.#changed();
  }

  /** Looks for charts; whoever sets the corners meanwhile is not disturbed. */
  #find(): void {
    this.#since = performance.now();
    this.#reader.ask(this.picture, 'find', {
      progress: (progress) => this.#heard.progress?.(progress),
      answer: (answer) => {
        if (!('charts' in answer)) return;
        this.#rested();
        this.isFinding = false;
        this.found = answer.charts;
        // Of two it is asked which.
        if (answer.charts.length === 1) this.choose(0);
      },
      failed: (problem) => {
        this.#rested();
        this.isFinding = false;
        this.notFound = problem;
      },
    });
  }

  #changed(): void {
    this.isExact = false;
    this.isStopped = false;
    clearTimeout(this.#rest);
    try {
      assertCorners(this.corners, this.picture.width, this.picture.height);
      this.problem = null;
    } catch (thrown) {
      this.#reader.stop();
      this.#rested();
      this.problem = problemOf(thrown);
      return;
    }
    if (!this.isPlaced) return;
    if (this.#isOut) this.#isQuickWanted = true;
    else this.#ask(true);
    this.#rest = setTimeout(() => this.#ask(false), REST_MS);
  }

  #ask(isQuick: boolean): void {
    this.#isOut = true;
    this.#isQuickWanted = false;
    this.#since = performance.now();
    this.#isQuick = isQuick;
    const { givenColumns, givenRows, kind, yarns, figure } = this.settings;
    const at = this.foundAt;
    const question: ChartQuestion = {
      corners: this.corners,
      columns: isQuick ? this.columns : (givenColumns ?? at?.columns ?? null),
      rows: isQuick ? this.rows : (givenRows ?? at?.rows ?? null),
      levels: kind === 'ink' ? { kind, figure } : { kind, count: yarns },
      isByHand: this.#isByHand,
      isQuick,
    };
    this.#reader.ask(this.picture, question, this.#heard);
  }

  #take(answer: ChartAnswer): void {
    this.#rested();
    const before = this.answer;
    this.answer = answer;
    if (answer.columns !== before?.columns || answer.rows !== before.rows) this.cells.forget();
    if (!this.#isQuick) {
      this.problem = answer.problem;
      this.proposal = answer.proposal ?? this.proposal;
      this.isExact = true;
    } else if (this.#isQuickWanted) this.#ask(true);
  }

  #rested(): void {
    this.#isOut = false;
    this.progress = null;
  }
}

function inset(width: number, height: number): Corners {
  const [left, right, top, bottom] = [width * INSET, width * (1 - INSET), height * INSET, height * (1 - INSET)];
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}
