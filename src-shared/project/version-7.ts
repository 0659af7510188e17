/**
 * A project file of version 6, and edits kept behind work of that version, as
 * version 7 has them: an all-over, which took rows by their numbers, stands
 * from one place to another; a band above the hem stands so many plain rows
 * above it; the bed, which stood in each piece, is the machine's; and what were
 * called parts of a piece are called sections.
 *
 * What is wrong in a file stays wrong: the schema finds it and says where.
 */
import { START_BED } from '../bed/index.ts';
import { each, edited, fieldsOf, listOf, type Fields } from './plain-data.ts';

export function toVersion7({ pieces, machine, ...file }: Fields): Fields {
  const bed = bedOf(listOf(Array.isArray(pieces) ? pieces.filter(isThing) : []).map((piece) => piece.bed));
  return {
    ...file,
    machine: edited(machine, (fields) => ({ ...fields, bed })),
    pieces: each(pieces, pieceOf),
  };
}

function isThing(piece: unknown): boolean {
  return typeof piece === 'object' && piece !== null;
}

/**
 * The one bed for what stood in the pieces, in whatever order. Where they
 * differed it is the largest, and one of which nothing was said holds all: what
 * could be knitted still can.
 */
function bedOf(beds: readonly unknown[]): unknown {
  // Without pieces it is they that are missing.
  if (beds.length === 0) return START_BED;
  const measure = (bed: unknown): readonly [needles: number, pitchMm: number] => {
    const { needles, pitchMm } = fieldsOf(bed);
    return [needles === null ? Infinity : Number(needles), Number(pitchMm)];
  };
  return beds.reduce((largest, bed) => {
    const [[needles, pitchMm], [most, coarsest]] = [measure(bed), measure(largest)];
    return needles > most || (needles === most && pitchMm > coarsest) ? bed : largest;
  });
}

function pieceOf({ patterns, ...piece }: Fields): Fields {
  return { ...pieceFields(piece), patterns: each(patterns, patternOf) };
}

function pieceFields({ bed: _, parts, ...fields }: Fields): Fields {
  return { ...fields, ...(parts !== undefined && { sections: parts }) };
}

function patternOf(pattern: Fields): Fields {
  if (pattern.kind === 'band')
    return { ...pattern, ...('position' in pattern && { position: positionOf(pattern.position) }) };
  if (pattern.kind !== 'all-over') return pattern;
  const { firstRow, lastRow, ...others } = pattern;
  return { ...others, position: extentOf({ firstRow, lastRow }) };
}

function positionOf(position: unknown): unknown {
  return edited(position, (fields) => {
    if (fields.kind === 'above-hem') return { ...fields, rows: 0 };
    return 'section' in fields ? { ...fields, section: sectionName(fields.section) } : fields;
  });
}

function sectionName(section: unknown): unknown {
  return edited(section, ({ part, ...fields }) => (part === undefined ? fields : { named: part, ...fields }));
}

/** First and last row, which is null at the top. */
type Rows = { readonly firstRow: unknown; readonly lastRow: unknown };

function extentOf({ firstRow, lastRow }: Rows): Fields {
  return {
    kind: 'from-to',
    from: { kind: 'from-row', row: firstRow },
    to:
      lastRow === null
        ? { kind: 'from-edge', edge: 'upper', section: 'piece', rows: 0 }
        : { kind: 'to-row', row: lastRow },
  };
}

/**
 * Turns edits of version 6 into those of version 7, step by step in the order
 * in which they were written: one row of an all-over was set without a word of
 * the other, and one bed without the others. `file`: the work that they were
 * written behind, as version 6 has it.
 */
export function editsOfVersion7(file: Fields): (edits: readonly Fields[]) => readonly Fields[] {
  const beds = new Map<unknown, unknown>();
  const rows = new Map<unknown, Rows>();
  let machine = fieldsOf(file.machine);
  const keepPattern = ({ id, kind, firstRow, lastRow }: Fields): void => {
    if (kind === 'all-over') rows.set(id, { firstRow, lastRow });
  };
  const keepPiece = ({ id, bed, patterns }: Fields): void => {
    beds.set(id, bed);
    listOf(patterns).forEach(keepPattern);
  };
  listOf(file.pieces).forEach(keepPiece);
  const machineNow = (): Fields => ({ ...machine, bed: bedOf([...beds.values()]) });
  let said = JSON.stringify(machineNow());
  /** The machine set, where a bed that came, went or changed makes it another. */
  const setMachine = (): Fields[] => {
    const now = machineNow();
    if (JSON.stringify(now) === said) return [];
    said = JSON.stringify(now);
    return [{ kind: 'set', of: 'project', to: { machine: now } }];
  };

  function inserted(edit: Fields): Fields[] {
    const item = fieldsOf(edit.item);
    if (edit.list === 'patterns') {
      keepPattern(item);
      return [{ ...edit, item: patternOf(item) }];
    }
    if (edit.list !== 'pieces') return [edit];
    keepPiece(item);
    return [{ ...edit, item: pieceOf(item) }, ...setMachine()];
  }

  function set(edit: Fields): Fields[] {
    const to = fieldsOf(edit.to);
    if (edit.of === 'band')
      return [{ ...edit, to: 'position' in to ? { ...to, position: positionOf(to.position) } : to }];
    if (edit.of === 'all-over' && ('firstRow' in to || 'lastRow' in to)) {
      const { firstRow, lastRow, ...others } = to;
      const before = rows.get(edit.pattern);
      const now = {
        firstRow: 'firstRow' in to ? firstRow : before?.firstRow,
        lastRow: 'lastRow' in to ? lastRow : before?.lastRow,
      };
      rows.set(edit.pattern, now);
      return [{ ...edit, to: { ...others, position: extentOf(now) } }];
    }
    if (edit.of === 'piece') {
      const own = [{ ...edit, to: pieceFields(to) }];
      if (!('bed' in to)) return own;
      beds.set(edit.piece, to.bed);
      return [...own, ...setMachine()];
    }
    if (edit.of === 'project' && 'machine' in to) {
      machine = fieldsOf(to.machine);
      const now = machineNow();
      said = JSON.stringify(now);
      return [{ ...edit, to: { ...to, machine: now } }];
    }
    return [edit];
  }

  const turned = (edit: Fields): readonly Fields[] => {
    switch (edit.kind) {
      case 'insert':
        return inserted(edit);
      case 'remove':
        if (edit.list !== 'pieces') return [edit];
        beds.delete(edit.id);
        return [edit, ...setMachine()];
      case 'set':
        return set(edit);
      default:
        return [edit];
    }
  };
  return (edits) => edits.flatMap(turned);
}
