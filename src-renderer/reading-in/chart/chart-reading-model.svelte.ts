/**
 * One chart being read: where its corners are, what was found between them, and
 * what a person has settled. At first, and while a corner moves, quick answers
 * show (quick-answers.ts); when it rests the exact one is asked for, and until
 * it comes nothing is taken.
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
import { QuickAnswers, type Glimpsed } from './quick-answers.ts';
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
  /** The colours that were found last, as long as they are what is told apart. */
  #known: readonly string[] | null = null;
  #since = 0;
  #rest: ReturnType<typeof setTimeout> | undefined;
  readonly #reader = new WorkerClient('chart', null, undefined, copiedPicture);
  readonly #quick: QuickAnswers;
  readonly #heard: Listener<'chart'>;
  /** What was seen at a glance, until the photo itself says it. */
  #glimpsed = $state.raw<Pick<FoundChart, 'columns' | 'rows'> | null>(null);

  /** What was counted last; quick answers count nothing. */
  proposal = $state.raw<ChartAnswer['proposal']>(null);

  /** `settings`: what a person said of another photo of the same chart. */
  constructor(
    readonly picture: DecodedPicture,
    settings: ChartSettings = AS_FOUND,
  ) {
    this.settings = { ...settings, givenColumns: null, givenRows: null };
    this.corners = inset(picture.width, picture.height);
    this.#quick = new QuickAnswers(picture, (answer) => {
      // The exact one may have come before it, or the corners have become impossible.
      if (!this.isExact && this.problem === null) this.#show(answer);
    });
    this.#heard = {
      progress: (progress) => {
        if (performance.now() - this.#since > SILENT_MS) this.progress = progress;
      },
      answer: (answer) => {
        if ('straight' in answer) this.#take(answer);
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
    this.settings.givenColumns ??
      this.foundAt?.columns ??
      this.proposal?.columns?.count ??
      this.#glimpsed?.columns ??
      null,
  );
  readonly rows: number | null = $derived(
    this.settings.givenRows ?? this.foundAt?.rows ?? this.proposal?.rows?.count ?? this.#glimpsed?.rows ?? null,
  );
  /** Where nothing more comes by itself: it was given up, or came to nothing. */
  readonly isResting: boolean = $derived(this.isExact || this.isStopped || this.problem !== null);
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
    this.#placeAt(corners, REST_MS);
  }

  /** The chart meant is that one of those that were found; one that is not sure is to be confirmed. */
  choose(chart: number): void {
    const chosen = this.found?.[chart];
    if (!chosen) return;
    this.isConfirmed = chosen.sure;
    this.#isByHand = false;
    this.#placeAt(chosen.corners, 0);
  }

  /** The corners that were found are right. */
  confirm(): void {
    this.isConfirmed = true;
  }

  /** The chart is read turned clockwise by a quarter. */
  turn(): void {
    // What was only seen at a glance is taken to be meant.
    if (this.#isUnfound) this.isConfirmed = this.#isByHand = true;
    this.#placeAt(turnedBy(this.corners, 1), 0);
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
    else this.#known = null;
    if (!this.#isUnfound) this.#changed(REST_MS);
    // What is found is read as is said by then.
    else if (this.isPlaced) this.#askQuick();
  }

  /** Gives up what is being worked on; what shows stays. */
  stop(): void {
    this.#giveUp();
    this.isFinding = false;
    this.isStopped = true;
  }

  /** Takes up again what was given up. */
  again(): void {
    if (this.#isUnfound) {
      this.isStopped = false;
      this.isFinding = true;
      this.#findExactly();
    } else this.#changed(0);
  }

  close(): void {
    clearTimeout(this.#rest);
    this.#reader.close();
    this.#quick.close();
  }

  #placeAt(corners: Corners, restMs: number): void {
    this.corners = corners;
    this.isPlaced = true;
    this.isFinding = false;
    this.#changed(restMs);
  }

  /** Neither was a chart found, nor did a person say where one is. */
  get #isUnfound(): boolean {
    return this.found === null && !this.#isByHand;
  }

  /** Looks for charts, at a glance first: on a machine of two processors each would hold up the other. Whoever sets the corners meanwhile is not disturbed. */
  #find(): void {
    this.#quick.glimpse((seen) => {
      if (!this.isFinding) return;
      if (seen) this.#showGlimpse(seen);
      this.#findExactly();
    });
  }

  #findExactly(): void {
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
        else this.#forgetGlimpse();
      },
      failed: (problem) => {
        this.#rested();
        this.isFinding = false;
        this.#forgetGlimpse();
        this.notFound = problem;
      },
    });
  }

  #showGlimpse({ chart, answer }: Glimpsed): void {
    this.#glimpsed = chart;
    this.corners = chart.corners;
    this.isPlaced = true;
    this.answer = answer;
    this.#known = answer.reading?.colours ?? null;
  }

  /** It was mistaken, or one of several. */
  #forgetGlimpse(): void {
    this.#quick.stop();
    this.#glimpsed = null;
    this.#known = null;
    this.answer = null;
    this.isPlaced = false;
    this.corners = inset(this.picture.width, this.picture.height);
  }

  /** The exact answer is asked for when nothing has changed for so long; a quick one at once. */
  #changed(restMs: number): void {
    this.isExact = false;
    this.isStopped = false;
    this.isFinding = this.isFinding && !this.isPlaced;
    this.#giveUp();
    try {
      assertCorners(this.corners, this.picture.width, this.picture.height);
      this.problem = null;
    } catch (thrown) {
      this.problem = problemOf(thrown);
      return;
    }
    if (!this.isPlaced) return;
    this.#askQuick();
    if (restMs === 0) this.#askExact();
    else this.#rest = setTimeout(() => this.#askExact(), restMs);
  }

  #askExact(): void {
    this.#since = performance.now();
    const { givenColumns, givenRows } = this.settings;
    const at = this.foundAt;
    this.#reader.ask(
      this.picture,
      this.#question(this.corners, givenColumns ?? at?.columns ?? null, givenRows ?? at?.rows ?? null, false),
      this.#heard,
    );
  }

  #askQuick(): void {
    this.#quick.ask(this.#question(this.corners, this.columns, this.rows, true));
  }

  #question(corners: Corners, columns: number | null, rows: number | null, isQuick: boolean): ChartQuestion {
    const { kind, yarns, figure } = this.settings;
    return {
      corners,
      columns,
      rows,
      levels: kind === 'ink' ? { kind, figure } : { kind, count: yarns },
      isByHand: this.#isByHand,
      isQuick,
      known: kind === 'colours' ? this.#known : null,
    };
  }

  #take(answer: ChartAnswer): void {
    this.#rested();
    this.#show(answer);
    this.problem = answer.problem;
    this.proposal = answer.proposal ?? this.proposal;
    this.#known = answer.reading?.colours ?? null;
    this.isExact = true;
    this.#quick.drop();
  }

  #show(answer: ChartAnswer): void {
    const before = this.answer;
    if (answer.columns !== before?.columns || answer.rows !== before.rows) this.cells.forget();
    this.answer = answer;
  }

  /** Nothing more comes of the exact question that is out. */
  #giveUp(): void {
    clearTimeout(this.#rest);
    this.#reader.stop();
    this.#rested();
  }

  #rested(): void {
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
