/**
 * Edits as version 4 wrote them behind kept work, carried out on the data of a
 * file of that version: bands and fills were named by their places, and the
 * piece had no name, being the only one.
 */
import { CELL_LETTERS } from '../grid/index.ts';
import { fieldsOf, type Fields } from './plain-data.ts';

/** The lists of a file of version 4, and how one of their things was called in an edit. */
const LIST_OF: Readonly<Record<string, string>> = { band: 'bands', fill: 'fills' };

/**
 * The data after the edit. Throws `RangeError` for what was no edit, and for
 * what it names and is not there; whether what it sets is right is asked of
 * the whole file.
 */
export function afterEditOfVersion4(file: Fields, edit: Fields): Fields {
  switch (edit.kind) {
    case 'paint':
      return withMotif(file, edit.motif, (motif) => ({ ...motif, rows: painted(motif.rows, edit.patch) }));
    case 'set':
      return afterSet(file, edit);
    case 'insert':
      return withList(file, edit.list, (items) => items.toSpliced(placeIn(items, edit.at, 1), 0, edit.item));
    case 'remove':
      return withList(file, edit.list, (items) => items.toSpliced(placeIn(items, edit.at), 1));
    case 'move':
      return withList(file, edit.list, (items) => {
        const from = placeIn(items, edit.from);
        return items.toSpliced(from, 1).toSpliced(placeIn(items, edit.at), 0, items[from]);
      });
    default:
      throw new RangeError('This is no edit');
  }
}

function afterSet(file: Fields, { of, motif, to, ...which }: Fields): Fields {
  const fields = fieldsOf(to);
  switch (of) {
    case 'project':
      return assigned(file, fields);
    case 'piece':
      return { ...file, piece: assigned(fieldsOf(file.piece), fields) };
    case 'motif': {
      // A file calls the cells of a motif its rows.
      const { grid, ...others } = fields;
      return withMotif(file, motif, (before) =>
        assigned(before, { ...others, ...(grid !== undefined && { rows: grid }) }),
      );
    }
    case 'underlay':
      return withMotif(file, motif, (before) => {
        if (!before.underlay) throw new RangeError('No picture lies behind the motif');
        return { ...before, underlay: assigned(fieldsOf(before.underlay), fields) };
      });
    case 'band':
    case 'fill':
      return withList(file, LIST_OF[of], (items) => {
        const at = placeIn(items, which[of]);
        return items.with(at, assigned(fieldsOf(items[at]), fields));
      });
    default:
      throw new RangeError('This is no edit');
  }
}

/** The thing with these fields, and without those that are `gone`. */
function assigned(thing: Fields, { gone, ...to }: Fields): Fields {
  const without = Array.isArray(gone) ? gone : [];
  return Object.fromEntries(Object.entries({ ...thing, ...to }).filter(([field]) => !without.includes(field)));
}

function withMotif(file: Fields, id: unknown, edit: (motif: Fields) => Fields): Fields {
  return withList(file, 'motifs', (motifs) => {
    const at = motifs.findIndex((motif) => fieldsOf(motif).id === id);
    return motifs.with(placeIn(motifs, at), edit(fieldsOf(motifs[at])));
  });
}

function withList(file: Fields, list: unknown, edit: (items: readonly unknown[]) => readonly unknown[]): Fields {
  const items = list === 'motifs' || list === 'bands' || list === 'fills' ? file[list] : null;
  if (!Array.isArray(items)) throw new RangeError('There is no such list');
  return { ...file, [list as string]: edit(items) };
}

/** `at` if it is a place in the list, or one of `more` behind it. Throws `RangeError` otherwise. */
function placeIn(items: readonly unknown[], at: unknown, more = 0): number {
  if (typeof at !== 'number' || !Number.isInteger(at) || at < 0 || at >= items.length + more)
    throw new RangeError(`Item ${String(at)} of ${items.length}`);
  return at;
}

/** Rows of letters, topmost first, with runs of cells painted; a run counts its cells from the lowest row on. */
function painted(rows: unknown, runs: unknown): string[] {
  if (!Array.isArray(rows) || !Array.isArray(runs)) throw new RangeError('This is no edit');
  const lines = rows.map(String).toReversed();
  const width = lines[0]?.length ?? 0;
  const cells = [...lines.join('')];
  for (const run of runs) {
    const [begin, letters] = Array.isArray(run) ? (run as unknown[]) : [];
    if (typeof begin !== 'number' || typeof letters !== 'string') throw new RangeError('This is no edit');
    [...letters].forEach((letter, index) => {
      if (!CELL_LETTERS.includes(letter) || cells[begin + index] === undefined)
        throw new RangeError('There is no cell');
      cells[begin + index] = letter;
    });
  }
  return lines.map((_, row) => cells.slice(row * width, (row + 1) * width).join('')).toReversed();
}
