import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridToText } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { applyChange, emptyProject, sampleProject, setProject, type Project } from '@shared/project/index.ts';
import {
  addYarnChange,
  groundChange,
  isUnused,
  removeYarnChange,
  yarnChange,
} from '../../../src-renderer/motif/editing/palette.ts';
import { ALONE } from '../../../src-renderer/motif/editing/following.ts';
import { resizeChange } from '../../../src-renderer/motif/editing/size.ts';
import { cellsThrough, fillChange, strokeChange } from '../../../src-renderer/motif/editing/strokes.ts';
import { eraser } from '../../../src-renderer/motif/tools/eraser.ts';
import { drawnMotif } from './drawn-motif.ts';

const around = (lines: readonly string[]): Project => ({
  ...emptyProject('p', 'motif'),
  motifs: [drawnMotif(lines)],
});
const drawn = (project: Project): string[] => gridToText((project.motifs[0] as Motif).grid, '.#o');

describe('a stroke', () => {
  it('lays the colour of the pen and leaves out what lies outside', () => {
    const project = around(['...', '...']);
    const cells = [
      { column: -1, row: 0 },
      { column: 0, row: 0 },
      { column: 1, row: 1 },
      { column: 3, row: 1 },
    ];
    const change = strokeChange(drawnMotif(['...', '...']), 'draw', 1, cells);
    expect(change?.name).toBe('draw');
    expect(change && drawn(applyChange(project, change))).toEqual(['.#.', '#..']);
  });

  it('of the eraser lays the ground, whatever the pen holds', () => {
    const project = around(['##o']);
    const cells = [
      { column: 1, row: 0 },
      { column: 2, row: 0 },
    ];
    const hand = { colour: 1, ground: 0, following: ALONE, isFilled: false, fillsEverywhere: false };
    const change = eraser.kind === 'stroke' && eraser.change({ motif: drawnMotif(['##o']), ...hand }, cells);
    expect(change && drawn(applyChange(project, change))).toEqual(['#..']);
  });

  it('that changes nothing is no step', () => {
    expect(strokeChange(drawnMotif(['#.']), 'draw', 1, [{ column: 0, row: 0 }])).toBeNull();
    expect(strokeChange(drawnMotif(['#.']), 'draw', 1, [{ column: 9, row: 9 }])).toBeNull();
    expect(fillChange(drawnMotif(['#.']), 1, { column: 0, row: 0 })).toBeNull();
  });

  it('leaves no hole between the samples of a quick hand', () => {
    const place = fc.record({ column: fc.integer({ min: -40, max: 40 }), row: fc.integer({ min: -40, max: 40 }) });
    fc.assert(
      fc.property(place, fc.array(place, { minLength: 1, maxLength: 6 }), (from, samples) => {
        let last = from;
        for (const cell of cellsThrough(from, samples)) {
          expect(Math.max(Math.abs(cell.column - last.column), Math.abs(cell.row - last.row))).toBe(1);
          last = cell;
        }
        expect(last).toEqual(samples.at(-1));
      }),
    );
  });
});

describe('filling', () => {
  it('stops at other colours and at corners', () => {
    const lines = ['#.#', '.#.', '..#'];
    const change = fillChange(drawnMotif(lines), 2, { column: 0, row: 0 });
    expect(change?.name).toBe('fill');
    expect(change && drawn(applyChange(around(lines), change))).toEqual(['#.#', 'o#.', 'oo#']);
  });
});

describe('another size', () => {
  it.each([
    { width: 4, height: 2, columns: 'right', rows: 'top', gives: ['##..', '.#..'] },
    { width: 4, height: 2, columns: 'left', rows: 'top', gives: ['..##', '...#'] },
    { width: 2, height: 3, columns: 'right', rows: 'top', gives: ['..', '##', '.#'] },
    { width: 2, height: 3, columns: 'right', rows: 'bottom', gives: ['##', '.#', '..'] },
    { width: 1, height: 1, columns: 'right', rows: 'top', gives: ['.'] },
    { width: 1, height: 1, columns: 'left', rows: 'bottom', gives: ['#'] },
  ] as const)('of $width × $height, $columns and $rows', ({ width, height, columns, rows, gives }) => {
    const lines = ['##', '.#'];
    const before = drawnMotif(lines);
    const change = resizeChange(before, before.grid, 0, width, height, { columns, rows });
    expect(drawn(applyChange(around(lines), change))).toEqual(gives);
  });

  it('that is too large is refused by name', () => {
    const before = drawnMotif(['#']);
    expect(() => resizeChange(before, before.grid, 0, 1001, 1, { columns: 'right', rows: 'top' })).toThrow(
      'motif-too-large',
    );
  });
});

describe('yarns', () => {
  it('get another name or colour and stay in their place', () => {
    const project = sampleProject();
    const { yarns } = applyChange(project, yarnChange(project, 1, { name: 'foam' }));
    expect(yarns.map(({ name }) => name)).toEqual(['slate', 'foam']);
    expect(yarns[1]?.colour).toBe(project.yarns[1]?.colour);
  });

  it('are added in colours that none has, until the palette is full', () => {
    let project = sampleProject();
    for (let count = 2; count < 64; count++) {
      const change = addYarnChange(project, `yarn ${count}`);
      if (!change) throw new Error('The palette is full too early');
      project = applyChange(project, change);
    }
    expect(new Set(project.yarns.slice(0, 9).map(({ colour }) => colour)).size).toBe(9);
    expect(addYarnChange(project, 'one too many')).toBeNull();
  });

  it('can go when no cell has them, and the cells keep their yarns', () => {
    const lines = ['.o', 'o.'];
    const three = { ...around(lines), yarns: ['main', 'spare', 'contrast'].map((name) => yarn(name)) };
    expect([0, 1, 2].map((index) => isUnused(three, index))).toEqual([false, true, false]);
    const project = applyChange(three, removeYarnChange(three, 1));
    expect(project.yarns.map(({ name }) => name)).toEqual(['main', 'contrast']);
    expect(drawn(project)).toEqual(['.#', '#.']);
    expect(() => removeYarnChange(three, 2)).toThrow(RangeError);
  });

  it('stay what they are when one before them goes, the main yarn too', () => {
    const three = { ...around(['.o']), mainYarn: 2, yarns: ['one', 'spare', 'main'].map((name) => yarn(name)) };
    const project = applyChange(three, removeYarnChange(three, 1));
    expect(project.yarns[project.mainYarn]?.name).toBe('main');
    expect(drawn(project)).toEqual(['.#']);
  });

  it('that are main are used, drawn with or not', () => {
    expect(isUnused({ ...around(['..']), mainYarn: 1 }, 1)).toBe(false);
  });

  it('have one ground for all motifs', () => {
    const project = sampleProject();
    const change = groundChange(project, 1);
    if (!change) throw new Error('Nothing changes');
    expect(change.name).toBe('set-ground');
    expect(change.edits).toEqual([setProject({ mainYarn: 1 })]);
    expect(applyChange(project, change).mainYarn).toBe(1);
    expect(groundChange(project, 0)).toBeNull();
  });
});

function yarn(name: string): Project['yarns'][number] {
  return { name, colour: '#808080', count: null, onHand: null };
}
