import { describe, expect, it } from 'vitest';
import { makePlan, runningOrderOf } from '@shared/plan/index.ts';
import { feedingLines, feedingRuns, type FeedingRun } from '@shared/plan/feeding.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { feedingWords } from '@shared/words/feeding.ts';
import { byHand } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';

function runsOf(project: ProjectAt): FeedingRun[] {
  const piece = pieceIn(project);
  const running = runningOrderOf(piece, makePlan(piece));
  if (!running.isKnittable) throw new Error('The piece can be knitted');
  return feedingRuns(running.order);
}

/** `2–3: 0 1`: rows, feeders, and what is laid by hand. */
const say = ({ first, last, feeders, byHand: laid }: FeedingRun): string =>
  `${first}–${last}: ${feeders[1] ?? '-'} ${feeders[2] ?? '-'}${laid.length > 0 ? ` by hand ${laid.join(' ')}` : ''}`;

describe('which yarn is where', () => {
  it('has main in the first feeder, the contrast of a row in the second, and all contrast by hand where there are more', () => {
    // common practice, no source. Row 2 in one contrast, row 3 in two, row 4 blank, row 5 in the other.
    const motif = ['O..', '...', 'XO.', 'X..'];
    const project = projectWith({ motif, copies: [1], stitches: 9, rows: 6, band: byHand(-1) });
    expect(runsOf(project).map(say)).toEqual([
      '1–1: 0 -',
      '2–2: 0 1',
      '3–3: 0 - by hand 1 2',
      '4–4: 0 -',
      '5–5: 0 2',
      '6–6: 0 -',
    ]);
  });

  it('has the one yarn of a row all in contrast in the first feeder', () => {
    const project = projectWith({ motif: ['...', 'XXX'], copies: [3], stitches: 9, rows: 4, band: { unit: 'whole' } });
    expect(runsOf(project).map(say)).toContain('2–2: 1 -');
  });

  it('joins neighbouring rows that are fed alike and covers each row once', () => {
    const motif = Array<string>(10).fill('X.X');
    const runs = runsOf(projectWith({ motif, copies: [2], stitches: 20, rows: 40, band: byHand(-3) }));
    expect(runs).toHaveLength(3);
    expect(runs.flatMap(({ first, last }) => Array.from({ length: last - first + 1 }, (_, at) => first + at))).toEqual(
      Array.from({ length: 40 }, (_, index) => index + 1),
    );
  });

  it('is told by what is fed, with all of its rows, where it changes often', () => {
    const motif = Array.from({ length: 20 }, (_, row) => (row % 2 === 0 ? 'X.X' : '...'));
    const runs = runsOf(projectWith({ motif, copies: [2], stitches: 20, rows: 30, band: byHand(-3) }));
    expect(runs.length).toBeGreaterThan(14);
    const lines = feedingLines(runs);
    expect(lines.map(({ feeders }) => [feeders[1], feeders[2]])).toEqual([
      [0, null],
      [0, 1],
    ]);
    expect(lines.flatMap(({ rows }) => rows).length).toBe(runs.length);
    // As many as are read; the rest are counted.
    expect(feedingWords.rows({ rows: Array.from({ length: 14 }, (_, at) => [at + 1, at + 1] as const) })).toBe(
      '1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 and 2 more stretches',
    );
  });
});
