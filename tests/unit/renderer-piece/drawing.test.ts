import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrastRatio, legibleOn } from '@shared/colour/index.ts';
import { bandSpaces, type PlacedBand } from '@shared/fabric/index.ts';
import { edgesAt, outlineOf } from '@shared/piece/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { projectAt, sampleProject } from '@shared/project/index.ts';
import { readingsIn } from '../../../src-renderer/piece/drawing/counter.ts';
import { sagOf, TAG_HEIGHT, tagsOf, thicknessOf, type Strand } from '../../../src-renderer/canvas/strands.ts';
import { namedAt } from '../../../src-renderer/piece/drawing/bed-ends.ts';
import { strandsIn, warnedInOpen } from '../../../src-renderer/piece/drawing/floats.ts';
import { fittingLabels, spreadOut, type Label } from '../../../src-renderer/piece/drawing/labels.ts';
import { stepsOf } from '../../../src-renderer/piece/drawing/outline.ts';
import { rulerLabels, rulerMarks, ticksOf } from '../../../src-renderer/piece/drawing/ruler.ts';
import { heightOfLine, linesBeside, numberAt } from '../../../src-renderer/piece/drawing/spaces.ts';
import { Viewport } from '../../../src-renderer/canvas/viewport.ts';
import { planOf, twoGroups } from './projects.ts';

/** Ten pixels a stitch, seven a row, the centre of the bed at 500 and the cast-on at 600. */
const view = new Viewport(10, 7, 500, 600);

describe('the needle ruler', () => {
  it('has a tick for every needle where there is room, stronger at 5 and 10 on both sides', () => {
    const ticks = ticksOf(-10, 9, 6);
    expect(ticks).toHaveLength(20);
    const strong = ticks.filter(({ height }) => height > 4).map(({ slot, height }) => [slot, height]);
    // L10, L5, R5, R10: there is no needle 0.
    expect(strong).toEqual([
      [-10, 11],
      [-5, 7],
      [4, 7],
      [9, 11],
    ]);
  });

  it('keeps only every tenth where needles are closer than ticks can be', () => {
    expect(ticksOf(-30, 29, 0.4).map(({ slot }) => slot)).toEqual([-30, -20, -10, 9, 19, 29]);
  });

  it('names first needles before anything else, and nothing over anything', () => {
    const plan = planOf(twoGroups());
    const marks = rulerMarks(plan.groups, [edgesAt(plan.outline, 3)]);
    const labels = rulerLabels(marks, -10, 9, view, (text) => text.length * 8);
    expect(labels.filter(({ weight }) => weight === 'strong').map(({ text }) => text)).toEqual(['L8', 'R4']);
    expect(labels.map(({ text }) => text)).not.toContain('L0');
    expect(new Set(labels.map(({ text }) => text)).size).toBe(labels.length);
    for (const [index, one] of labels.entries()) {
      for (const other of labels.slice(index + 1).filter(({ line }) => line === one.line)) {
        expect(Math.abs(one.x - other.x)).toBeGreaterThanOrEqual((one.width + other.width) / 2);
      }
    }
  });
});

describe('the ends of the bed', () => {
  it('are named over the piece, and below what covers its top', () => {
    const [ruler, card] = [700, 180];
    expect(namedAt(260, ruler, card)).toBe(248);
    // A label is 16 pixels tall.
    expect(namedAt(40, ruler, card) - 8).toBe(card);
    expect(namedAt(-900, ruler, card) - 8).toBe(card);
  });
});

describe('the needles that the ruler marks', () => {
  it('are both of every block and of what is seen of it, and the edges of the row they stand on', () => {
    // L8–L6 and R4–R6 with a blank column at the left; L10 and R10 are the edges.
    const plan = planOf(twoGroups({ drawing: ['..#.', '.#.#'] }));
    expect(rulerMarks(plan.groups, [edgesAt(plan.outline, 3)])).toEqual([
      { slot: -8, kind: 'first' },
      { slot: 3, kind: 'first' },
      { slot: -5, kind: 'last' },
      { slot: 6, kind: 'last' },
      { slot: -10, kind: 'edge' },
      { slot: 9, kind: 'edge' },
      { slot: -7, kind: 'figure' },
      { slot: 4, kind: 'figure' },
    ]);
  });

  it('are named on a second line where the first is taken', () => {
    const plan = planOf(twoGroups({ drawing: ['..#.', '.#.#'] }));
    const marks = rulerMarks(plan.groups, [edgesAt(plan.outline, 3)]);
    const labels = rulerLabels(marks, -10, 9, view, (text) => text.length * 8);
    const lineOf = (name: string): number | undefined => labels.find(({ text }) => text === name)?.line;
    expect([lineOf('L8'), lineOf('L5'), lineOf('R4'), lineOf('R7')]).toEqual([0, 0, 0, 0]);
    // Ten pixels a needle leave no room beside L8 and R4.
    expect([lineOf('L7'), lineOf('R5')]).toEqual([1, 1]);
  });
});

describe('labels in a row', () => {
  const label = (text: string, x: number): Label => ({ text, x, width: 20, weight: 'plain' });

  it('gives the place to whoever comes first', () => {
    const set = fittingLabels([label('a', 100), label('b', 110), label('c', 130), label('d', 112)]);
    expect(set.map(({ text, line }) => `${text}${line}`)).toEqual(['a0', 'b1', 'c0']);
    const faint = fittingLabels([label('a', 100), { ...label('b', 110), weight: 'faint' }]);
    expect(faint.map(({ text }) => text)).toEqual(['a']);
  });

  it('spreads out what is crowded without leaving the room or the order', () => {
    const crowd = fc.record({
      wanted: fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 10 }),
      width: fc.double({ min: 1, max: 30, noNaN: true }),
    });
    fc.assert(
      fc.property(crowd, ({ wanted, width }) => {
        const sorted = [...wanted].sort((one, other) => one - other);
        const placed = spreadOut(
          sorted,
          sorted.map(() => width),
          0,
          300,
        );
        for (let i = 0; i < placed.length; i++) {
          const at = placed[i] as number;
          expect(at).toBeGreaterThanOrEqual(width / 2 - 1e-6);
          expect(at).toBeLessThanOrEqual(300 - width / 2 + 1e-6);
          if (i > 0) expect(at - (placed[i - 1] as number)).toBeGreaterThanOrEqual(width - 1e-6);
        }
      }),
    );
  });

  it('leaves labels with room where they want to be', () => {
    expect(spreadOut([20, 100, 200], [20, 20, 20], 0, 300)).toEqual([20, 100, 200]);
  });
});

describe('the row counter', () => {
  it('reads 0 at the cast-on and every tenth row where numbers would run together', () => {
    expect(readingsIn(0, 40, 3.7)).toEqual([0, 10, 20, 30, 40]);
  });

  it('numbers every row from near', () => {
    expect(readingsIn(7, 10, 40)).toEqual([7, 8, 9, 10]);
  });
});

describe('the outline of a piece', () => {
  it('is drawn by its steps and not by its rows', () => {
    const { piece } = projectAt(sampleProject());
    const steps = stepsOf(outlineOf(piece.shape, piece));
    // 96 stitches, 14 increases, one at each edge a time.
    expect(steps).toHaveLength(15);
    expect(steps[0]).toEqual({ from: 0, to: 8, first: -48, last: 47 });
    expect(steps.at(-1)).toMatchObject({ to: 140, first: -62, last: 61 });
  });
});

describe('the spaces of a placement', () => {
  const project = twoGroups();
  const plan = planOf(project);
  const band = bandsOf(plan)[0] as PlacedBand;

  it('are margin, gap, margin, and with the groups make up the whole row', () => {
    const scene = bandSpaces(band, 'blocks', plan.outline);
    expect(scene?.spaces.map(({ stitches }) => stitches)).toEqual([2, 8, 4]);
    expect(scene?.row).toBe(3);
  });

  it('say what the seam shows when the piece is closed', () => {
    expect(bandSpaces(band, 'figure', plan.outline)?.acrossSeam).toBe(6);
  });

  it('tell of each margin what the seam leaves of it', () => {
    const sewn = planOf(twoGroups({ piece: { seamAllowance: { left: 1, right: 0 } } }));
    const spaces = bandSpaces(bandsOf(sewn)[0] as PlacedBand, 'blocks', sewn.outline)?.spaces;
    // The seam takes L10.
    expect(spaces?.map(({ seam }) => seam)).toEqual([{ clear: 1, sewnBefore: -9 }, null, null]);
  });
});

describe('the line that the spaces are drawn on', () => {
  it('is the middle of the row that was measured, where alone they are true', () => {
    // Ten pixels a row, the cast-on at 600: row 25 lies between 350 and 360.
    expect(heightOfLine(25, new Viewport(10, 10, 500, 600))).toBe(355.5);
  });

  it('has its numbers in it where they have room, and else below the band', () => {
    expect(numberAt(100, 20, 80, 120, 355, 360)).toEqual({ y: 355, isBelow: false });
    expect(numberAt(100, 20, 95, 105, 355, 360)).toEqual({ y: 371, isBelow: true });
    // On rows taller than a number the foot of the row counts.
    expect(numberAt(100, 20, 95, 105, 355, 400).y).toBe(411);
  });
});

describe('what is written beside the line of spaces', () => {
  const text = { acrossSeam: ['across', 'the seam'], onRow: (row: number) => `on row ${row}`, clear: () => [] };
  const lines = (y: number, taken: Parameters<typeof linesBeside>[4], acrossSeam = 22) =>
    linesBeside({ acrossSeam, row: 25 }, text, y, 600, taken).map(({ said, y: at }) => [said, at]);

  it('is what the seam shows, and the row', () => {
    expect(lines(300, [])).toEqual([
      ['22', 293],
      ['across', 307],
      ['the seam', 321],
      ['on row 25', 335],
    ]);
    expect(lines(300, [], -2)).toEqual([['on row 25', 293]]);
  });

  it('stays above the cast-on edge', () => {
    expect(lines(590, []).at(-1)).toEqual(['on row 25', 593]);
  });

  it('is one line where another band has written already', () => {
    expect(lines(300, [{ left: 0, top: 328, width: 50, height: 14 }])).toEqual([['22 on row 25', 293]]);
    expect(lines(300, [{ left: 0, top: 342, width: 50, height: 14 }])).toHaveLength(4);
  });
});

describe('floats as they are drawn', () => {
  const plan = planOf(twoGroups());

  it('hang from the last needle before the gap to the first after it', () => {
    const longest = strandsIn(plan.rows, view, 1000, 700).find(({ float }) => float.stitches === 8);
    // L5 … R3: five stitches left of the centre, three right of it.
    expect(longest).toMatchObject({ row: 3, x1: 450, x2: 530 });
  });

  it('hang in parts where they are hooked up, on the needle that knits the next row', () => {
    const hooked = planOf(twoGroups({ band: { longFloats: 'hooked-up' } }));
    const [float] = hooked.rows[2]?.floats.filter(({ held }) => held.length > 0) ?? [];
    expect(float?.stitches).toBe(8);
    const [held] = float?.held ?? [];
    const parts = strandsIn(hooked.rows, view, 1000, 700).filter((strand) => strand.float === float);
    expect(parts.map(({ stitches }) => stitches).reduce((sum, stitches) => sum + stitches, 0)).toBe(7);
    const [left, right] = parts as [Strand, Strand];
    // Ten pixels a needle from 500 on: they meet in the middle of the needle that holds them, above the row.
    expect([left.x1, left.x2, right.x1, right.x2]).toEqual([450, 505 + 10 * (held ?? 0), 505 + 10 * (held ?? 0), 530]);
    expect([left.y1, right.y2]).toEqual([left.y, right.y]);
    expect([left.y2, right.y1]).toEqual([left.y - 0.75 * 7, left.y - 0.75 * 7]);
    expect(parts.some(({ isOver }) => isOver)).toBe(false);
  });

  it('warn only where nothing covers them', () => {
    const warnedIn = (isLined: boolean): boolean[] => {
      const { rows, sections } = planOf(twoGroups({ piece: { isLined } }));
      return warnedInOpen(strandsIn(rows, view, 1000, 700), sections).map(({ isOver }) => isOver);
    };
    expect(warnedIn(false)).toContain(true);
    expect(warnedIn(true)).not.toContain(true);
    expect(warnedIn(true)).toHaveLength(warnedIn(false).length);
  });

  it('are left out where they are out of sight', () => {
    expect(strandsIn(plan.rows, new Viewport(10, 7, 500, -400), 1000, 700)).toEqual([]);
  });

  it('are those of some rows, where others are drawn by another gauge', () => {
    const all = strandsIn(plan.rows, view, 1000, 700);
    const rows = (first: number, last: number): number[] =>
      strandsIn(plan.rows, view, 1000, 700, { first, last }).map(({ row }) => row);
    expect(new Set(all.map(({ row }) => row))).toEqual(new Set([3, 4]));
    expect([...rows(1, 3), ...rows(4, 6)]).toEqual(all.map(({ row }) => row));
    expect(new Set(rows(4, 6))).toEqual(new Set([4]));
  });

  it('show from afar only where they are too long', () => {
    const far = strandsIn(plan.rows, new Viewport(1, 0.7, 500, 600), 1000, 700);
    expect(far.length).toBeGreaterThan(0);
    expect(far.every(({ float }) => float.isOver)).toBe(true);
  });

  it('are heavier the longer, and a long one is heavier than any within the limit', () => {
    expect(thicknessOf(20, true, 8)).toBeGreaterThan(thicknessOf(8, true, 8));
    expect(thicknessOf(5, false, 8)).toBeGreaterThan(thicknessOf(2, false, 8));
    expect(thicknessOf(1, true, 8)).toBeGreaterThan(thicknessOf(1000, false, 8));
  });

  it('sag more the wider they are, up to a limit', () => {
    expect(sagOf(40, 7)).toBeLessThan(sagOf(120, 7));
    expect(sagOf(10_000, 7)).toBe(22);
  });

  it('carry their tags below a number that stands there, or none, as is asked', () => {
    const strands = strandsIn(plan.rows, view, 1000, 700);
    const width = (text: string): number => text.length * 7;
    const [tag] = tagsOf(strands, width);
    const number = { left: (tag?.x ?? 0) - 8, top: (tag?.y ?? 0) - 6, width: 16, height: 12 };
    const longest = (onTaken: 'left-out' | 'below') =>
      tagsOf(strands, width, [number], onTaken).find(({ text, x }) => text === tag?.text && x === tag.x);
    expect(longest('left-out')).toBeUndefined();
    expect(longest('below')?.y).toBeGreaterThan(number.top + number.height);
    // A second number stands where the tag would go below the first; they are told from the highest or the lowest.
    const second = { ...number, top: number.top + 18 };
    for (const numbers of [
      [number, second],
      [second, number],
    ]) {
      const lower = tagsOf(strands, width, numbers, 'below').find(({ text, x }) => text === tag?.text && x === tag.x);
      expect((lower?.y ?? 0) - TAG_HEIGHT / 2).toBeGreaterThan(second.top + second.height);
    }
  });

  it('carry tags that do not cover each other, the longest for certain', () => {
    const strands = strandsIn(plan.rows, view, 1000, 700);
    const tags = tagsOf(strands, (text) => text.length * 7);
    // Row 4 knits L7 and R5 alone: ten needles between them.
    expect(tags[0]?.text).toBe('10');
    for (const [index, one] of tags.entries()) {
      for (const other of tags.slice(index + 1)) {
        const isApart = Math.abs(one.x - other.x) >= (one.width + other.width) / 2 || Math.abs(one.y - other.y) >= 20;
        expect(isApart).toBe(true);
      }
    }
  });
});

describe('colours on yarn', () => {
  it('stand out from any ground as much as is asked (WCAG 2.2, 1.4.11: 3 to 1)', () => {
    const colour = fc.integer({ min: 0, max: 0xffffff }).map((rgb) => `#${rgb.toString(16).padStart(6, '0')}`);
    fc.assert(
      fc.property(colour, colour, (ground, wanted) => {
        expect(contrastRatio(ground, legibleOn(ground, wanted, 3))).toBeGreaterThanOrEqual(3);
      }),
    );
  });

  it('stay as they are where they already stand out', () => {
    expect(legibleOn('#ffffff', '#2b4a8b', 3)).toBe('#2b4a8b');
  });
});
