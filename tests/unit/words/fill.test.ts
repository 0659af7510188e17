import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import type { SeamMatching, SeamMeeting } from '@shared/fabric/index.ts';
import { words } from '@shared/words/index.ts';

const { fill } = words;
const GOES_ON: SeamMeeting = { kind: 'continues' };

/** A matching by how many rows do what. */
function matching({ continues = 0, mirrors = 0, off = 0, plain = 0, uniform = 0 }): SeamMatching {
  const of = (count: number, meeting: SeamMeeting): SeamMeeting[] => new Array<SeamMeeting>(count).fill(meeting);
  const rows = [
    ...of(continues + uniform, GOES_ON),
    ...of(mirrors, { kind: 'mirrors' }),
    ...of(off, { kind: 'off', by: 1 }),
    ...of(plain, { kind: 'plain', stitches: 2 }),
  ];
  return { rows, runs: [], matching: continues + mirrors, off, plain, uniform };
}

describe('how a fill meets in the seam, in words', () => {
  it.each([
    [{ continues: 98 }, 'It goes on across the closed seam on all **98 rows**.'],
    [{ mirrors: 12 }, 'It meets its own mirror image in the closed seam on all **12 rows**.'],
    [
      { continues: 9, mirrors: 3 },
      'It meets in the closed seam on all **12 rows**, on **3** of them as its own mirror image.',
    ],
    [{ off: 40 }, 'Across the closed seam it is off on all **40 rows**.'],
    [{ continues: 1, off: 40, uniform: 3 }, 'Across the closed seam it meets on **1 row** and is off on **40**.'],
    [{ off: 40, uniform: 8 }, 'Across the closed seam it is off on all **40** rows that show it.'],
    [
      { continues: 30, plain: 4 },
      'It goes on across the closed seam on all **30** rows that show it. On **4 rows** it ends before the seam.',
    ],
    [{ plain: 10 }, 'Its edges are plain, so nothing has to meet in the seam.'],
    [{ uniform: 10 }, 'Each row is of one yarn, so it meets wherever it is cut.'],
  ])('%j', (rows, sentence) => {
    expect(fill.seam.summary(matching(rows))).toBe(sentence);
  });

  it.each<[SeamMeeting, string]>([
    [GOES_ON, 'Rows 41–44: goes on'],
    [{ kind: 'mirrors' }, 'Rows 41–44: mirrored in the seam'],
    [{ kind: 'off', by: 2 }, 'Rows 41–44: 2 stitches too many'],
    [{ kind: 'off', by: -1 }, 'Rows 41–44: 1 stitch too few'],
    [{ kind: 'plain', stitches: 1 }, 'Rows 41–44: 1 plain stitch along the seam'],
  ])('%j', (meeting, line) => {
    expect(fill.seam.run({ first: 41, last: 44, meeting })).toBe(line);
  });

  it('says which way a stitch count or a shift goes', () => {
    expect(fill.seam.width(-2, 96)).toBe('2 stitches fewer, 96 at the cast-on');
    expect(fill.seam.shift(1)).toBe('The pattern 1 stitch further to the right');
    expect(fill.seam.shift(-3)).toBe('The pattern 3 stitches further to the left');
  });
});

describe('where the copies of a fill stand, in words', () => {
  const slots = (...needles: number[]): Slot[] => needles as Slot[];
  const lies = (first: Slot[], step: number): string =>
    fill.lies({ index: 0, firstRow: 2, lastRow: 60, first, width: 6, step });

  it('names few needles, and counts through many', () => {
    expect(lies(slots(-12, -6, 0), 0)).toBe(
      'Fill 1, rows 2–60: on row 2 copies of 6 stitches start at L12, L6 and R1.',
    );
    const many = Array.from({ length: 9 }, (_, at) => -24 + 6 * at);
    expect(lies(slots(...many), 0)).toBe(
      'Fill 1, rows 2–60: on row 2 copies of 6 stitches start every 6 needles from L24 to R25.',
    );
    expect(lies([], 0)).toBe('Fill 1, rows 2–60: no copy starts on row 2.');
  });

  it('says the step the shorter way round', () => {
    expect(lies(slots(0), 3)).toMatch(/ Each copy is moved 3 needles to the right of the one below it\.$/);
    expect(lies(slots(0), 5)).toMatch(/ Each copy is moved 1 needle to the left of the one below it\.$/);
    expect(lies(slots(0), -6)).not.toMatch(/moved/);
  });
});
