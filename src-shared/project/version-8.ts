/**
 * A project file of version 7, and edits kept behind work of that version, as
 * version 8 has them: fields that came have what they stood for before.
 *
 * What is wrong in a file stays wrong: the schema finds it and says where.
 */
import { each, edited, type Fields } from './plain-data.ts';
import { START_COLOURWAYS, START_MENDING } from './start.ts';

export function toVersion8(file: Fields): Fields {
  return { ...file, colourways: START_COLOURWAYS, pieces: each(file.pieces, pieceOf) };
}

function pieceOf(piece: Fields): Fields {
  return { ...piece, patterns: each(piece.patterns, patternOf) };
}

function patternOf(pattern: Fields): Fields {
  return { ...pattern, colourOrder: null, anchors: null, ...START_MENDING };
}

/** Edits of version 7 in the words of version 8: what they bring has the fields that came. */
export function editsOfVersion8(edits: readonly Fields[]): readonly Fields[] {
  return edits.map((edit) => {
    if (edit.kind !== 'insert') return edit;
    if (edit.list === 'patterns') return { ...edit, item: edited(edit.item, patternOf) };
    return edit.list === 'pieces' ? { ...edit, item: edited(edit.item, pieceOf) } : edit;
  });
}
