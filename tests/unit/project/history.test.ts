import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import {
  deleteColumns,
  deleteRows,
  exchangeColours,
  gridFromText,
  insertColumns,
  insertRows,
  mirrorAcross,
  mirrorUp,
  patchCells,
  quarterTurn,
  shiftAround,
  type Grid,
} from '@shared/grid/index.ts';
import { outcome } from '@shared/problem/index.ts';
import {
  addPart,
  addSize,
  applyChange,
  changeCopies,
  changeSize,
  commit,
  giveUpGesture,
  isUnsaved,
  markSaved,
  MOST_STEPS,
  redo,
  renameSize,
  sampleProject,
  startBand,
  startFill,
  startGroup,
  startHistory,
  undo,
  undoName,
  type Change,
  type ChangeName,
  type Underlay,
} from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';

const sample = sampleProject();
const motif = sample.motifs[0] as (typeof sample.motifs)[number];

const underlay: Underlay = {
  picture: 'data:image/png;base64,iVBORw0KGgo=',
  left: 0,
  bottom: 0,
  columns: 14,
  rows: 18,
  opacity: 0.5,
  isShown: true,
};

/** One stroke over the given cells of the sample's motif. */
function stroke(name: ChangeName, ...cells: [number, number][]): Change {
  return { name, kind: 'paint', motif: motif.id, patch: patchCells(motif.grid, cells) };
}

/** Another drawing in place of the sample's. */
function regrid(name: ChangeName, grid: Grid): Change {
  return { name, kind: 'motif', motif: motif.id, to: { grid } };
}

/** An example for each name that a step can have; the compiler asks for one when a name is added. */
const examples: { readonly [Name in ChangeName]: Change } = {
  draw: stroke('draw', [13, 1], [27, 1]),
  erase: stroke('erase', [1, 0]),
  line: stroke('line', [14, 1], [28, 1]),
  rectangle: stroke('rectangle', [13, 1], [14, 1]),
  ellipse: stroke('ellipse', [15, 1], [28, 1]),
  fill: { name: 'fill', kind: 'paint', motif: motif.id, patch: { at: Uint32Array.of(2, 5), to: Uint8Array.of(0, 0) } },
  move: stroke('move', [13, 1], [0, 0]),
  cut: stroke('cut', [0, 0]),
  paste: stroke('paste', [13, 1]),
  lettering: stroke('lettering', [13, 1], [27, 1]),
  'mirror-across': regrid('mirror-across', mirrorAcross(motif.grid)),
  'mirror-up': regrid('mirror-up', mirrorUp(motif.grid)),
  'quarter-turn': regrid('quarter-turn', quarterTurn(motif.grid)),
  shift: regrid('shift', shiftAround(motif.grid, 1, 0)),
  'insert-column': regrid('insert-column', insertColumns(motif.grid, 3, 1, 0)),
  'delete-column': regrid('delete-column', deleteColumns(motif.grid, 3, 1)),
  'insert-row': regrid('insert-row', insertRows(motif.grid, 3, 1, 0)),
  'delete-row': regrid('delete-row', deleteRows(motif.grid, 3, 1)),
  'exchange-yarns': regrid('exchange-yarns', exchangeColours(motif.grid, 0, 1)),
  invert: regrid('invert', exchangeColours(motif.grid, 0, 1)),
  outline: stroke('outline', [13, 1]),
  'mend-slips': stroke('mend-slips', [13, 1]),
  crop: regrid('crop', deleteColumns(motif.grid, 3, 1)),
  'crop-at-cursor': regrid('crop-at-cursor', deleteColumns(motif.grid, 3, 1)),
  trim: regrid('trim', deleteRows(motif.grid, 3, 1)),
  'resize-motif': { name: 'resize-motif', kind: 'motif', motif: motif.id, to: { grid: gridFromText(['.X'], '.X') } },
  'rename-motif': { name: 'rename-motif', kind: 'motif', motif: motif.id, to: { name: 'skerry light' } },
  'import-motif': {
    name: 'import-motif',
    kind: 'palette',
    yarns: [...sample.yarns, { name: 'kelp', colour: '#4a5a2a', tex: 250 }],
    motifs: [{ ...motif, grid: gridFromText(['.X2', '2X.'], '.X2') }],
  },
  'read-chart': {
    name: 'read-chart',
    kind: 'palette',
    yarns: [...sample.yarns, { name: 'kelp', colour: '#4a5a2a', tex: null }],
    motifs: [{ ...motif, grid: gridFromText(['2.', '.X'], '.X2') }],
  },
  'add-motif': { name: 'add-motif', kind: 'motifs', motifs: [motif, { ...motif, id: 'gull', name: 'gull' }] },
  'duplicate-motif': { name: 'duplicate-motif', kind: 'motifs', motifs: [motif, { ...motif, id: 'motif-2' }] },
  'delete-motif': { name: 'delete-motif', kind: 'motifs', motifs: [{ ...motif, name: 'the one left' }] },
  'read-picture': {
    name: 'read-picture',
    kind: 'palette',
    yarns: [...sample.yarns, { name: 'dulse', colour: '#6a2a3a', tex: null }],
    motifs: [{ ...motif, grid: gridFromText(['2X.', '.X2'], '.X2') }],
  },
  'set-ground': { name: 'set-ground', kind: 'motif', motif: motif.id, to: { ground: 1 } },
  'set-lettering': { name: 'set-lettering', kind: 'motif', motif: motif.id, to: { isLettering: true } },
  'set-shows': { name: 'set-shows', kind: 'motif', motif: motif.id, to: { shows: 'needles' } },
  'add-underlay': { name: 'add-underlay', kind: 'motif', motif: motif.id, to: { underlay: underlay } },
  'replace-underlay': {
    name: 'replace-underlay',
    kind: 'motif',
    motif: motif.id,
    to: { underlay: { ...underlay, picture: 'data:image/jpeg;base64,/9j/2Q==' } },
  },
  'remove-underlay': { name: 'remove-underlay', kind: 'motif', motif: motif.id, to: { underlay: null, name: 'bare' } },
  'move-underlay': {
    name: 'move-underlay',
    kind: 'motif',
    motif: motif.id,
    to: { underlay: { ...underlay, left: 3.5 } },
  },
  'scale-underlay': {
    name: 'scale-underlay',
    kind: 'motif',
    motif: motif.id,
    to: { underlay: { ...underlay, columns: 20, rows: 20 } },
  },
  'underlay-strength': {
    name: 'underlay-strength',
    kind: 'motif',
    motif: motif.id,
    to: { underlay: { ...underlay, opacity: 0.3 } },
  },
  'show-underlay': { name: 'show-underlay', kind: 'motif', motif: motif.id, to: { underlay: underlay } },
  'hide-underlay': {
    name: 'hide-underlay',
    kind: 'motif',
    motif: motif.id,
    to: { underlay: { ...underlay, isShown: false } },
  },
  stamp: stroke('stamp', [13, 1], [14, 1]),
  yarns: { name: 'yarns', kind: 'palette', yarns: [...sample.yarns].reverse(), motifs: sample.motifs },
  'rename-project': { name: 'rename-project', kind: 'project', to: { name: 'Skerry cuff' } },
  'piece-size': { name: 'piece-size', kind: 'piece', to: { shape: { kind: 'rectangle', stitches: 90, rows: 60 } } },
  'piece-hem': { name: 'piece-hem', kind: 'piece', to: { hemRows: 20 } },
  gauge: { name: 'gauge', kind: 'piece', to: { gauge: { stitches: 30, rows: 44 } } },
  'turning-row': { name: 'turning-row', kind: 'piece', to: { hem: { hasTurningRow: true, gauge: null } } },
  'hem-gauge': {
    name: 'hem-gauge',
    kind: 'piece',
    to: { hem: { hasTurningRow: false, gauge: { stitches: 30, rows: 42 } } },
  },
  'add-section': addPart(sample, (number) => `section ${number}`),
  'remove-section': { ...addPart(sample, () => 'rib'), name: 'remove-section' },
  'move-section': { ...addPart(sample, () => 'rib'), name: 'move-section' },
  'rename-section': { ...addPart(sample, () => 'rib'), name: 'rename-section' },
  'section-rows': { ...addPart(sample, () => 'rib'), name: 'section-rows' },
  'section-gauge': { ...addPart(sample, () => 'rib'), name: 'section-gauge' },
  'section-lining': { ...addPart(sample, () => 'rib'), name: 'section-lining' },
  'seam-allowance': { name: 'seam-allowance', kind: 'piece', to: { seamAllowance: { left: 2, right: 2 } } },
  'finished-face': { name: 'finished-face', kind: 'piece', to: { finishedFace: 'purl' } },
  'start-side': { name: 'start-side', kind: 'piece', to: { startSide: 'left' } },
  'end-needles': { name: 'end-needles', kind: 'piece', to: { endNeedleSelection: true } },
  'float-limit': { name: 'float-limit', kind: 'piece', to: { floatLimit: { stitches: 7, mm: null } } },
  'piece-details': { name: 'piece-details', kind: 'piece', to: { isInfant: true, isLined: true, name: 'cuff' } },
  copies: {
    name: 'copies',
    kind: 'band',
    band: 0,
    to: { groups: [{ ...startGroup(motif.id, 3), up: 2 }] },
  },
  'group-motif': {
    name: 'group-motif',
    kind: 'band',
    band: 0,
    to: { groups: [startGroup(motif.id, 1)] },
  },
  'cut-copies': { name: 'cut-copies', kind: 'band', band: 0, to: { cutCopies: 'left-out' } },
  'mirror-group': {
    name: 'mirror-group',
    kind: 'band',
    band: 0,
    to: { groups: [{ ...startGroup(motif.id, 2), isMirrored: true }] },
  },
  'add-group': { name: 'add-group', kind: 'band', band: 0, to: startBand(motif.id, [2, 2, 1]) },
  'remove-group': { name: 'remove-group', kind: 'band', band: 0, to: startBand(motif.id, [2]) },
  'keep-needles': {
    name: 'keep-needles',
    kind: 'band',
    band: 0,
    to: {
      rule: { kind: 'by-hand', first: [-50 as Slot, 11 as Slot], before: { rule: { kind: 'seam' }, choice: 0 } },
    },
  },
  'free-needles': { name: 'free-needles', kind: 'band', band: 0, to: { rule: { kind: 'even' }, choice: 2 } },
  'move-group': {
    name: 'move-group',
    kind: 'band',
    band: 0,
    to: { rule: { kind: 'by-hand', first: [-50 as Slot, 11 as Slot] }, position: { kind: 'from-row', row: 3 } },
  },
  'add-band': { name: 'add-band', kind: 'bands', bands: [...sample.bands, startBand(motif.id, [1])] },
  'remove-band': { name: 'remove-band', kind: 'bands', bands: [] },
  'add-fill': { name: 'add-fill', kind: 'fills', fills: [startFill(motif.id, 2)] },
  'remove-fill': { name: 'remove-fill', kind: 'fills', fills: [startFill(motif.id, 90)] },
  'fill-motif': { name: 'fill-motif', kind: 'fills', fills: [{ ...startFill(motif.id, 60), unit: 'whole' }] },
  'fill-rows': { name: 'fill-rows', kind: 'fills', fills: [{ ...startFill(motif.id, 60), lastRow: 90 }] },
  'fill-border': {
    name: 'fill-border',
    kind: 'fills',
    fills: [{ ...startFill(motif.id, 60), border: { left: 2, right: 3 } }],
  },
  'fill-lie': { name: 'fill-lie', kind: 'fills', fills: [{ ...startFill(motif.id, 60), step: 7, shift: -1 }] },
  'match-seam': { name: 'match-seam', kind: 'fills', fills: [{ ...startFill(motif.id, 60), shift: 3 }] },
  rule: { name: 'rule', kind: 'band', band: 0, to: { rule: { kind: 'by-hand', first: [-48 as Slot, 11 as Slot] } } },
  judge: { name: 'judge', kind: 'band', band: 0, to: { judge: 'blocks' } },
  'choose-placement': { name: 'choose-placement', kind: 'band', band: 0, to: { choice: 2 } },
  'first-row': {
    name: 'first-row',
    kind: 'band',
    band: 0,
    to: { position: { kind: 'centred', section: 'body', oddRow: 'above' } },
  },
  'raise-group': {
    name: 'raise-group',
    kind: 'band',
    band: 0,
    to: { groups: [{ ...startGroup(motif.id, 2), rise: 4 }] },
  },
  'own-balls': {
    name: 'own-balls',
    kind: 'band',
    band: 0,
    to: { groups: [{ ...startGroup(motif.id, 2), hasOwnBall: true }] },
  },
  unit: { name: 'unit', kind: 'band', band: 0, to: { unit: 'whole' } },
  'add-size': addSize(sample, 'larger', 'L'),
  'remove-size': { ...addSize(sample, 'smaller', 'S'), name: 'remove-size' },
  'rename-size': renameSize(sample, 0, 'M'),
  'go-to-size': { ...addSize(sample, 'larger', 'L'), name: 'go-to-size' },
  'size-numbers': changeSize(sample, 0, { hemRows: 12 }),
  'size-copies': changeCopies(sample, 0, 0, 1, 3),
};

describe('a change', () => {
  it.each(Object.values(examples))('called $name is undone by its inverse and touches no other state', (change) => {
    const after = expectChangeLaws(sample, change);
    expect(after).not.toEqual(sample);
    expect(words.changes.undo(change.name)).not.toBe('Undo');
  });

  it('to a motif that is gone is refused by name', () => {
    const change: Change = { name: 'rename-motif', kind: 'motif', motif: 'gone', to: { name: 'x' } };
    expect(outcome(() => applyChange(sample, change))).toMatchObject({ problem: { code: 'motif-missing' } });
  });

  it('to a band that is not there is a mistake of the program', () => {
    expect(() => applyChange(sample, { name: 'judge', kind: 'band', band: 1, to: {} })).toThrow(RangeError);
  });
});

describe('the saved mark', () => {
  const { gauge, copies, judge } = examples;

  it('goes with the first change and comes back with undoing to what is saved', () => {
    const start = startHistory(sample);
    const changed = commit(start, gauge);
    expect([isUnsaved(start), isUnsaved(changed), isUnsaved(undo(changed))]).toEqual([false, true, false]);
    expect(isUnsaved(redo(undo(changed)))).toBe(true);
  });

  it('stands on the state that was saved, past and future alike', () => {
    const saved = markSaved(commit(startHistory(sample), gauge));
    expect(isUnsaved(saved)).toBe(false);
    expect(isUnsaved(undo(saved))).toBe(true);
    expect(isUnsaved(redo(undo(saved)))).toBe(false);
    expect(isUnsaved(commit(saved, copies))).toBe(true);
  });

  it('does not come back where the saved state was left for another way', () => {
    const saved = markSaved(commit(startHistory(sample), gauge));
    const other = commit(undo(saved), judge);
    expect(isUnsaved(other)).toBe(true);
    expect(isUnsaved(undo(other))).toBe(true);
  });

  it('is missing from a project that stands in no file', () => {
    const start = startHistory(sample, false);
    expect(isUnsaved(start)).toBe(true);
    expect(isUnsaved(markSaved(start))).toBe(false);
  });
});

describe('a gesture', () => {
  it('is one step; the next gesture is another', () => {
    const first = commit(startHistory(sample), stroke('draw', [13, 1]), 'drag 1');
    const longer = commit(first, stroke('draw', [1, 0]), 'drag 1');
    const next = commit(longer, stroke('erase', [2, 0]), 'drag 2');
    expect(longer.past).toHaveLength(1);
    expect(next.past).toHaveLength(2);
    expect(undo(undo(next)).project).toEqual(sample);
  });

  it('undone and done again is closed', () => {
    const drawn = commit(startHistory(sample), stroke('draw', [13, 1]), 'drag 1');
    const again = commit(redo(undo(drawn)), stroke('draw', [1, 0]), 'drag 1');
    expect(again.past).toHaveLength(2);
  });

  it('given up leaves the project as it was, and nothing to redo', () => {
    const before = commit(startHistory(sample), stroke('draw', [1, 0]), 'drag 1');
    const drawn = commit(before, stroke('draw', [13, 1]), 'drag 2');
    const left = giveUpGesture(drawn, 'drag 2');
    expect(left.project).toEqual(before.project);
    expect(left.future).toEqual([]);
    expect(undoName(left)).toBe('draw');
    expect(left.past).toHaveLength(1);
    expect(giveUpGesture(left, 'drag 2')).toBe(left);
  });

  it('of a stroke that changes nothing is no step', () => {
    const start = startHistory(sample);
    expect(commit(start, stroke('draw', [13, 0]))).toBe(start);
  });

  it('cannot go on as another kind of change', () => {
    const drawn = commit(startHistory(sample), stroke('draw', [13, 1]), 'drag 1');
    expect(() => commit(drawn, examples.gauge, 'drag 1')).toThrow(RangeError);
  });
});

describe('a long history', () => {
  it('forgets its oldest steps and stays right', () => {
    let history = startHistory(sample);
    for (let i = 0; i < MOST_STEPS + 5; i++) {
      history = commit(history, { name: 'rename-project', kind: 'project', to: { name: `step ${i + 1}` } });
    }
    expect(history.past).toHaveLength(MOST_STEPS);
    while (undoName(history) !== null) history = undo(history);
    expect(history.project.name).toBe('step 5');
    expect(isUnsaved(history)).toBe(true);
  });
});
