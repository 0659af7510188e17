/** What the steps are called that undo takes back. */
import type { ChangeName } from '../../project/index.ts';

const names: { readonly [Name in ChangeName]: string } = {
  draw: 'draw',
  erase: 'erase',
  line: 'draw line',
  rectangle: 'draw rectangle',
  ellipse: 'draw ellipse',
  fill: 'fill',
  'resize-motif': 'resize motif',
  'rename-motif': 'rename motif',
  'import-motif': 'read motif in',
  'set-ground': 'choose ground',
  'set-shows': 'choose what the chart shows',
  yarns: 'change yarns',
  'rename-project': 'rename project',
  'piece-size': 'change size of piece',
  'piece-hem': 'change hem',
  gauge: 'change gauge',
  'seam-allowance': 'change seam allowance',
  'finished-face': 'change finished face',
  'start-side': 'change carriage side',
  'end-needles': 'change end-needle selection',
  'float-limit': 'change float limit',
  'piece-details': 'change piece',
  copies: 'change copies',
  rule: 'change spaces',
  judge: 'change what is made even',
  'choose-placement': 'take a placing',
  'first-row': 'change first row',
  'own-balls': 'change balls',
  unit: 'change what is copied',
};

export const changes = {
  name: (name: ChangeName): string => names[name],
  undo: (name: ChangeName | null): string => (name === null ? 'Undo' : `Undo ${names[name]}`),
  redo: (name: ChangeName | null): string => (name === null ? 'Redo' : `Redo ${names[name]}`),
  undone: (name: ChangeName): string => `Taken back: ${names[name]}.`,
  redone: (name: ChangeName): string => `Done again: ${names[name]}.`,
};
