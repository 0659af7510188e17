/** What is wrong with a project, its motifs, sizes and yarns. */
import { faultSaid } from '../faults.ts';
import { numbers as n } from '../numbers.ts';
import { pieces } from '../pieces.ts';
import { patterns } from '../patterns.ts';
import type { ProblemWords } from './problem-words.ts';

export const projects = {
  'project-not-json': ({ detail }) => ({
    what: `The file is not a whole project: it is not valid JSON (${detail}).`,
    mend: 'Open an earlier copy of it.',
  }),
  'project-newer': ({ version, known }) => ({
    what: `The project was written by a newer Walewright (file version ${version}; this one knows ${known}).`,
    mend: 'Open it with the newer program.',
  }),
  'project-invalid': ({ path, fault }) => ({
    what: `The project has a field that cannot be right: ${path || 'the whole file'} (${faultSaid(fault)}).`,
    mend: 'Mend that field, or open an earlier copy.',
  }),
  'project-not-savable': ({ path, fault }) => ({
    what: `Saved as it is, the project could not be opened again: ${path || 'the whole of it'} (${faultSaid(fault)}). Nothing was written; your work is still here.`,
    mend: 'Change that back, or undo what was done last, and save again.',
  }),
  'project-not-ours': () => ({ what: 'This is not a Walewright project.', mend: 'Choose a .walewright file.' }),
  'motif-too-large': ({ width, height, mostWidth, mostHeight }) => ({
    what: `A motif cannot be ${width} × ${height} cells: it has 1 to ${mostWidth} columns and 1 to ${mostHeight} rows.`,
    mend: 'Give a size within that.',
  }),
  'motif-missing': ({ motif }) => ({
    what: `There is no motif "${motif}" any more.`,
    mend: 'Choose another motif for the group.',
  }),
  'motif-in-use': ({ motif, piece, patterns: names }) => ({
    what: `“${motif}” is knitted in ${patterns.list(names)} of ${piece === null ? 'the piece' : `“${piece}”`}.`,
    mend: `Choose another motif for ${names.some(({ kind }) => kind === 'band') ? 'its groups' : 'the all-over'} on the Piece bench first.`,
  }),
  'motif-last': () => ({
    what: 'This is the only motif of the project.',
    mend: 'Add another one first.',
  }),
  'sizes-too-many': ({ most }) => ({
    what: `A project holds at most ${most} sizes.`,
    mend: 'Remove one that is not needed, or start another project.',
  }),
  'size-last': () => ({
    what: 'This is the only size of the project.',
    mend: 'Add another one first.',
  }),
  'size-name-unusable': ({ text, most }) => ({
    what: text.trim() === '' ? 'A size needs a name.' : `“${text}” cannot name a size.`,
    mend: `Give 1 to ${most} letters, without a space at either end.`,
  }),
  'size-name-taken': ({ name }) => ({
    what: `Another size is called “${name}” already.`,
    mend: 'Give it a name of its own.',
  }),
  'pieces-too-many': ({ most }) => ({
    what: `A project holds at most ${most} pieces.`,
    mend: 'Remove one that is not needed, or start another project.',
  }),
  'piece-unknown': ({ given, known }) => ({
    what: `No piece is called “${given}”.`,
    mend: `There ${known.length === 1 ? 'is' : 'are'} ${n.list(known)}.`,
  }),
  'piece-name-shared': ({ name, places }) => ({
    what: `Pieces ${n.list(places.map(String))} are ${places.length === 2 ? 'both' : 'all'} called “${name}”.`,
    mend: `Write ${n.list(places.map((place, at) => `“${pieces.numbered(name, at + 1)}” for piece ${place}`))}, or give each a name of its own on the Piece bench.`,
  }),
  'piece-name-taken': ({ name }) => ({
    what: `Another piece is called “${name}” already.`,
    mend: 'Give it a name of its own.',
  }),
  'colourways-too-many': ({ most }) => ({
    what: `A project holds at most ${most} colourways.`,
    mend: 'Remove one that is not needed.',
  }),
  'colourway-last': () => ({
    what: 'This is the only colourway of the project.',
    mend: 'Add another one first.',
  }),
  'colourway-name-unusable': ({ text, most }) => ({
    what: text.trim() === '' ? 'A colourway needs a name.' : `“${text}” cannot name a colourway.`,
    mend: `Give 1 to ${most} letters.`,
  }),
  'colourway-name-taken': ({ name }) => ({
    what: `Another colourway is called “${name}” already.`,
    mend: 'Give it a name of its own.',
  }),
  'colourway-unknown': ({ given, known }) => ({
    what: `No colourway is called “${given}”.`,
    mend: `There ${known.length === 1 ? 'is' : 'are'} ${n.list(known)}.`,
  }),
  'size-unknown': ({ given, known }) => ({
    what: `No size is called “${given}”.`,
    mend: `There ${known.length === 1 ? 'is' : 'are'} ${n.list(known)}.`,
  }),
  'underlays-too-large': ({ mostMegabytes }) => ({
    what: `The pictures to trace would take more than ${mostMegabytes} MB of the file.`,
    mend: 'Remove one that is not needed any more, or take a smaller picture.',
  }),
  'yarns-too-many-in-motif': ({ motif, yarns, most }) => ({
    what: `“${motif}” would be drawn in ${yarns} yarns; ${most} are the most in one motif.`,
    mend: 'Draw with a yarn that it has already, or give the cells of one of its yarns to another first.',
  }),
  'motifs-several': ({ motifs }) => ({
    what: `It holds ${motifs} motifs, and a file of the collection holds one.`,
    mend: 'Open it as a project and keep each from there.',
  }),
  'collected-several': ({ files }) => ({
    what: 'Several motifs of the collection are called so.',
    mend: `Name its file: ${n.list(files)}.`,
  }),
  'motifs-too-many': ({ most }) => ({
    what: `A project holds at most ${most} motifs.`,
    mend: 'Delete one that is not used, or start another project.',
  }),
} satisfies Partial<ProblemWords>;
