/** Anchors on the charts of the sheet and of images. */
import { describe, expect, it } from 'vitest';
import { anchorCells, chartSvg } from '@shared/output/index.ts';
import { copiesIn } from '@shared/pattern/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';

const sample = projectAt(sampleProject());
const wishing = settled(sample, {
  patterns: sample.patterns.map((pattern) => ({
    ...pattern,
    anchors: { longest: 5, isBehindFigure: false, byHand: [] },
  })),
});
const plan = makePlan(pieceIn(wishing));
const [motif] = sample.motifs;
if (!motif) throw new Error('The sample has a motif');
const cells = anchorCells(plan, copiesIn(plan), motif.grid);

describe('anchors on a chart', () => {
  it('stand on ground of the motif, in the yarn of its figure', () => {
    expect(cells.size).toBeGreaterThan(0);
    for (const [cell, yarn] of cells) {
      expect(motif.grid.cells[cell]).toBe(sample.mainYarn);
      expect(yarn).toBe(1);
    }
  });

  it('stand in half of the copies or more', () => {
    for (const cell of cells.keys()) {
      let here = 0;
      for (const group of plan.groups) {
        const { width } = group.copy;
        const [column, row] = [cell % motif.grid.width, Math.floor(cell / motif.grid.width)];
        const onNeedles = group.isMirrored ? width - 1 - column : column;
        const { first, last } = group.block;
        const anchors = plan.rows[group.firstRow + row - 1]?.anchors ?? [];
        const own = anchors.filter((needle) => needle >= first && needle <= last);
        here += own.filter((needle) => (needle - group.origin - onNeedles) % width === 0).length;
      }
      expect(2 * here).toBeGreaterThanOrEqual(plan.groups.reduce((sum, { across }) => sum + across, 0));
    }
  });

  it('have a ring each in an image', () => {
    const options = { gauge: null, cellHeight: 24, numbers: false, gridLines: false, repeatBox: false };
    const closed = (svg: string): number => svg.split('<path').length;
    const plain = chartSvg(motif, sample, options);
    expect(closed(chartSvg(motif, sample, { ...options, anchors: cells }))).toBeGreaterThan(closed(plain));
    expect(chartSvg(motif, sample, { ...options, anchors: new Map() })).toBe(plain);
  });
});
