/** The figure of a shaped piece: margins where they hold, and every needle that must be found. */
import { describe, expect, it } from 'vitest';
import type { PathItem, SheetItem } from '@shared/output/index.ts';
import { needleRuler } from '@shared/output/piece/needles.ts';
import { spaceLines } from '@shared/output/piece/space-lines.ts';
import { spaceStrips } from '@shared/output/piece/spaces.ts';
import { pieceView } from '@shared/output/piece/view.ts';
import { edgesAt } from '@shared/piece/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, sampleProject, type Project } from '@shared/project/index.ts';
import { textOf } from '@shared/words/index.ts';

/** A sleeve of 96 stitches at the cast-on, 100 on row 25, where its groups stand at L39 and R11. */
function figureOf(project: Project) {
  const plan = makePlan(pieceIn(project));
  const view = pieceView(plan.outline, project.piece.gauge, 150, 150);
  return { plan, view, edges: edgesAt(plan.outline, 25) };
}

const textsIn = (items: readonly SheetItem[]): string[] =>
  items.flatMap((item) => (item.kind === 'text' ? [textOf(item.spans)] : []));
const pathsIn = (items: readonly SheetItem[]): PathItem[] => items.filter((item) => item.kind === 'path');

describe('the spaces of a sleeve', () => {
  it('are drawn on the row where they hold, from edge to edge of it', () => {
    const { plan, view, edges } = figureOf(sampleProject());
    const items = spaceLines(plan, view);
    const points = pathsIn(items).flatMap(({ lines }) => lines.flat());
    expect(Math.min(...points.map(([x]) => x))).toBeCloseTo(view.x(edges.first));
    expect(Math.max(...points.map(([x]) => x))).toBeCloseTo(view.x(edges.last + 1));
    // Every line lies in row 25; its stops reach a little over it.
    for (const { lines } of pathsIn(items)) {
      const [along] = lines;
      for (const [, y] of along ?? []) {
        expect(y).toBeLessThan(view.y(25));
        expect(y).toBeGreaterThan(view.y(26));
      }
    }
    expect(textsIn(items)).toEqual(['12', '22', '12']);
  });

  it('are told with the row, and what the seam leaves of the margins', () => {
    const { plan, view } = figureOf(sampleProject());
    const texts = textsIn(spaceStrips(plan, view, 0, 0).items);
    expect(texts).toEqual(expect.arrayContaining(['row 25, seen', 'row 25, blocks']));
    const wide = pieceView(plan.outline, sampleProject().piece.gauge, 600, 600);
    expect(textsIn(spaceStrips(plan, wide, 0, 0).items)).toContain('12 (11 clear of the seam)');
  });

  it('leave the numbers to the lower of two bands that are too near each other', () => {
    const sample = sampleProject();
    const [band] = sample.bands as [Project['bands'][number]];
    const above = { ...band, position: { kind: 'from-row' as const, row: 44 } };
    const { plan, view } = figureOf({ ...sample, bands: [band, above] });
    expect(spaceLines(plan, view)).toHaveLength(
      2 * spaceLines({ ...plan, bands: plan.bands.slice(0, 1) }, view).length,
    );
    // A quarter as large, row 44 lies within the numbers of row 25.
    const small = pieceView(plan.outline, sample.piece.gauge, 35, 35);
    const rows = spaceLines(plan, small).flatMap((item) => (item.kind === 'text' ? [item.y] : []));
    expect(rows).not.toHaveLength(0);
    expect(Math.min(...rows)).toBeGreaterThan(small.y(44));
  });
});

describe('the ruler of a sleeve', () => {
  it('names both needles of every block and of what is seen of it, and the edges of the row and of the cast-on', () => {
    const { plan, view } = figureOf(sampleProject());
    const { items, left } = needleRuler(plan, view, 200);
    expect(left).toBe(0);
    // Blocks L39–L12 and R11–R38 with a blank needle at the left; 100 stitches on row 25, 96 cast on.
    expect(textsIn(items)).toEqual(
      expect.arrayContaining(['L39', 'L12', 'R11', 'R38', 'L38', 'R12', 'L50', 'R50', 'L48', 'R48']),
    );
  });

  it('leads from the edge needles up to their row', () => {
    const { plan, view, edges } = figureOf(sampleProject());
    const lines = pathsIn(needleRuler(plan, view, 200).items).flatMap(({ lines }) => lines);
    for (const slot of [edges.first, edges.last]) {
      const x = view.x(slot) + view.cellWidth / 2;
      const up = lines.filter(([from]) => from && Math.abs(from[0] - x) < 1e-6 && from[1] < 200);
      expect(up.map(([from]) => from?.[1])).toEqual([view.y(25)]);
    }
  });
});
