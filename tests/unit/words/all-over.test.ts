import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import type { SeamMatching, SeamMeeting } from '@shared/fabric/index.ts';
import { words } from '@shared/words/index.ts';

const { allOver } = words;
const MATCHES: SeamMeeting = { kind: 'continues' };

type Rows = readonly (readonly [count: number, meeting: SeamMeeting])[];

/** A matching of so many rows of each meeting, from row 41 up, and of so many of one yarn above them. */
function matchingOf(stretches: Rows, uniform = 0): SeamMatching {
  const rows = stretches.flatMap(([count, meeting]) => new Array<SeamMeeting>(count).fill(meeting));
  let next = 41;
  const runs = stretches.map(([count, meeting]) => ({ first: next, last: (next += count) - 1, meeting }));
  const count = (kind: SeamMeeting['kind']): number => rows.filter((met) => met.kind === kind).length;
  return {
    rows: [...rows, ...new Array<SeamMeeting>(uniform).fill(MATCHES)],
    runs,
    matching: count('continues'),
    mirrored: count('mirrors'),
    off: count('off'),
    plain: count('plain'),
    uniform,
  };
}

/** One stretch of each kind, in this order from row 41 up. */
function matching({ continues = 0, mirrors = 0, off = 0, plain = 0, uniform = 0 }): SeamMatching {
  const stretches: Rows = [
    [continues, MATCHES],
    [mirrors, { kind: 'mirrors' }],
    [off, { kind: 'off', by: 1 }],
    [plain, { kind: 'plain', stitches: 2 }],
  ];
  return matchingOf(
    stretches.filter(([count]) => count > 0),
    uniform,
  );
}

describe('how a fill meets in the seam, in words', () => {
  it.each([
    [{ continues: 98 }, 'It matches across the seam on all **98 rows**.'],
    [{ mirrors: 12 }, 'It does not match across the seam: a mirror image on all **12 rows**.'],
    [
      { continues: 9, mirrors: 3 },
      'It matches across the seam on **9** of 12 rows: a mirror image on **3** (rows 50–52).',
    ],
    [{ off: 40 }, 'It does not match across the seam: off on all **40 rows**.'],
    [
      { continues: 1, off: 40, uniform: 3 },
      'It matches across the seam on **1** of 41 rows that show it: off on **40** (rows 42–81).',
    ],
    [
      { continues: 1, mirrors: 2, off: 40, uniform: 3 },
      'It matches across the seam on **1** of 43 rows that show it: off on **40** (rows 44–83), a mirror image on **2** (rows 42–43).',
    ],
    [{ off: 40, uniform: 8 }, 'It does not match across the seam: off on all **40** rows that show it.'],
    [
      { continues: 30, plain: 4 },
      'It matches across the seam on all **30** rows that show it. On **4 rows** it ends before the seam.',
    ],
    [{ plain: 10 }, 'Its edges are plain, so nothing has to match in the seam.'],
    [{ uniform: 10 }, 'Each row is of one yarn, so it matches wherever it is cut.'],
  ])('%j', (rows, sentence) => {
    expect(allOver.seam.summary(matching(rows))).toBe(sentence);
  });

  it('names rows that lie apart, and where those of many stretches lie', () => {
    const stripes = (count: number): SeamMatching =>
      matchingOf(Array.from({ length: 2 * count }, (_, at) => [1, at % 2 === 0 ? { kind: 'mirrors' } : MATCHES]));
    expect(allOver.seam.summary(stripes(4))).toMatch(/a mirror image on \*\*4\*\* \(rows 41, 43, 45 and 47\)\.$/);
    expect(allOver.seam.summary(stripes(5))).toMatch(/a mirror image on \*\*5\*\* \(between rows 41 and 49\)\.$/);
    const changing: Rows = [
      [5, MATCHES],
      [3, { kind: 'off', by: 1 }],
      [4, { kind: 'off', by: 2 }],
    ];
    expect(allOver.seam.summary(matchingOf(changing))).toMatch(/off on \*\*7\*\* \(rows 46–52\)\.$/);
  });

  it.each<[SeamMeeting, string]>([
    [MATCHES, 'Rows 41–44: matches'],
    [{ kind: 'mirrors' }, 'Rows 41–44: a mirror image in the seam'],
    [{ kind: 'off', by: 2 }, 'Rows 41–44: 2 stitches too many'],
    [{ kind: 'off', by: -1 }, 'Rows 41–44: 1 stitch too few'],
    [{ kind: 'plain', stitches: 1 }, 'Rows 41–44: 1 plain stitch along the seam'],
  ])('%j', (meeting, line) => {
    expect(allOver.seam.run({ first: 41, last: 44, meeting })).toBe(line);
  });

  it('says which way a stitch count goes', () => {
    expect(allOver.seam.width(-2, 96)).toBe('2 stitches fewer, 96 at the cast-on');
    expect(allOver.seam.width(1, 99)).toBe('1 stitch more, 99 at the cast-on');
  });
});

describe('where the copies of a fill stand, in words', () => {
  const slots = (...needles: number[]): Slot[] => needles as Slot[];
  const lies = (first: Slot[], step: number): string =>
    allOver.lies({ number: 0, firstRow: 2, lastRow: 60, first, copy: { width: 6 }, step });

  it('names few needles, and counts through many', () => {
    expect(lies(slots(-12, -6, 0), 0)).toBe(
      'All-over 1, rows 2–60: on row 2 copies of 6 stitches start at L12, L6 and R1.',
    );
    const many = Array.from({ length: 9 }, (_, at) => -24 + 6 * at);
    expect(lies(slots(...many), 0)).toBe(
      'All-over 1, rows 2–60: on row 2 copies of 6 stitches start every 6 needles from L24 to R25.',
    );
    expect(lies([], 0)).toBe('All-over 1, rows 2–60: no copy starts on row 2.');
  });

  it('says the step the shorter way round', () => {
    expect(lies(slots(0), 3)).toMatch(/ Each copy is moved 3 needles to the right of the one below it\.$/);
    expect(lies(slots(0), 5)).toMatch(/ Each copy is moved 1 needle to the left of the one below it\.$/);
    expect(lies(slots(0), -6)).not.toMatch(/moved/);
  });
});
