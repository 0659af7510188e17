/**
 * All that is worked out off the page's thread, by name: what each is given and
 * asked, and what comes back. Small facts go both ways: what is looked at only
 * (pictures to trace) stays in the window, and a plan is made anew where it is
 * needed, since it takes no longer than to receive one.
 */
import type { SizeColumn } from '@shared/fabric/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import type { Measure } from '@shared/motif/repeat/index.ts';
import type { Landmark, SheetOptions, SheetPage } from '@shared/output/index.ts';
import type { Gathered, PicturedRemedy } from '@shared/check/index.ts';
import type { GarmentNeed, RunningOrder } from '@shared/plan/index.ts';
import type { KnitPiece, Scope } from '@shared/project/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import type { AtHand } from '@shared/words/index.ts';
import type {
  ChartReading,
  Corners,
  FoundChart,
  GridProposal,
  Levels,
  Picture,
  PictureMotif,
  PictureOptions,
  Progress,
  SameYarns,
  TriedOverlap,
} from '@shared/reading/index.ts';
import type { SentProject } from './sent-project.ts';

/** What a job is, in types. */
interface Terms {
  /** What it is about. It is sent once, and kept for what is asked next of the same object. */
  readonly given: unknown;
  /** What is wanted of it. */
  readonly ask: unknown;
  /** Comes while it is worked on, each in its turn. */
  readonly part: unknown;
  /** How far it is; only the latest is told. */
  readonly progress: unknown;
  readonly answer: unknown;
}

/** Nothing to be said here. */
type None = null;

export interface Jobs {
  /** What a drawing measures. */
  readonly measure: JobOf<{ given: Drawing; ask: None; part: never; progress: None; answer: Measure }>;
  /** What is to be known of a piece before its first row, or what would help with one of its findings; nothing of one that cannot be planned. */
  readonly lookahead: JobOf<{
    given: KnitPiece;
    ask: 'all' | { readonly remediesFor: Gathered['kind'] };
    part: FoundAhead | MendedFinding;
    progress: None;
    answer: None;
  }>;
  /** Every size of a piece, placed, the smallest first. */
  readonly sizes: JobOf<{ given: SentProject; ask: None; part: SizePart; progress: None; answer: None }>;
  /** The yarn that all pieces take together in a size. Fails with what stands in the way of one. */
  readonly 'garment-yarn': JobOf<{ given: SentProject; ask: None; part: never; progress: None; answer: GarmentNeed }>;
  /** A sheet, drawn page by page. Fails with what stands in its way. */
  readonly sheet: JobOf<{ given: SentProject; ask: SheetAsk; part: DrawnSheet; progress: None; answer: None }>;
  /** A chart found on a photo, and read out of it. */
  readonly chart: JobOf<{
    given: Picture;
    ask: 'find' | 'glimpse' | ChartQuestion;
    part: never;
    progress: Progress;
    answer: FoundCharts | Glimpse | ChartAnswer;
  }>;
  /** Where two photos of one chart may meet, the likeliest way first. */
  readonly join: JobOf<{
    given: ToJoin;
    ask: None;
    part: never;
    progress: Progress;
    answer: readonly TriedOverlap[];
  }>;
  /** Any picture turned into a motif. */
  readonly picture: JobOf<{
    given: Picture;
    ask: PictureOptions;
    part: never;
    progress: Progress;
    answer: PictureMotif;
  }>;
}

type JobOf<Of extends Terms> = Readonly<Of>;

export interface Drawing {
  readonly grid: Grid;
  /** Palette index of the yarn behind the figure. */
  readonly ground: number;
}

export interface FoundAhead {
  /** Empty where it cannot be knitted. */
  readonly order: RunningOrder;
  readonly findings: readonly Gathered[];
  readonly atHand: readonly AtHand[];
  readonly landmarks: readonly Landmark[];
}

/** What would help with one of the findings. */
export interface MendedFinding {
  readonly kind: string;
  readonly remedies: readonly PicturedRemedy[];
}

export interface SizePart {
  readonly index: number;
  readonly column: SizeColumn;
}

export interface SheetAsk {
  readonly options: SheetOptions;
  /** Whether it is of all pieces, and of all sizes. */
  readonly scope: Scope;
  /** Index of the page that is looked at, which comes first. */
  readonly from: number;
}

/** A page before it is drawn. */
export type PageFrame = Pick<SheetPage, 'title' | 'widthMm' | 'heightMm'>;

export interface DrawnPage {
  readonly index: number;
  /** The page as `<svg>` text. */
  readonly svg: string;
  /** What is written on it, to be found where it is not drawn. */
  readonly words: string;
}

export type DrawnSheet =
  /** A part of the sheet is laid out behind `before` pages, and a first page of it drawn, so that no page goes blank that is looked at. */
  | {
      readonly kind: 'laid';
      readonly before: number;
      readonly frames: readonly PageFrame[];
      readonly page: DrawnPage;
      /** No part comes after it. */
      readonly isLast: boolean;
    }
  | { readonly kind: 'page'; readonly page: DrawnPage };

/** Answers `find`: the charts of a photo, the largest first. Fails with why there is none. */
export interface FoundCharts {
  readonly charts: readonly FoundChart[];
}

/** Answers `glimpse`, which is asked of a small copy of a photo: the chart that it seems to show, and about what is in it. */
export interface Glimpse {
  readonly seen: { readonly chart: FoundChart; readonly answer: ChartAnswer } | null;
}

export interface ChartQuestion {
  readonly corners: Corners;
  /** Null: as many as are found. */
  readonly columns: number | null;
  readonly rows: number | null;
  readonly levels: Levels;
  /** A person set the corners: they are put on the lines near them. Those that were found lie on lines. */
  readonly isByHand: boolean;
  /** While a corner moves: of a small copy of the photo, at a glance, and nothing is counted. */
  readonly isQuick: boolean;
  /** The colours that were found before, which a quick answer keeps; null where they are to be found anew. */
  readonly known: readonly string[] | null;
}

export interface ChartAnswer {
  /** The chart brought to a rectangle, as large as a screen shows it. */
  readonly straight: Picture;
  /** Whether the corners were put on lines near them, between which it is read. */
  readonly isSettled: boolean;
  /** What was counted; null where both counts were given, or the question was quick. */
  readonly proposal: GridProposal | null;
  readonly columns: number | null;
  readonly rows: number | null;
  /** Null with a problem, or where the counts are not known yet; of a quick answer, too, what is not told at a glance. */
  readonly reading: ChartReading | null;
  readonly problem: Problem | null;
}

/** Two readings of one chart, and how yarns of both are known to be one. */
export interface ToJoin {
  readonly first: ChartReading;
  readonly second: ChartReading;
  readonly by: SameYarns;
}

export type JobName = keyof Jobs;

/**
 * How a job is done: opened with what is given, then asked. Each step takes a
 * few milliseconds where it can be had, and between two of them it may be given
 * up. Throws a `ProblemError` for what a person can mend.
 */
export type Job<Name extends JobName> = (
  given: Jobs[Name]['given'],
) => (
  ask: Jobs[Name]['ask'],
  tell: (part: Jobs[Name]['part']) => void,
) => Iterator<Jobs[Name]['progress'], Jobs[Name]['answer'], void>;
