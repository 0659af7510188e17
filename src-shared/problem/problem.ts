/**
 * What went wrong, as data.
 *
 * Computation and services never make sentences: they throw a
 * {@link ProblemError} that carries a code, the place and the numbers.
 * `words/` turns it into what happened, where, and what to do about it.
 * The table below is the whole list; adding a row makes the compiler ask
 * for its words.
 */
import type { Region, SectionName } from '../piece/index.ts';
import type { Fault, FaultAt } from '../schema/index.ts';

export interface ProblemFacts {
  // Needles and placing
  'needle-unknown': { text: string };
  'needle-not-on-piece': { needle: string; first: string; last: string };
  'groups-wider-than-piece': { needed: number; available: number; stitches: number };
  'groups-overlap': { left: number; right: number; stitches: number };
  'groups-out-of-order': { left: number; right: number };
  /** `least`: the smallest value to give, for the blank columns that must lie within it. */
  'rule-cannot-be-met': { rule: 'margins' | 'gaps'; given: number; least: number; needed: number; available: number };
  'by-hand-count': { given: number; groups: number };
  'no-figure': { motif: string };
  'motif-taller-than-section': { rows: number; section: Region; available: number };
  /** `plain` rows are asked for between it and the `edge`, and only `left` are left beside it. */
  'motif-leaves-section': { rows: number; section: Region; plain: number; left: number; edge: 'lower' | 'upper' };
  'section-missing': { section: SectionName };
  'rows-outside-piece': { first: number; last: number; rows: number };
  /** Bands by their number, from 1; the rows on which they meet. */
  'bands-overlap': { one: number; other: number; first: number; last: number };
  /** Fills and bands by their number, from 1; the rows on which they meet. */
  'fill-overlaps-band': { fill: number; band: number; first: number; last: number };
  'fills-overlap': { one: number; other: number; first: number; last: number };
  'fill-without-room': { fill: number };
  'fill-rows-turned': { fill: number; first: number; last: number };
  'hem-longer-than-piece': { hem: number; rows: number };
  'sections-longer-than-piece': {
    hem: number;
    parts: readonly { readonly name: string; readonly rows: number }[];
    rows: number;
  };
  'shaping-impossible': { changes: number; rows: number };
  'shaping-outside-piece': { row: number; rows: number };
  /** `taken`: stitches to be taken away on `row`, of the `before` that there are. */
  'shaping-leaves-nothing': { row: number; taken: number; before: number };
  'shaping-too-wide': { row: number; needles: number; most: number };
  /** `count` stitches or rows that measure `mm`, and what they make in 10 cm. */
  'gauge-absurd': {
    of: 'stitches' | 'rows';
    count: number;
    mm: number;
    inTenCm: number;
    least: number;
    most: number;
  };
  'steps-line-unclear': { line: string };
  'steps-row-is-cast-on': { row: number };
  'steps-row-twice': { row: number };
  'steps-edge-twice': { row: number; side: 'left' | 'right' };

  // Numbers and options given by a person
  'not-a-whole-number': { text: string; least: number; most: number };
  'not-a-number': { text: string };
  'option-unknown': { option: string };
  'option-value': { option: string; text: string; allowed: string };
  'option-missing': { option: string };
  'option-empty': { option: string };
  'switch-value': { option: string; text: string };
  'argument-missing': { argument: string };
  'argument-unexpected': { text: string };
  'command-unknown': { text: string };
  'choice-unknown': { given: number; choices: number };
  'colour-unknown': { text: string; known: string };

  // Pictures
  'picture-unknown-kind': Record<string, never>;
  'picture-empty': Record<string, never>;
  'picture-truncated': { kind: string };
  'picture-broken': { kind: string; damage: PictureDamage };
  'picture-animated': { kind: string };
  /** Shapes used in shapes, or outlines without end. */
  'svg-too-much': Record<string, never>;
  'svg-unsafe': { danger: SvgDanger };
  'picture-interlaced': { width: number; height: number; mostMegapixels: number };
  'picture-too-large': { width: number; height: number; mostWidth: number; mostHeight: number };
  'image-too-large': { width: number; height: number; mostPixels: number; mostSide: number };
  'picture-too-many-colours': { colours: number; most: number };
  /** `yarns`: how many there would be. */
  'palette-full': { yarns: number; most: number };

  // Photos and scans
  'photo-unknown-kind': Record<string, never>;
  'photo-only-in-window': { kind: string };
  'photo-in-passes': { width: number; height: number; mostMegapixels: number };
  'photo-too-large': { width: number; height: number; mostMegapixels: number };
  'corners-unusable': { fault: CornerFault };
  'corner-outside-picture': { corner: number; x: number; y: number; width: number; height: number };
  'grid-not-found': { across: boolean; up: boolean };
  'cells-too-fine': { columns: number; rows: number; mostColumns: number; mostRows: number };
  'yarns-out-of-range': { given: number; least: number; most: number };
  'crop-outside-picture': { width: number; height: number };

  // Lettering
  'letters-missing': { letters: string; font: string };
  'lettering-empty': Record<string, never>;

  // Projects
  'project-not-json': { detail: string };
  'project-newer': { version: number; known: number };
  /** `path` as a person counts: `motifs[1].rows[2]`; empty for the whole file. */
  'project-invalid': { path: string; fault: Fault };
  'project-not-ours': Record<string, never>;
  /** Saved as it is, the file could not be opened again. `path` and `fault` as in `project-invalid`. */
  'project-not-savable': { path: string; fault: Fault };
  'motif-too-large': { width: number; height: number; mostWidth: number; mostHeight: number };
  'motif-missing': { motif: string };
  /** Bands and fills by their number, from 1. */
  'motif-in-use': { motif: string; bands: readonly number[]; fills: readonly number[] };
  'motif-last': Record<string, never>;
  'motifs-too-many': { most: number };
  'yarns-too-many-in-motif': { motif: string; yarns: number; most: number };
  'sizes-too-many': { most: number };
  'size-last': Record<string, never>;
  'size-name-unusable': { text: string; most: number };
  'size-name-taken': { name: string };
  'size-unknown': { given: string; known: readonly string[] };
  'underlays-too-large': { mostMegabytes: number };

  // Files and services
  'file-missing': Record<string, never>;
  'file-is-folder': Record<string, never>;
  'file-too-large': { bytes: number; most: number };
  'file-not-readable': { detail: string };
  'file-changed-elsewhere': Record<string, never>;
  'file-exists': Record<string, never>;
  /** What is there is no file that the program writes under such a name. */
  'file-of-other-kind': Record<string, never>;
  'file-busy': Record<string, never>;
  'file-name-unusable': { text: string };
  'path-closed': { why: ClosedPath };
  /** Files that are there and that the command line did not write for the same project, or that were changed since. */
  'files-not-from-here': { names: readonly string[] };
  'files-kept': { names: readonly string[] };
  'folder-not-writable': { detail: string };
  'disk-full': Record<string, never>;
  'file-not-written': { detail: string };
  /** Kept work that is damaged, or that a newer program kept. */
  'kept-work-unreadable': Record<string, never>;
  'request-invalid': { method: string; wrong: RequestFault };
  'request-refused': { detail: string };
  'host-busy': Record<string, never>;
  'host-unreachable': Record<string, never>;
  /** Ended at its limit of time (`amount` in seconds) or of memory (in MB). */
  'work-stopped': { work: LimitedWork; limit: 'time' | 'memory'; amount: number };
  unexpected: { detail: string };
}

/** Work that is ended when it takes too long, or too much memory. */
export type LimitedWork = 'picture' | 'export';

/** Why a request is not carried out, nor its answer given: `unknown`, there is none called so. */
export type RequestFault = 'unknown' | 'not-json' | FaultAt;

/** The part of a picture file that cannot be right. */
export type PictureDamage =
  | 'signature'
  | 'header'
  | 'second-header'
  | 'chunk'
  | 'order'
  | 'checksum'
  | 'palette'
  | 'note'
  | 'pixels'
  | 'drawing'
  | 'encoding';

/** What in an SVG could do more than be drawn. */
export type SvgDanger = 'script' | 'handler' | 'foreign' | 'document-type' | 'outside';

/** Why a path is neither read nor written. */
export type ClosedPath =
  /** Hidden, or in a hidden folder. */
  | 'hidden'
  /** The program's own data. */
  | 'own-data'
  /** Where the platform's dialogs choose, they chose another. */
  | 'not-chosen'
  /** No ending of a file that the program writes. */
  | 'ending';

/** Why four points cannot be the corners of a chart. */
export type CornerFault = 'too-close' | 'in-line' | 'crossed' | 'not-convex' | 'anticlockwise';

export type ProblemCode = keyof ProblemFacts;

/** One problem: its code, the place it is in (a file, a field, an option), and its numbers. */
export type Problem = {
  readonly [Code in ProblemCode]: {
    readonly code: Code;
    readonly where: string | null;
    readonly facts: ProblemFacts[Code];
  };
}[ProblemCode];

/** Thrown by computation and services; the message is the bare code, for logs. */
export class ProblemError extends Error {
  constructor(readonly problem: Problem) {
    super(problem.code);
    this.name = 'ProblemError';
  }
}

/** Makes the error for `code`; `where` names the file, field or option it is in. */
export function problemError<Code extends ProblemCode>(
  code: Code,
  facts: ProblemFacts[Code],
  where: string | null = null,
): ProblemError {
  return new ProblemError({ code, where, facts } as Problem);
}

/** The problem inside anything that was thrown; what is not ours becomes `unexpected`. */
export function problemOf(thrown: unknown): Problem {
  if (thrown instanceof ProblemError) return thrown.problem;
  const detail = thrown instanceof Error ? thrown.message : String(thrown);
  return { code: 'unexpected', where: null, facts: { detail } };
}

/** The same problem with its place named, if it has none yet. */
export function at(where: string, thrown: unknown): ProblemError {
  const problem = problemOf(thrown);
  return new ProblemError(problem.where === null ? ({ ...problem, where } as Problem) : problem);
}

/** Either a value or the problem that stood in its way. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** Runs `compute` and turns what it throws into an {@link Outcome}. Our own bugs still surface, as `unexpected`. */
export function outcome<T>(compute: () => T): Outcome<T> {
  try {
    return { ok: true, value: compute() };
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown) };
  }
}
