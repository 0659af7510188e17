/** The charts of printed sheets, found again in the PDF's own graphics by a reader that is not ours. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { contrastRatio } from '@shared/colour/index.ts';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { ProblemError } from '@shared/problem/index.ts';
import { allOversOf, copiesIn } from '@shared/pattern/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { sheetToPdf } from '../../src-main/services/export/index.ts';
import { TEST_DAY } from '../day.ts';
import { fillAt, type DrawnPath, type PointMm } from '../pdf-graphics.ts';
import { anyProject } from '../property/projects.ts';
import { PROJECTS } from '../unit/output/projects.ts';
import { onNeedles } from './on-needles.ts';
import { readChart, readSheet, type ChartRead, type SheetRead } from './sheet-charts-read-back.ts';

/** End needles knit contrast where a copy stands at an edge, which its chart has not. */
const meetsAnEdge = ({ outline }: Plan, { block, copy, firstRow }: Plan['groups'][number]): boolean =>
  Array.from({ length: copy.height }, (_, row) => firstRow - 1 + row).some(
    (row) => block.first <= (outline.first[row] ?? 0) || block.last >= (outline.last[row] ?? 0),
  );

/** Projects of all kinds that can be planned, each of whose motifs has one chart of copies that are whole somewhere. */
const GENERATED = fc
  .sample(anyProject, { numRuns: 400, seed: 20260103 })
  .filter((project) => {
    try {
      const plan = makePlan(pieceIn(project));
      const { groups, fabric } = plan;
      const charts = new Set(groups.map(({ motif, copy, isMirrored }) => `${motif} ${copy.width} ${isMirrored}`));
      const motifs = new Set(groups.map(({ motif }) => motif));
      const isWhole = [...motifs].every((id) => {
        const whole = groups.find(({ motif, clipped }) => motif === id && clipped.length === 0);
        return whole !== undefined && !meetsAnEdge(plan, whole);
      });
      const names = new Set(project.motifs.map(({ name }) => name));
      const isSeveral = new Set(fabric.cells).size > 1;
      return (
        allOversOf(plan).length === 0 &&
        groups.length > 0 &&
        charts.size === motifs.size &&
        isWhole &&
        isSeveral &&
        names.size === project.motifs.length
      );
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      return false;
    }
  })
  .slice(0, 6);
const generated = new Map(GENERATED.map((project, index) => [`generated ${index + 1}`, project]));

const NAMES = ['sample', 'hem', 'crowded', 'tiny', 'sixteen', 'three', 'filled', 'large'];

interface Printed {
  readonly project: ProjectAt;
  readonly plan: Plan;
  readonly sheet: SheetRead;
}

async function print(name: string, paper: 'a4' | 'letter'): Promise<Printed> {
  const project = generated.get(name) ?? (PROJECTS[name] as () => ProjectAt)();
  const plan = makePlan(pieceIn(project));
  const sheet = placementSheet(sheetFacts(project), plan, { paper, date: TEST_DAY });
  return { project, plan, sheet: await readSheet(await sheetToPdf(sheet)) };
}

const known = new Map<string, Promise<Printed>>();

/** Each is printed once, by the first test that asks for it. */
function printed(name: string): Promise<Printed> {
  const made = known.get(name) ?? print(name, name === 'three' ? 'letter' : 'a4');
  known.set(name, made);
  return made;
}

describe.each([...NAMES, ...generated.keys()])('the charts of the %s project in the PDF', (name) => {
  it('show each cell in the colour of its yarn, as on the needles and as worn', async () => {
    const made = await printed(name);
    const { project, sheet, plan } = made;
    const placed = [...new Set(copiesIn(plan).map(({ motif }) => motif))];
    for (const id of placed) {
      const called = project.motifs.find((motif) => motif.id === id)?.name ?? '';
      const charts = sheet.charts.filter((chart) => chart.name === called);
      const expected = onNeedles(plan, id).map((row) => row.map((yarn) => project.yarns[yarn]?.colour));
      const worn = expected.map((row) => [...row].reverse());
      for (const [way, cells] of [
        ['needles', expected],
        // Where the purl side is worn the two are one.
        ['worn', project.piece.finishedFace === 'knit' ? worn : []],
      ] as const) {
        const found = readChart(charts.filter((chart) => chart.way === way));
        expect(found.length, `${called}, ${way}`).toBe(cells.length);
        expect(found, `${called}, ${way}`).toEqual(cells);
      }
    }
  });

  it('have cells of at least 3 mm, all of one size', async () => {
    for (const { xs, ys } of (await printed(name)).sheet.charts) {
      for (const lines of [xs, ys]) {
        const sizes = lines.slice(1).map((at, index) => at - (lines[index] as number));
        expect(Math.min(...sizes)).toBeGreaterThan(3 - 0.005);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThan(0.005);
      }
    }
  });

  it('have a bar of 50 mm on the first page', async () => {
    const lengths = ((await printed(name)).sheet.pages[0] as readonly DrawnPath[])
      .filter(({ tag, fill }) => tag !== 'Figure' && fill === null)
      .flatMap(({ lines }) => lines)
      .map((line) => Math.max(...line.map(([x]) => x)) - Math.min(...line.map(([x]) => x)));
    expect(lengths.filter((length) => Math.abs(length - 50) <= 0.1).length).toBeGreaterThan(0);
  });

  it('tell yarns apart by marks alone: none on the main yarn, one of its own on each other', async () => {
    const { project, sheet } = await printed(name);
    const main = project.yarns[project.mainYarn]?.colour;
    const marks = new Map<string, Set<string>>();
    for (const chart of sheet.charts) {
      for (const [colour, found] of marksIn(chart)) {
        marks.set(colour, new Set([...(marks.get(colour) ?? []), ...found]));
      }
    }
    expect([...(marks.get(main ?? '') ?? [''])]).toEqual(['']);
    marks.delete(main ?? '');
    // Each yarn has one mark, the same in all cells of all charts, and none has that of another.
    const each = [...marks.values()].map((found) => [...found]);
    expect(each.filter((found) => found.length !== 1)).toEqual([]);
    expect(each.flat()).not.toContain('');
    expect(new Set(each.flat()).size).toBe(marks.size);
  });

  it('have the marks of the drawing of the piece, each on the cells of its yarn', async () => {
    const { project, plan, sheet } = await printed(name);
    const figures = (sheet.pages[0] as readonly DrawnPath[]).filter(({ tag }) => tag === 'Figure');
    const main = project.mainYarn;
    const tones = new Map<string, Set<string>>();
    for (const { lines, stroke } of figures.filter((path) => isOfWidth(path, 0.12))) {
      for (const points of lines) {
        for (const [[ax, ay], [bx, by]] of points.slice(1).map((to, i) => [points[i], to] as [PointMm, PointMm])) {
          const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
          const under = fillAt(figures, x, y) ?? '';
          const isBetween = [-0.02, 0.02].some(
            (off) => fillAt(figures, x + off, y) !== under || fillAt(figures, x, y + off) !== under,
          );
          // Where cells meet it may lie on either.
          if (isBetween) continue;
          expect(contrastRatio(stroke?.colour ?? '', under)).toBeGreaterThan(3);
          tones.set(under, (tones.get(under) ?? new Set()).add(stroke?.colour ?? ''));
        }
      }
    }
    expect(tones.has(project.yarns[main]?.colour ?? '')).toBe(false);
    const cells = (yarn: number): number => plan.fabric.cells.filter((cell) => cell === yarn).length;
    const large = project.yarns.filter((_, yarn) => yarn !== main && cells(yarn) > 100);
    expect([...tones.keys()]).toEqual(expect.arrayContaining(large.map(({ colour }) => colour)));
  });
});

it('the generated projects are several', () => {
  expect(generated.size).toBe(6);
});

describe('a chart over several pages in the PDF', () => {
  let sheet: SheetRead;
  const parts = (): readonly ChartRead[] => sheet.charts;
  beforeAll(async () => {
    ({ sheet } = await printed('large'));
  });
  const right = ({ column, xs }: ChartRead): number => column + xs.length - 1;
  const top = ({ row, ys }: ChartRead): number => row + ys.length - 1;
  const joinsOf = ({ texts }: ChartRead): { page: number; x: number; y: number }[] =>
    texts.flatMap(({ text, x, y, widthMm }) => {
      const page = /^joins page (\d+)$/.exec(text)?.[1];
      return page === undefined ? [] : [{ page: Number(page), x: x + widthMm / 2, y }];
    });
  const cutsOf = ({ paths }: ChartRead): PointMm[][] =>
    paths.filter(({ stroke }) => stroke?.isDashed).flatMap(({ lines }) => lines.map((line) => [...line]));

  it('goes over four pages and more each way round', () => {
    for (const way of ['needles', 'worn']) expect(parts().filter((part) => part.way === way).length).toBeGreaterThan(4);
  });

  it('names at each edge the page that goes on there, which names it in turn', () => {
    for (const part of parts()) {
      const neighbours = parts().filter((other) => other.way === part.way && touches(part, other));
      expect(
        joinsOf(part)
          .map(({ page }) => page)
          .sort(),
      ).toEqual(neighbours.map(({ page }) => page).sort());
      for (const { page, x, y } of joinsOf(part)) {
        const other = neighbours.find((one) => one.page === page) as ChartRead;
        const middle = ((part.xs[0] as number) + (part.xs.at(-1) as number)) / 2;
        if (other.row > part.row) expect(y).toBeLessThan(part.ys[0] as number);
        else if (other.row < part.row) expect(y).toBeGreaterThan(part.ys.at(-1) as number);
        else expect(Math.sign(x - middle)).toBe(Math.sign(other.column - part.column));
      }
    }
  });

  it('repeats two columns or rows of each page it joins, cut off by a broken line at the same place on both', () => {
    for (const part of parts()) {
      const last = { column: Math.max(...parts().map(right)), row: Math.max(...parts().map(top)) };
      const expected = [
        part.column > 0 ? `column ${part.column + 2}` : '',
        right(part) < last.column ? `column ${right(part) - 2}` : '',
        part.row > 0 ? `row ${part.row + 2}` : '',
        top(part) < last.row ? `row ${top(part) - 2}` : '',
      ].filter((cut) => cut !== '');
      const cuts = cutsOf(part).map(([from, to]) => {
        const [[ax, ay], [bx]] = [from, to] as [PointMm, PointMm];
        return Math.abs(ax - bx) < 0.01
          ? `column ${part.column + part.xs.findIndex((x) => Math.abs(x - ax) < 0.02)}`
          : `row ${part.row + part.ys.length - 1 - part.ys.findIndex((y) => Math.abs(y - ay) < 0.02)}`;
      });
      expect(cuts.sort()).toEqual(expected.sort());
      for (const other of parts().filter((one) => one.way === part.way && one.row === part.row)) {
        if (other.column > part.column && touches(part, other)) expect(right(part) - other.column).toBe(4);
      }
      for (const other of parts().filter((one) => one.way === part.way && one.column === part.column)) {
        if (other.row > part.row && touches(part, other)) expect(top(part) - other.row).toBe(4);
      }
    }
  });

  it('has a map of its pages on each of them, as they lie, with that page filled', () => {
    for (const part of parts()) {
      const alike = parts().filter(({ way }) => way === part.way);
      const above = part.texts.filter(({ text, y }) => /^\d+$/.test(text) && y < (part.ys[0] as number) - 8);
      expect(above.map(({ text }) => Number(text)).sort()).toEqual(alike.map(({ page }) => page).sort());
      const on = (page: number) => above.find(({ text }) => Number(text) === page) as (typeof above)[number];
      for (const other of alike) {
        expect(Math.sign(Math.round(on(other.page).x - on(part.page).x))).toBe(Math.sign(other.column - part.column));
        expect(Math.sign(Math.round(on(part.page).y - on(other.page).y))).toBe(Math.sign(other.row - part.row));
      }
      const { x, y } = on(part.page);
      const paths = sheet.pages[part.page - 1] as readonly DrawnPath[];
      const filled = alike.filter(({ page }) => fillAt(paths, on(page).x, on(page).y) === fillAt(paths, x, y));
      expect(filled.map(({ page }) => page)).toEqual([part.page]);
    }
  });

  /** Beside or above each other, with cells in common. */
  function touches(one: ChartRead, other: ChartRead): boolean {
    const across = Math.min(right(one), right(other)) - Math.max(one.column, other.column);
    const up = Math.min(top(one), top(other)) - Math.max(one.row, other.row);
    return one !== other && across > 0 && up > 0 && (one.column === other.column || one.row === other.row);
  }
});

const isOfWidth = ({ stroke, fill }: DrawnPath, mm: number): boolean =>
  fill === null && Math.abs((stroke?.widthMm ?? 0) - mm) < 0.01;

/** For the colour of each cell, the marks found on cells of it: their points, relative to the middle of the cell. */
function marksIn(chart: ChartRead): Map<string, Set<string>> {
  const { xs, ys, paths } = chart;
  const strokes = paths.filter((path) => isOfWidth(path, 0.2));
  const inCells = new Map<string, string[]>();
  const key = (column: number, line: number): string => `${column} ${line}`;
  for (const { lines, stroke } of strokes) {
    for (const points of lines) {
      const [mx, my] = [0, 1].map((axis) => {
        const values = points.map((point) => point[axis as 0 | 1]);
        return (Math.min(...values) + Math.max(...values)) / 2;
      }) as [number, number];
      const column = xs.findLastIndex((x) => x <= mx);
      const line = ys.findLastIndex((y) => y <= my);
      const [x, y] = [xs[column], ys[line]] as [number, number];
      const [width, height] = [(xs[column + 1] as number) - x, (ys[line + 1] as number) - y];
      const size = Math.min(width, height);
      const share = (at: number): string => (at / size).toFixed(2).replace('-0.00', '0.00');
      const shape = points.map(([px, py]) => `${share(px - x - width / 2)},${share(py - y - height / 2)}`);
      inCells.set(key(column, line), [...(inCells.get(key(column, line)) ?? []), shape.join(' ')]);
      // Seen on its cell also where only lightness is (WCAG 2.2, 1.4.11 asks 3 of graphics).
      expect(contrastRatio(stroke?.colour ?? '', fillAt(paths, mx, my) ?? '')).toBeGreaterThan(3);
    }
  }
  const marks = new Map<string, Set<string>>();
  for (let line = 0; line + 1 < ys.length; line++) {
    for (let column = 0; column + 1 < xs.length; column++) {
      const colour = chart.colours[line]?.[column] ?? '';
      const found = marks.get(colour) ?? new Set();
      marks.set(colour, found.add((inCells.get(key(column, line)) ?? []).sort().join(' | ')));
    }
  }
  return marks;
}
