/** Anchors of the copies of a pattern, alike in all copies of a motif. */
import { mirrorAcross, modulo, type Grid } from '../grid/index.ts';
import type { PlacedCopies, PlacedPattern } from '../fabric/index.ts';
import { copiesOf, type AnchorWish } from '../pattern/index.ts';
import { anchorsInCopy, type CopyFloat, type CopyQuestion } from './in-copy.ts';

/** Copies as placed, and the floats of each of them that are over the limit. */
export interface BrokenCopies {
  readonly place: PlacedCopies;
  /** Rows after which they begin again, and needles to the right by which they are moved then. */
  readonly period: number;
  readonly step: number;
  /** Index 0 is the first row; columns are counted from the left needle of a copy. */
  readonly rows: readonly (readonly CopyFloat[])[];
}

/** The copies of a pattern with the anchors that its wish asks for. */
export function brokenCopies(pattern: PlacedPattern, wish: AnchorWish, main: number): BrokenCopies[] {
  const all: readonly PlacedCopies[] = copiesOf(pattern);
  return all.map((place) => {
    // Groups of one motif have the same anchors, whether they stand alone or not.
    const alike = all.filter(({ motif }) => motif === place.motif);
    const isBesideItself = alike.some((one) => !('across' in one) || (one.across as number) > 1);
    const isAboveItself = alike.some(({ firstRow, lastRow, copy }) => lastRow - firstRow + 1 > copy.height);
    const { copy, isMirrored, motif } = place;
    const drawn = isMirrored ? mirrorAcross(copy) : copy;
    const ownStep = isMirrored ? -place.step : place.step;
    // A copy of one row would stand on itself: two of them take turns.
    const times = isAboveItself && copy.height === 1 ? 2 : 1;
    const cells = (is: 'never' | 'always'): Set<number> => {
      const found = new Set<number>();
      for (const { motif: of, column, row, is: said } of wish.byHand) {
        if (of !== motif || said !== is || column < 0 || column >= copy.width || row >= copy.height) continue;
        for (let time = 0; time < times; time++) {
          found.add((row + time * copy.height) * copy.width + modulo(column + time * ownStep, copy.width));
        }
      }
      return found;
    };
    const rows = asked({
      copy: times === 1 ? drawn : twice(drawn, ownStep),
      main,
      longest: wish.longest,
      isBehindFigure: wish.isBehindFigure,
      isBesideItself,
      isAboveItself,
      step: times * ownStep,
      never: cells('never'),
      always: cells('always'),
    });
    const period = times * copy.height;
    return {
      place,
      period,
      step: times * place.step,
      rows: isMirrored ? rows.map((row) => row.map(turned(copy))) : rows,
    };
  });
}

/** One row, and above it the same moved to the right. */
function twice({ width, cells }: Grid, step: number): Grid {
  const both = Uint8Array.from({ length: 2 * width }, (_, at) =>
    at < width ? (cells[at] as number) : (cells[modulo(at - width - step, width)] as number),
  );
  return { width, height: 2, cells: both };
}

function turned({ width }: Grid): (float: CopyFloat) => CopyFloat {
  return ({ first, length, anchors, loose, ...float }) => ({
    ...float,
    first: modulo(width - first - length, width),
    length,
    anchors: anchors.map((at) => length - 1 - at).reverse(),
    loose: loose.map((one) => ({ first: length - 1 - one.last, last: length - 1 - one.first })).reverse(),
  });
}

interface Answer {
  readonly question: CopyQuestion;
  readonly rows: readonly (readonly CopyFloat[])[];
}

/** Where a piece is changed, most of its motifs are not: the last answers are kept. */
const MOST_ANSWERS = 12;
let answers: Answer[] = [];

function asked(question: CopyQuestion): Answer['rows'] {
  const known = answers.find((answer) => isSame(answer.question, question));
  const answer = known ?? { question, rows: anchorsInCopy(question) };
  answers = [answer, ...answers.filter((other) => other !== known)].slice(0, MOST_ANSWERS);
  return answer.rows;
}

function isSame(one: CopyQuestion, other: CopyQuestion): boolean {
  return (
    one.main === other.main &&
    one.longest === other.longest &&
    one.isBehindFigure === other.isBehindFigure &&
    one.isBesideItself === other.isBesideItself &&
    one.isAboveItself === other.isAboveItself &&
    one.step === other.step &&
    one.copy.width === other.copy.width &&
    one.copy.height === other.copy.height &&
    isSameSet(one.never, other.never) &&
    isSameSet(one.always, other.always) &&
    isSameDrawing(one.copy.cells, other.copy.cells)
  );
}

function isSameDrawing(one: Uint8Array, other: Uint8Array): boolean {
  for (let at = 0; at < one.length; at++) if (one[at] !== other[at]) return false;
  return true;
}

function isSameSet(one: ReadonlySet<number>, other: ReadonlySet<number>): boolean {
  return one.size === other.size && [...one].every((cell) => other.has(cell));
}
