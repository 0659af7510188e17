/** The profile of floats, the strands of what is pointed at, and groups by their numbers. */
import { describe, expect, it } from 'vitest';
import { contrastRatio } from '@shared/colour/index.ts';
import { bandSpaces, copyGaps, type PlacedBand } from '@shared/fabric/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { words } from '@shared/words/index.ts';
import { Viewport } from '../../../src-renderer/canvas/viewport.ts';
import { wornSide } from '../../../src-renderer/piece/drawing/group-numbers.ts';
import { LaidView } from '../../../src-renderer/piece/drawing/laid-view.ts';
import { lookOf } from '../../../src-renderer/piece/drawing/look.ts';
import { pointedStrands } from '../../../src-renderer/piece/drawing/pointed-strands.ts';
import {
  barsOf,
  lengthOf,
  longestOf,
  mostOf,
  numberedBars,
  columnRoom,
  profileColumns,
  profileWidth,
  type ProfileBar,
} from '../../../src-renderer/piece/drawing/profile.ts';
import { drawSpaces } from '../../../src-renderer/piece/drawing/spaces.ts';
import { planOf, twoGroups } from './projects.ts';

const project = twoGroups();
const plan = planOf(project);
const laidBy = (view: Viewport): LaidView => new LaidView(view, { plan, project });
/** Ten pixels a stitch, seven a row, the centre of the bed at 500 and the cast-on at 600. */
const NEAR = laidBy(new Viewport(10, 7, 500, 600));
const SIZE = { width: 1000, height: 700 };

describe('the profile of floats', () => {
  it('has for each row its longest float, and none for a plain row', () => {
    // Row 3 knits both ends of L8–L6 and R4–R6, row 4 their middles L7 and R5: 8 and 10 needles lie between.
    expect(longestOf(plan.rows).map((float) => float?.stitches ?? 0)).toEqual([0, 0, 8, 10, 0, 0]);
    expect(longestOf(plan.rows)).toBe(longestOf(plan.rows));
  });

  it('has a bar for each row where rows have room for it', () => {
    const bars = barsOf(longestOf(plan.rows), NEAR, 700);
    expect(bars.map(({ row, top, height }) => [row, top, height])).toEqual([
      [3, 579, 7],
      [4, 572, 7],
    ]);
  });

  it('has one bar for several rows that are thinner than a bar, as long as the longest of them', () => {
    // Half a pixel a row: four rows share a bar of two pixels, rows 1–4 and 5–6.
    const bars = barsOf(longestOf(plan.rows), laidBy(new Viewport(1, 0.5, 500, 600)), 700);
    expect(bars.map(({ row, float, top, height }) => [row, float.stitches, top, height])).toEqual([[4, 10, 598, 2]]);
  });

  it('shares the same rows wherever the view is panned to, and leaves out what is out of sight', () => {
    const rowsAt = (y: number): number[] =>
      barsOf(longestOf(plan.rows), laidBy(new Viewport(1, 0.5, 500, y)), 700).map(({ row }) => row);
    expect(rowsAt(700.5)).toEqual(rowsAt(600));
    expect(rowsAt(900)).toEqual([]);
  });

  it('numbers the longest bars over the limit that keep apart', () => {
    const bar = (row: number, stitches: number, isOver: boolean): ProfileBar =>
      ({
        row,
        top: row * 10,
        height: 10,
        float: { first: 1, last: stitches, held: [], isOver },
      }) as unknown as ProfileBar;
    const numbered = numberedBars([
      bar(1, 9, true),
      bar(2, 12, true),
      bar(3, 4, false),
      bar(7, 9, true),
      bar(9, 9, true),
    ]);
    expect(numbered.map(({ row }) => row)).toEqual([2, 7]);
  });

  it('has of floats that are hooked up what lies loose of them', () => {
    const hooked = planOf(twoGroups({ band: { longFloats: 'hooked-up' } }));
    const lengths = (rows: typeof plan.rows): number[] => longestOf(rows).map(lengthOf);
    // Five stitches may lie loose of the eight and the ten of rows 3 and 4.
    expect(lengths(plan.rows).slice(2, 4)).toEqual([8, 10]);
    expect(Math.max(...lengths(hooked.rows))).toBe(5);
    expect([plan, hooked].map(({ rows }) => mostOf(longestOf(rows)))).toEqual([10, 5]);
    expect(mostOf([null, null])).toBe(0);
    const bars = barsOf(longestOf(hooked.rows), laidBy(new Viewport(10, 7, 500, 600)), 700);
    expect(numberedBars(bars)).toEqual([]);
  });

  it('has no room in a narrow view, and none without floats', () => {
    expect([300, 500, 700].map((width) => profileWidth(plan, width))).toEqual([0, 64, 96]);
    // Rows 1 and 2 are plain.
    expect(profileWidth({ rows: plan.rows.slice(0, 2) }, 900)).toBe(0);
  });
});

describe('the profile by yarn', () => {
  it('has a column for each yarn that floats where the view is wide, and one for all where it is not', () => {
    const columns = profileColumns(plan.rows, 900);
    expect(columns.map(({ yarn }) => yarn)).toEqual([0, 1]);
    // Main floats behind three stitches of row 3 and one of row 4; the contrast between them as above.
    const lengths = columns.map(({ longest }) => longest.map((float) => float?.stitches ?? 0));
    for (const column of columns) {
      column.longest.forEach((float) => expect(float === null || float.strand.yarn === column.yarn).toBe(true));
    }
    expect(lengths[1]).toEqual([0, 0, 8, 10, 0, 0]);
    expect(longestOf(plan.rows).map((float) => float?.stitches ?? 0)).toEqual(
      (lengths[0] ?? []).map((main, index) => Math.max(main, lengths[1]?.[index] ?? 0)),
    );
    expect(profileColumns(plan.rows, 700).map(({ yarn }) => yarn)).toEqual([null]);
    expect(profileWidth(plan, 900)).toBeGreaterThan(profileWidth(plan, 700));
  });
});

describe('the room of the columns', () => {
  const ROOM = 130;
  it('goes by their longest bars where their headings are narrower', () => {
    const { scale, widths } = columnRoom([10, 20], [30, 30], 24, ROOM);
    expect(scale).toBeCloseTo((ROOM - 48) / 30);
    expect(widths).toEqual([10 * scale + 24, 20 * scale + 24]);
  });

  it('is that of its heading for a column of short bars, and all is shared out', () => {
    const { scale, widths } = columnRoom([13, 82], [45, 45], 24, ROOM);
    expect(widths[0]).toBe(45);
    expect(widths[1]).toBeCloseTo(ROOM - 45);
    expect(82 * scale + 24).toBeCloseTo(widths[1] as number);
    // Twice the limit has room in it too.
    expect(13 * scale + 24).toBeLessThan(45);
  });

  it('gives a long heading no more than an even share', () => {
    const { widths } = columnRoom([5, 80], [400, 400], 24, ROOM);
    expect(widths[0]).toBeCloseTo(ROOM / 2);
    expect(widths[1]).toBeCloseTo(ROOM / 2);
    expect(columnRoom([7], [400], 24, ROOM).widths[0]).toBeCloseTo(ROOM);
  });
});

describe('the strands of what is pointed at', () => {
  const NONE = { row: null, group: null, places: [] };
  const rowsOf = (pointed: Partial<Parameters<typeof pointedStrands>[3]>, laid = NEAR): number[] =>
    pointedStrands(plan.rows, laid, SIZE, { ...NONE, ...pointed }).map(({ row }) => row);

  it('are none where nothing is', () => {
    expect(rowsOf({})).toEqual([]);
  });

  it('are all of the row, from afar too', () => {
    const count = plan.rows[2]?.floats.length ?? 0;
    expect(count).toBeGreaterThan(1);
    expect(rowsOf({ row: 3 })).toEqual(new Array(count).fill(3));
    expect(rowsOf({ row: 3 }, laidBy(new Viewport(1, 0.7, 500, 600)))).toHaveLength(count);
    expect(rowsOf({ row: 1 })).toEqual([]);
  });

  it('are those that touch the group that is chosen', () => {
    const [group] = plan.groups;
    const strands = pointedStrands(plan.rows, NEAR, SIZE, { ...NONE, group: group ?? null });
    expect(strands.length).toBeGreaterThan(0);
    for (const { float } of strands) {
      expect(float.last).toBeGreaterThanOrEqual(-8);
      expect(float.first).toBeLessThanOrEqual(-6);
    }
  });

  it('are those over the limit where a finding is', () => {
    const places = [{ rows: [3, 4] as const, needles: null }];
    const strands = pointedStrands(plan.rows, NEAR, SIZE, { ...NONE, places });
    expect(strands.length).toBeGreaterThan(0);
    expect(strands.every(({ float }) => float.isOver)).toBe(true);
  });
});

describe('groups by their numbers', () => {
  // The knit side is seen mirrored from how its needles stand (bed/faces.ts).
  it.each([
    ['knit', ['right', null, 'left']],
    ['purl', ['left', null, 'right']],
  ] as const)('say which is seen at the left when worn, the %s side outside', (face, sides) => {
    expect([0, 1, 2].map((at) => wornSide(at, 3, face))).toEqual(sides);
    expect(wornSide(0, 1, face)).toBeNull();
  });
});

describe('the needles between copies of a group', () => {
  const run = (first: number, last: number) => ({ first, last }) as (typeof plan.groups)[0]['figure'];

  it('are those without figure between neighbours, as many between all', () => {
    // Three copies of 12, of which the first column is blank: L47–L37, L35–L25 and L23–L13 are figure.
    const gaps = copyGaps({ figure: run(-47, -13), copy: { width: 12 }, across: 3 });
    expect(gaps.map(({ first, last, stitches }) => [first, last, stitches])).toEqual([
      [-36, -36, 1],
      [-24, -24, 1],
    ]);
  });

  it('are none where copies touch, and of one copy', () => {
    expect(copyGaps({ figure: run(-12, 11), copy: { width: 12 }, across: 2 })).toEqual([]);
    expect(copyGaps({ figure: run(-5, 4), copy: { width: 12 }, across: 1 })).toEqual([]);
  });
});

describe('what is written of the spaces', () => {
  /** Notes each text with its colour, and what was filled last under it. */
  function recording() {
    const filled: { colour: string; left: number; top: number; right: number; foot: number }[] = [];
    const written: { text: string; colour: string; under: string | null }[] = [];
    let align = 'left';
    const context = {
      fillStyle: '',
      set textAlign(to: string) {
        align = to;
      },
      measureText: (text: string) => ({ width: text.length * 7 }),
      fillRect(left: number, top: number, width: number, height: number) {
        filled.push({ colour: this.fillStyle, left, top, right: left + width, foot: top + height });
      },
      fillText(text: string, x: number, y: number) {
        const half = (text.length * 7) / 2;
        const middle = align === 'center' ? x : align === 'right' ? x - half : x + half;
        const under = filled.findLast(
          ({ left, top, right, foot }) => left <= middle && middle <= right && top <= y && y <= foot,
        );
        written.push({ text, colour: this.fillStyle, under: under?.colour ?? null });
      },
    };
    for (const name of ['beginPath', 'moveTo', 'lineTo', 'stroke']) Object.assign(context, { [name]: () => undefined });
    return { context: context as unknown as CanvasRenderingContext2D, written };
  }

  it.each([
    ['in the light', { paper: '#f6f4ee', ink: '#1d2330', soft: '#5c6472' }],
    ['in the dark', { paper: '#14171d', ink: '#ece9e2', soft: '#a9b0bc' }],
  ])('is legible %s on a dark and a light main yarn, wherever the piece lies under it', (_, tokens) => {
    for (const colour of ['#10141c', '#f4efe4']) {
      const yarned = twoGroups();
      const [main, ...others] = yarned.yarns;
      const dyed = { ...yarned, yarns: [{ ...main, colour } as (typeof yarned.yarns)[0], ...others] };
      const look = lookOf(dyed, (name) => tokens[name as keyof typeof tokens] ?? '#2b4a8b');
      const spaces = bandSpaces(bandsOf(plan)[0] as PlacedBand, 'figure', plan.outline);
      // In the second view the left edge, beside which the seam's number stands, is out of sight.
      for (const view of [new Viewport(10, 7, 500, 600), new Viewport(100, 70, 500, 600)]) {
        const { context, written } = recording();
        if (spaces) drawSpaces(context, laidBy(view), spaces, [], words.piece.stage.spaces, [], look, 'sans-serif');
        expect(written.map(({ text }) => text)).toContain('the seam');
        for (const { text, colour: ink, under } of written) {
          // Numbers without a ground of their own stand on main.
          expect(contrastRatio(ink, under ?? colour), text).toBeGreaterThanOrEqual(4.5);
        }
      }
    }
  });
});
