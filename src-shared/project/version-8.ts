/**
 * A project file of version 7, and edits kept behind work of that version, as
 * version 8 has them: fields that came have what they stood for before. A yarn
 * has its count as its label says it, where it was tex alone.
 *
 * What is wrong in a file stays wrong: the schema finds it and says where.
 */
import { each, edited, fieldsOf, type Fields } from './plain-data.ts';
import { START_COLOURWAYS, START_LOOP, START_MENDING, START_YARN_MARGIN } from './start.ts';

export function toVersion8(file: Fields): Fields {
  return {
    ...file,
    ...('yarns' in file && { yarns: each(file.yarns, yarnOf) }),
    yarnMargin: START_YARN_MARGIN,
    colourways: START_COLOURWAYS,
    pieces: each(file.pieces, pieceOf),
  };
}

function pieceOf(piece: Fields): Fields {
  return { ...piece, loop: START_LOOP, patterns: each(piece.patterns, patternOf) };
}

function patternOf(pattern: Fields): Fields {
  return { ...pattern, colourOrder: null, anchors: null, ...START_MENDING };
}

function yarnOf({ tex, ...yarn }: Fields): Fields {
  return { ...yarn, count: countOf(tex), onHand: null };
}

/** The weight of the balls whose metres version 7 asked for. */
const GRAMS = 50;

/**
 * Version 7 asked for the metres in a ball of 50 g and kept the tex of it:
 * where that is what was typed, it is the count again; any other stays tex.
 */
function countOf(tex: unknown): unknown {
  if (typeof tex !== 'number') return tex;
  const metres = Number(((GRAMS * 1000) / tex).toFixed(1));
  if ((GRAMS * 1000) / metres === tex) return { system: 'ball', metres, grams: GRAMS };
  return { system: 'tex', value: tex, plies: 1 };
}

/** Edits of version 7 in the words of version 8: what they bring has the fields that came. */
export function editsOfVersion8(edits: readonly Fields[]): readonly Fields[] {
  return edits.map((edit) => {
    if (edit.kind === 'insert' && edit.list === 'patterns') return { ...edit, item: edited(edit.item, patternOf) };
    if (edit.kind === 'insert' && edit.list === 'pieces') return { ...edit, item: edited(edit.item, pieceOf) };
    const to = fieldsOf(edit.to);
    if (edit.kind !== 'set' || edit.of !== 'project' || !('yarns' in to)) return edit;
    return { ...edit, to: { ...to, yarns: each(to.yarns, yarnOf) } };
  });
}
