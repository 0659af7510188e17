/** Changes of the sample project, one for each name that a step can have. */
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
import type { Underlay } from '@shared/motif/index.ts';
import type { AllOver } from '@shared/pattern/index.ts';
import {
  projectAt,
  addColourway,
  addSection,
  addSize,
  changeCopies,
  changeOf,
  changeSize,
  insertInto,
  paintCells,
  removeFrom,
  renameColourway,
  renameSize,
  sampleProject,
  setPattern,
  setMotif,
  setPiece,
  setProject,
  setUnderlay,
  startBand,
  startAllOver,
  startGroup,
  type Change,
  type ChangeName,
  insertPattern,
  removePattern,
  moveWithin,
  setPieceInSizes,
  pieceOf,
  type Edit,
} from '@shared/project/index.ts';
import { onRows } from '../../written-projects.ts';

export const sample = sampleProject();
const at = projectAt(sample);
const motif = sample.motifs[0] as (typeof sample.motifs)[number];
const second = { ...pieceOf(sample, at.at.piece), id: 'piece-2', name: 'front', patterns: [] };
const gull = { ...motif, id: 'gull', name: 'gull' };

const underlay: Underlay = {
  picture: 'data:image/png;base64,iVBORw0KGgo=',
  left: 0,
  bottom: 0,
  columns: 14,
  rows: 18,
  opacity: 0.5,
  turn: 0,
  isShown: true,
};

const withUnderlay = setMotif(motif.id, { underlay });
const { change: withSection } = addSection(at, (number) => `section ${number}`);
const withFill = insertPattern(at, 'fill-1', startAllOver(motif.id, 60));
/** Of the fill that came before. */
const setNewFill = (to: Partial<AllOver>): Edit => ({
  kind: 'set',
  of: 'all-over',
  piece: at.at.piece,
  pattern: 'fill-1',
  to,
});

/** One stroke over the given cells of the sample's motif. */
export function stroke(name: ChangeName, ...cells: [number, number][]): Change {
  return changeOf(name, paintCells(motif.id, patchCells(motif.grid, cells)));
}

/** Another drawing in place of the sample's. */
function regrid(name: ChangeName, grid: Grid): Change {
  return changeOf(name, setMotif(motif.id, { grid }));
}

/** An example for each name that a step can have; the compiler asks for one when a name is added. */
export const examples: { readonly [Name in ChangeName]: Change } = {
  draw: stroke('draw', [13, 1], [27, 1]),
  erase: stroke('erase', [1, 0]),
  line: stroke('line', [14, 1], [28, 1]),
  rectangle: stroke('rectangle', [13, 1], [14, 1]),
  ellipse: stroke('ellipse', [15, 1], [28, 1]),
  fill: changeOf('fill', paintCells(motif.id, { at: Uint32Array.of(2, 5), to: Uint8Array.of(0, 0) })),
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
  'settle-cell': stroke('settle-cell', [13, 1]),
  'settle-copies': stroke('settle-copies', [14, 1]),
  crop: regrid('crop', deleteColumns(motif.grid, 3, 1)),
  'crop-at-cursor': regrid('crop-at-cursor', deleteColumns(motif.grid, 3, 1)),
  trim: regrid('trim', deleteRows(motif.grid, 3, 1)),
  'resize-motif': changeOf('resize-motif', setMotif(motif.id, { grid: gridFromText(['.X'], '.X') })),
  'rename-motif': changeOf('rename-motif', setMotif(motif.id, { name: 'skerry light' })),
  'import-motif': changeOf(
    'import-motif',
    setProject({
      yarns: [
        ...sample.yarns,
        { name: 'kelp', colour: '#4a5a2a', count: { system: 'tex', value: 250, plies: 1 }, onHand: null },
      ],
    }),
    setMotif(motif.id, { grid: gridFromText(['.X2', '2X.'], '.X2') }),
  ),
  'read-chart': changeOf(
    'read-chart',
    setProject({ yarns: [...sample.yarns, { name: 'kelp', colour: '#4a5a2a', count: null, onHand: null }] }),
    setMotif(motif.id, { grid: gridFromText(['2.', '.X'], '.X2') }),
  ),
  'add-motif': changeOf('add-motif', insertInto('motifs', 1, gull)),
  'duplicate-motif': changeOf('duplicate-motif', insertInto('motifs', 1, { ...motif, id: 'motif-2' })),
  'delete-motif': changeOf(
    'delete-motif',
    insertInto('motifs', 0, gull),
    insertInto('motifs', 2, { ...motif, id: 'motif-2' }),
    removeFrom('motifs', 'gull'),
  ),
  'read-picture': changeOf(
    'read-picture',
    setProject({ yarns: [...sample.yarns, { name: 'dulse', colour: '#6a2a3a', count: null, onHand: null }] }),
    setMotif(motif.id, { grid: gridFromText(['2X.', '.X2'], '.X2') }),
  ),
  'set-ground': changeOf('set-ground', setProject({ mainYarn: 1 })),
  'set-lettering': changeOf('set-lettering', setMotif(motif.id, { isLettering: true })),
  'set-shows': changeOf('set-shows', setMotif(motif.id, { shows: 'needles' })),
  'add-underlay': changeOf('add-underlay', withUnderlay),
  'replace-underlay': changeOf(
    'replace-underlay',
    setMotif(motif.id, { underlay: { ...underlay, picture: 'data:image/jpeg;base64,/9j/2Q==' } }),
  ),
  'remove-underlay': changeOf('remove-underlay', setMotif(motif.id, { underlay: null, name: 'bare' })),
  'move-underlay': changeOf('move-underlay', withUnderlay, setUnderlay(motif.id, { left: 3.5 })),
  'scale-underlay': changeOf('scale-underlay', withUnderlay, setUnderlay(motif.id, { columns: 20, rows: 20 })),
  'turn-underlay': changeOf('turn-underlay', withUnderlay, setUnderlay(motif.id, { turn: 12.5 })),
  'underlay-strength': changeOf('underlay-strength', withUnderlay, setUnderlay(motif.id, { opacity: 0.3 })),
  'show-underlay': changeOf('show-underlay', withUnderlay, setUnderlay(motif.id, { isShown: true })),
  'hide-underlay': changeOf('hide-underlay', withUnderlay, setUnderlay(motif.id, { isShown: false })),
  stamp: stroke('stamp', [13, 1], [14, 1]),
  yarns: changeOf('yarns', setProject({ yarns: [...sample.yarns].reverse() })),
  'add-colourway': addColourway(sample, 'colourway-1', 'storm', 'colourway-2'),
  'rename-colourway': renameColourway(sample, 'colourway-1', 'calm'),
  'choose-colourway': changeOf(
    'choose-colourway',
    ...addColourway(sample, 'colourway-1', 'storm', 'colourway-2').edits,
    setProject({
      yarns: [...sample.yarns].reverse(),
      colourways: [
        { id: 'colourway-1', name: '1', yarns: sample.yarns },
        { id: 'colourway-2', name: 'storm', yarns: null },
      ],
    }),
  ),
  'remove-colourway': changeOf(
    'remove-colourway',
    ...addColourway(sample, 'colourway-1', 'storm', 'colourway-2').edits,
    setProject({ colourways: sample.colourways, yarns: [...sample.yarns].reverse() }),
  ),
  'colour-order': changeOf(
    'colour-order',
    setPattern(at, 'band', 0, {
      colourOrder: { stripes: [{ rows: 6, yarns: [{ drawn: 1, knitted: 1 }] }], repeats: true },
    }),
  ),
  'rename-project': changeOf('rename-project', setProject({ name: 'Skerry cuff' })),
  'piece-size': changeOf('piece-size', ...setPiece(at, { shape: { kind: 'rectangle', stitches: 90, rows: 60 } })),
  'piece-hem': changeOf('piece-hem', ...setPiece(at, { hemRows: 20 })),
  gauge: changeOf('gauge', ...setPiece(at, { gauge: { stitches: 30, rows: 44 } })),
  'turning-row': changeOf('turning-row', ...setPiece(at, { hem: { turning: 'loose', gauge: null } })),
  'hem-gauge': changeOf('hem-gauge', ...setPiece(at, { hem: { turning: 'none', gauge: { stitches: 30, rows: 42 } } })),
  'add-section': withSection,
  'remove-section': { ...withSection, name: 'remove-section' },
  'move-section': { ...withSection, name: 'move-section' },
  'rename-section': { ...withSection, name: 'rename-section' },
  'section-rows': { ...withSection, name: 'section-rows' },
  'section-gauge': { ...withSection, name: 'section-gauge' },
  'section-lining': { ...withSection, name: 'section-lining' },
  'leave-finding': changeOf('leave-finding', ...setPiece(at, { leftAsIs: ['long-floats 8-20 0a1b2c3d'] })),
  'lay-by-hand': changeOf('lay-by-hand', ...setPiece(at, { leftAsIs: ['many-yarns 8-20 0a1b2c3d'] })),
  'other-yarn': changeOf('other-yarn', paintCells(motif.id, { at: Uint32Array.of(2, 5), to: Uint8Array.of(0, 0) })),
  'watch-finding': changeOf('watch-finding', ...setPiece(at, { leftAsIs: ['infant-floats 8-20 0a1b2c3d'] })),
  'seam-allowance': changeOf('seam-allowance', ...setPiece(at, { seamAllowance: { left: 2, right: 2 } })),
  'finished-face': changeOf('finished-face', ...setPiece(at, { finishedFace: 'purl' })),
  'start-side': changeOf('start-side', ...setPiece(at, { startSide: 'left' })),
  'end-needles': changeOf('end-needles', setPattern(at, 'band', 0, { endNeedles: true })),
  'float-limit': changeOf('float-limit', ...setPiece(at, { floatLimit: { stitches: 7, mm: null } })),
  'piece-details': changeOf('piece-details', ...setPiece(at, { isInfant: true, isLined: true, name: 'cuff' })),
  machine: changeOf('machine', setProject({ machine: { ...sample.machine, chooses: 'by-hand' } })),
  'yarn-margin': changeOf('yarn-margin', setProject({ yarnMargin: 15 })),
  loop: changeOf('loop', ...setPiece(at, { loop: { from: 'unravelled', stitches: 100, mm: 1290 } })),
  begins: changeOf('begins', ...setPiece(at, { begins: 'picked-up' })),
  ends: changeOf('ends', ...setPiece(at, { ends: 'on-a-thread' })),
  tension: changeOf('tension', ...setPiece(at, { tension: { ...at.piece.tension, main: '7' } })),
  'section-tension': { ...withSection, name: 'section-tension' },
  'piece-notes': changeOf('piece-notes', ...setPiece(at, { notes: 'The left one.' })),
  'project-notes': changeOf('project-notes', setProject({ notes: 'For the fair.' })),
  copies: changeOf('copies', setPattern(at, 'band', 0, { groups: [{ ...startGroup(motif.id, 3), up: 2 }] })),
  'group-motif': changeOf('group-motif', setPattern(at, 'band', 0, { groups: [startGroup(motif.id, 1)] })),
  'long-floats': changeOf('long-floats', setPattern(at, 'band', 0, { longFloats: 'hooked-up' })),
  'long-carries': changeOf('long-carries', setPattern(at, 'band', 0, { longCarries: 'cut' })),
  'cut-copies': changeOf('cut-copies', setPattern(at, 'band', 0, { cutCopies: 'left-out' })),
  anchors: changeOf(
    'anchors',
    setPattern(at, 'band', 0, { anchors: { longest: 5, isBehindFigure: false, byHand: [] } }),
  ),
  'anchor-cell': changeOf(
    'anchor-cell',
    setPattern(at, 'band', 0, {
      anchors: {
        longest: 5,
        isBehindFigure: false,
        byHand: [{ motif: motif.id, column: 1, row: 0, is: 'never' }],
      },
    }),
  ),
  'mirror-group': changeOf(
    'mirror-group',
    setPattern(at, 'band', 0, { groups: [{ ...startGroup(motif.id, 2), isMirrored: true }] }),
  ),
  'add-group': changeOf('add-group', setPattern(at, 'band', 0, startBand(motif.id, [2, 2, 1]))),
  'remove-group': changeOf('remove-group', setPattern(at, 'band', 0, startBand(motif.id, [2]))),
  'keep-needles': changeOf(
    'keep-needles',
    setPattern(at, 'band', 0, {
      rule: { kind: 'by-hand', first: [-50 as Slot, 11 as Slot], before: { rule: { kind: 'seam' }, choice: 0 } },
    }),
  ),
  'free-needles': changeOf('free-needles', setPattern(at, 'band', 0, { rule: { kind: 'even' }, choice: 2 })),
  'move-group': changeOf(
    'move-group',
    setPattern(at, 'band', 0, {
      rule: { kind: 'by-hand', first: [-50 as Slot, 11 as Slot] },
      position: { kind: 'from-row', row: 3 },
    }),
  ),
  'add-band': changeOf('add-band', insertPattern(at, 'band-2', startBand(motif.id, [1]))),
  'remove-band': changeOf('remove-band', removePattern(at, 'band', 0)),
  'add-all-over': changeOf('add-all-over', insertPattern(at, 'fill-1', startAllOver(motif.id, 2))),
  'replace-by-all-over': changeOf(
    'replace-by-all-over',
    insertPattern(at, 'fill-1', startAllOver(motif.id, 2)),
    removePattern(at, 'band', 0),
  ),
  'remove-all-over': changeOf('remove-all-over', withFill, insertPattern(at, 'fill-2', startAllOver(motif.id, 90)), {
    kind: 'remove',
    list: 'patterns',
    piece: at.at.piece,
    id: 'fill-1',
  }),
  'all-over-motif': changeOf('all-over-motif', withFill, setNewFill({ unit: 'whole' })),
  'all-over-rows': changeOf('all-over-rows', withFill, setNewFill({ position: onRows(2, 90) })),
  'all-over-border': changeOf('all-over-border', withFill, setNewFill({ border: { left: 2, right: 3 } })),
  'all-over-lie': changeOf('all-over-lie', withFill, setNewFill({ step: 7, shift: -1 })),
  'match-seam': changeOf('match-seam', withFill, setNewFill({ shift: 3 })),
  rule: changeOf('rule', setPattern(at, 'band', 0, { rule: { kind: 'by-hand', first: [-48 as Slot, 11 as Slot] } })),
  judge: changeOf('judge', setPattern(at, 'band', 0, { judge: 'blocks' })),
  'choose-placement': changeOf('choose-placement', setPattern(at, 'band', 0, { choice: 2 })),
  'first-row': changeOf(
    'first-row',
    setPattern(at, 'band', 0, { position: { kind: 'centred', section: 'body', oddRow: 'above' } }),
  ),
  'raise-group': changeOf(
    'raise-group',
    setPattern(at, 'band', 0, { groups: [{ ...startGroup(motif.id, 2), rise: 4 }] }),
  ),
  'own-balls': changeOf(
    'own-balls',
    setPattern(at, 'band', 0, { groups: [{ ...startGroup(motif.id, 2), hasOwnBall: true }] }),
  ),
  unit: changeOf('unit', setPattern(at, 'band', 0, { unit: 'whole' })),
  'add-size': addSize(at, 1, 'L', 'size-2'),
  'remove-size': { ...addSize(at, 0, 'S', 'size-2'), name: 'remove-size' },
  'rename-size': renameSize(at, 0, 'M'),
  'add-piece': changeOf('add-piece', insertInto('pieces', 1, second)),
  'duplicate-piece': changeOf('duplicate-piece', insertInto('pieces', 0, second)),
  'rename-piece': changeOf('rename-piece', setPieceInSizes(at.at.piece, { name: 'cuff' })),
  'move-piece': changeOf('move-piece', insertInto('pieces', 1, second), moveWithin('pieces', second.id, 0)),
  'remove-piece': changeOf('remove-piece', insertInto('pieces', 1, second), removeFrom('pieces', at.at.piece)),
  'knit-times': changeOf('knit-times', setPieceInSizes(at.at.piece, { knit: 2 })),
  'size-numbers': changeSize(at, 0, { hemRows: 12 }),
  'size-copies': changeCopies(at, 0, 0, 1, 3),
};
