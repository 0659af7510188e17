import { describe, expect, it } from 'vitest';
import { ProblemError, type ProblemCode } from '@shared/problem/index.ts';
import {
  assertCorners,
  cornerFault,
  finish,
  halved,
  homography,
  onPaper,
  photoOf,
  project,
  readCells,
  readChart,
  rectangle,
  sizeForCells,
  straighten,
  type Corners,
  type Picture,
  type Progress,
} from '@shared/reading/index.ts';

const corners = (...n: number[]): Corners =>
  [0, 2, 4, 6].map((i) => ({ x: n[i] as number, y: n[i + 1] as number })) as unknown as Corners;

function codeOf(run: () => unknown): ProblemCode | null {
  try {
    run();
    return null;
  } catch (thrown) {
    return thrown instanceof ProblemError ? thrown.problem.code : 'unexpected';
  }
}

function pictureOf(width: number, height: number, value: (x: number, y: number) => number): Picture {
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rgba.fill(value(x, y), (y * width + x) * 4, (y * width + x) * 4 + 3);
  }
  return { width, height, rgba };
}

describe('the corners of a chart', () => {
  it.each([
    { what: 'a rectangle', at: [10, 10, 90, 10, 90, 70, 10, 70], fault: null },
    { what: 'a rectangle turned by 12 degrees', at: [20, 10, 88, 24, 75, 83, 8, 69], fault: null },
    { what: 'the same anticlockwise', at: [10, 10, 10, 70, 90, 70, 90, 10], fault: 'anticlockwise' },
    { what: 'right and left exchanged below', at: [10, 10, 90, 10, 10, 70, 90, 70], fault: 'crossed' },
    { what: 'right exchanged', at: [10, 10, 90, 70, 90, 10, 10, 70], fault: 'crossed' },
    { what: 'three in a line', at: [10, 10, 50, 10, 90, 10, 10, 70], fault: 'in-line' },
    { what: 'all in a line', at: [10, 10, 30, 20, 50, 30, 70, 40], fault: 'in-line' },
    { what: 'one inside the others', at: [10, 10, 90, 10, 30, 25, 10, 70], fault: 'not-convex' },
    { what: 'two on one place', at: [10, 10, 10, 11, 90, 70, 10, 70], fault: 'too-close' },
    { what: 'no number', at: [NaN, 10, 90, 10, 90, 70, 10, 70], fault: 'too-close' },
  ])('$what: $fault', ({ at, fault }) => {
    expect(cornerFault(corners(...at))).toBe(fault);
    const code = codeOf(() => assertCorners(corners(...at), 100, 90));
    expect(code).toBe(fault === null ? null : 'corners-unusable');
  });

  it('lie on the picture, its edge included', () => {
    expect(codeOf(() => assertCorners(rectangle(100, 80), 100, 80))).toBeNull();
    expect(codeOf(() => assertCorners(corners(0, 0, 101, 0, 100, 80, 0, 80), 100, 80))).toBe('corner-outside-picture');
    expect(codeOf(() => assertCorners(corners(0, -1, 100, 0, 100, 80, 0, 80), 100, 80))).toBe('corner-outside-picture');
  });

  it('that cannot be those of a chart have no homography', () => {
    expect(codeOf(() => homography(rectangle(1, 1), corners(0, 0, 1, 1, 1, 0, 0, 1)))).toBe('corners-unusable');
    expect(codeOf(() => homography(corners(0, 0, 1, 0, 2, 0, 0, 1), rectangle(1, 1)))).toBe('corners-unusable');
  });
});

describe('a homography', () => {
  it('there and back is where it began', () => {
    const [from, to] = [rectangle(40, 30), corners(12, 8, 410, 15, 400, 300, 5, 290)];
    const [there, back] = [homography(from, to), homography(to, from)];
    for (const point of [...from, { x: 20, y: 15 }, { x: 3.5, y: 28 }]) {
      const again = project(back, project(there, point));
      expect(again.x).toBeCloseTo(point.x, 9);
      expect(again.y).toBeCloseTo(point.y, 9);
    }
  });
});

describe('straightening', () => {
  it('of a whole picture at its own size changes nothing', () => {
    const picture = pictureOf(70, 50, (x, y) => (x * 37 + y * 91) % 256);
    const straight = finish(straighten(photoOf(picture), rectangle(70, 50), { width: 70, height: 50 }));
    expect([...straight.rgba]).toEqual([...picture.rgba]);
  });

  it('that shrinks averages what falls together, so fine lines do not come and go', () => {
    // Lines one pixel wide, every eight: an eighth of each is left at an eighth of the size.
    const lined = pictureOf(512, 512, (x) => (x % 8 === 3 ? 0 : 240));
    const straight = finish(straighten(photoOf(lined), rectangle(512, 512), { width: 64, height: 64 }));
    for (let x = 1; x < 63; x++) expect(straight.rgba[(32 * 64 + x) * 4] as number).toBeCloseTo(210, -1);
  });

  it('gives each cell 16 to 24 pixels, fewer only where there are very many', () => {
    expect(sizeForCells(rectangle(4000, 3000), 40, 30)).toEqual({ width: 960, height: 720 });
    expect(sizeForCells(rectangle(400, 300), 40, 30)).toEqual({ width: 640, height: 480 });
    const crowded = sizeForCells(rectangle(6000, 9000), 200, 1000);
    expect(crowded.width * crowded.height).toBeLessThanOrEqual(8e6);
    expect(crowded.width % 200).toBe(0);
  });

  it('halves odd sizes without losing the last column', () => {
    const half = halved(pictureOf(3, 3, (x, y) => x * 40 + y * 10));
    expect([half.width, half.height]).toEqual([2, 2]);
    expect([0, 1, 2, 3].map((i) => half.rgba[i * 4])).toEqual([25, 85, 40, 100]);
  });

  it('lays what is see-through on white paper', () => {
    const clear = { width: 2, height: 1, rgba: Uint8ClampedArray.from([0, 0, 0, 0, 100, 100, 100, 128]) };
    expect([...onPaper(clear).rgba]).toEqual([255, 255, 255, 255, 177, 177, 177, 255]);
  });
});

describe('a reading in steps', () => {
  const isDark = (x: number, y: number): boolean => (Math.floor(x / 20) + 2 * Math.floor(y / 20)) % 5 < 2;
  const photo = photoOf(pictureOf(320, 320, (x, y) => (x % 20 < 2 || y % 20 < 2 ? 120 : isDark(x, y) ? 60 : 230)));
  const whole = rectangle(320, 320);

  it('says how far it is, stage by stage', () => {
    const reports: Progress[] = [];
    const options = { columns: null, rows: null, levels: { kind: 'colours', count: null } } as const;
    const { grid } = finish(readChart(photo, whole, options), (progress) => reports.push(progress));
    expect([grid.width, grid.height]).toEqual([16, 16]);
    expect([...new Set(reports.map(({ stage }) => stage))]).toEqual([
      'straighten',
      'find-grid',
      'sample',
      'even-light',
      'sort-colours',
    ]);
    for (const { done } of reports) expect(done >= 0 && done <= 1).toBe(true);
  });

  it('ends where it is when nobody asks for the next step', () => {
    const steps = readCells(photo, whole, 16, 16, { kind: 'ink', figure: 'dark' });
    expect(steps.next().done).toBe(false);
    expect(steps.return(undefined as never).done).toBe(true);
    expect(steps.next().done).toBe(true);
  });

  it.each([
    { columns: 0, rows: 5, count: 2, code: 'motif-too-large' },
    { columns: 1.5, rows: 5, count: 2, code: 'motif-too-large' },
    { columns: 200, rows: 5, count: 2, code: 'cells-too-fine' },
    { columns: 5, rows: 5, count: 1, code: 'yarns-out-of-range' },
    { columns: 5, rows: 5, count: 17, code: 'yarns-out-of-range' },
  ])('refuses $columns × $rows cells of $count yarns', ({ columns, rows, count, code }) => {
    expect(codeOf(() => finish(readCells(photo, whole, columns, rows, { kind: 'colours', count })))).toBe(code);
  });

  it('says that there is no grid where nothing comes back evenly', () => {
    const plain = photoOf(pictureOf(300, 300, () => 200));
    const options = { columns: null, rows: null, levels: { kind: 'ink', figure: 'dark' } } as const;
    expect(codeOf(() => finish(readChart(plain, rectangle(300, 300), options)))).toBe('grid-not-found');
  });
});
