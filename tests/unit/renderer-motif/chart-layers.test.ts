/** Which layers of the chart are drawn again, and where, for what has changed. */
import { describe, expect, it } from 'vitest';
import { gridFromText, straightCopies, type Grid } from '@shared/grid/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import { surfaceAttributes } from '../../../src-renderer/canvas/surface.ts';
import { panAndZoom, Viewport } from '../../../src-renderer/canvas/viewport.ts';
import { blankColumns } from '../../../src-renderer/motif/drawing/hatch.ts';
import { motifLook } from '../../../src-renderer/motif/drawing/look.ts';
import {
  motifLayers,
  pictureOf,
  type MotifChart,
  type MotifScene,
} from '../../../src-renderer/motif/drawing/motif-drawing.ts';
import { paintsOf } from '../paints.ts';
import { columnNumber, columnSeen } from '../../../src-renderer/motif/drawing/rulers.ts';

const GRID = gridFromText(['..#...', '.###..', '..#...', '......'], '.#');
const painted = (at: number): Grid => ({ ...GRID, cells: GRID.cells.with(at, 1) });
const CHART: MotifChart = {
  grid: GRID,
  colours: ['#000000', '#ffffff'],
  measure: measure(GRID, 0),
  isHatched: true,
  isTurned: false,
  following: { symmetry: 'none', tile: null },
  marked: null,
  doubts: [],
  neighbours: null,
  fabric: null,
  look: motifLook(['#000000', '#ffffff'], '#000000', () => '#123456'),
};
const sceneOf = (to: Partial<MotifChart> = {}, at: Partial<MotifScene> = {}): MotifScene => {
  const chart = { ...CHART, ...to };
  return { chart, picture: pictureOf(chart), floats: null, handles: null, hover: null, cursor: null, ...at };
};
const BEFORE = sceneOf();
/** Of the cells, of what is marked around them, of the pointer, and of what is dragged. */
const changed = (after: MotifScene) => motifLayers().map((layer) => layer.changed(BEFORE, after));

describe('the number of a column', () => {
  it('is that of the drawing, whichever side of the fabric is seen', () => {
    const seen = (isTurned: boolean) => [0, 1, 5].map((column) => columnNumber({ grid: GRID, isTurned }, column));
    expect(seen(false)).toEqual([1, 2, 6]);
    expect(seen(true)).toEqual([6, 5, 1]);
    for (const isTurned of [false, true]) {
      for (let column = 0; column < GRID.width; column++) {
        const numbered = { grid: GRID, isTurned };
        expect(columnSeen(numbered, columnNumber(numbered, column))).toBe(column);
      }
    }
  });
});

describe('a layer that says it is blank', () => {
  const cell = { column: 2, row: 1 };
  const view = new Viewport(20, 14, 40, 300);
  it.each([
    ['at rest', BEFORE, [true, true]],
    ['with the pointer on a cell', sceneOf({}, { hover: cell }), [false, true]],
    ['with the cursor of the keyboard', sceneOf({}, { cursor: cell }), [false, true]],
  ] as const)('%s, paints nothing, and the others do', (_, scene, blank) => {
    const [, , ...layers] = motifLayers();
    expect(layers.map((layer) => layer.isBlank?.(scene))).toEqual(blank);
    for (const layer of layers) expect(paintsOf(layer, view, scene) === 0).toBe(layer.isBlank?.(scene));
  });
});

describe('what is drawn again of the chart', () => {
  it('is the painted cell alone, with its copies where neighbours show', () => {
    // Cell 9 of a chart six wide: column 3 of row 1.
    const box = { column: 3, row: 1, width: 1, height: 1 };
    expect(changed(sceneOf({ grid: painted(9) }))).toEqual([[box], false, false, false]);
    const neighbours = straightCopies(GRID);
    const around = sceneOf({ neighbours });
    const repeated = sceneOf({ neighbours, grid: painted(9) });
    expect(motifLayers()[0]?.changed(around, repeated)).toContainEqual({ ...box, column: 9 });
  });

  it('is the hatching of blank columns where there are some, when a stroke begins or ends', () => {
    expect(changed(sceneOf({ isHatched: false }, { picture: BEFORE.picture }))[1]).toBe(true);
    const full = gridFromText(['#.', '.#'], '.#');
    const without = { grid: full, measure: measure(full, 0) };
    const [, marks] = motifLayers();
    expect(marks?.changed(sceneOf(without), sceneOf({ ...without, isHatched: false }))).toBe(false);
  });

  it('hatches blank columns beside the figure alone, from its lowest row to its uppermost', () => {
    expect(blankColumns(GRID, { left: 1, right: 2, top: 0, bottom: 1 })).toEqual([
      { column: 0, row: 1, width: 1, height: 3 },
      { column: 4, row: 1, width: 2, height: 3 },
    ]);
    expect(blankColumns(GRID, { left: 0, right: 0, top: 1, bottom: 1 })).toEqual([]);
    const [, marks] = motifLayers();
    const higher = gridFromText(['..#...', '.###..', '..#...', '..#...'], '.#');
    expect(marks?.changed(BEFORE, sceneOf({ grid: higher, measure: measure(higher, 0) }))).toBe(true);
  });

  it('is only what shows the pointer or the cursor as they move', () => {
    expect(changed(sceneOf({}, { picture: BEFORE.picture, hover: { column: 1, row: 2 } }))).toEqual([
      false,
      false,
      true,
      false,
    ]);
    expect(changed(sceneOf({}, { cursor: { column: 1, row: 2 } }))).toEqual([false, false, true, false]);
  });

  it('is what is marked, but no cell, when a selection or an axis comes', () => {
    expect(changed(sceneOf({ following: { symmetry: 'both', tile: null } }))).toEqual([false, true, true, false]);
  });

  it('is what is dragged when a handle of the picture to trace comes or goes', () => {
    expect(changed(sceneOf({}, { picture: BEFORE.picture, handles: () => [] }))).toEqual([false, false, false, true]);
  });

  it('is all of it in other colours, another size, or as fabric', () => {
    const look = motifLook(['#000000', '#ffffff'], '#000000', () => '#abcdef');
    expect(changed(sceneOf({ look }))).toEqual([true, true, true, false]);
    expect(changed(sceneOf({ grid: gridFromText(['..#'], '.#') }))[0]).toBe(true);
    expect(changed(sceneOf({ fabric: 'purl' }))).toEqual([true, true, true, false]);
    // A stitch reaches into its neighbours.
    const fabric = sceneOf({ fabric: 'knit' });
    expect(motifLayers()[0]?.changed(fabric, sceneOf({ fabric: 'knit', grid: painted(9) }))).toBe(true);
  });
});

describe('a chart under pointer and keys', () => {
  it('is panned and zoomed from where it is seen now', () => {
    let view = new Viewport(10, 10, 0, 100);
    const { panBy, zoomAt } = panAndZoom(
      () => view,
      (next) => (view = next),
    );
    panBy(5, -7);
    zoomAt(2, 5, 93);
    expect(view).toEqual(new Viewport(20, 20, 5, 93));
  });

  it('is told to assistive technology as a grid with the cell of the keyboard, or as a slider', () => {
    const box = { left: 0, top: 0, width: 1, height: 1 };
    const cursor = { row: 1, column: 2, label: 'Row 1, stitch 2', box };
    const grid = { role: 'grid', label: 'Chart', rows: 4, columns: 6, cursor } as const;
    expect(surfaceAttributes({ ...grid, isReadOnly: false }, 'c-cell')).toEqual({
      role: 'grid',
      'aria-label': 'Chart',
      'aria-rowcount': 4,
      'aria-colcount': 6,
      'aria-activedescendant': 'c-cell',
    });
    expect(surfaceAttributes({ ...grid, isReadOnly: true }, 'c-cell')['aria-readonly']).toBe('true');
    const slider = { role: 'slider', label: 'Tube', least: -180, most: 180, value: 5, text: 'turned' } as const;
    expect(surfaceAttributes(slider, 'c-cell')).toEqual({
      role: 'slider',
      'aria-label': 'Tube',
      'aria-valuemin': -180,
      'aria-valuemax': 180,
      'aria-valuenow': 5,
      'aria-valuetext': 'turned',
    });
  });
});
