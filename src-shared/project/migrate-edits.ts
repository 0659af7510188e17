/**
 * Edits that an earlier version wrote behind work it had kept, carried out on
 * that work.
 *
 * Those of versions 3 and 4, which named places and not ids, are carried out as
 * plain data, on the work as their own version had it, and what comes of them
 * is brought up to date as a file is: what an edit meant then need not be said
 * in the words of now. Those of versions 5, 6 and 7 can be said so
 * (version-6.ts, version-7.ts, version-8.ts).
 */
import { outcome } from '../problem/index.ts';
import { applyEdits } from './change.ts';
import { editsFromText } from './edit-file.ts';
import { afterEditOfVersion4 } from './edits-of-version-4.ts';
import { fileVersionOf, projectFromText } from './file.ts';
import { broughtUpTo, FILE_VERSION, pieceOfVersion4 } from './migrate.ts';
import type { Project } from './model.ts';
import { fieldsOf, listOf, type Fields } from './plain-data.ts';
import { editsOfVersion6 } from './version-6.ts';
import { editsOfVersion7 } from './version-7.ts';
import { editsOfVersion8 } from './version-8.ts';

/** The first version that wrote edits behind kept work, and the last whose edits named places and not ids. */
const FIRST_VERSION = 3;
const VERSION_4 = 4;
const VERSION_5 = 5;
const VERSION_6 = 6;
const VERSION_7 = 7;

/**
 * What carries out the edits behind kept work, in the order in which they were
 * written: each time it is given their text, and gives what the work is after
 * them, which is made into a project when it is asked for: of a thousand
 * editions one is opened. `work`: the text of the file that the work began
 * with, whose version the edits are of. Throws `RangeError` for what are no
 * edits of that version, and what `applyEdits` throws; asked for, what comes of
 * edits of an earlier version throws what `projectFromText` throws.
 */
export function carryingOutKept(work: string): (edits: string) => () => Project {
  const version = fileVersionOf(work) ?? FILE_VERSION;
  if (version === FILE_VERSION) return carryingOut(projectFromText(work), (edits) => edits);
  if (version > VERSION_4) return carryingOut(projectFromText(work), editsOfNow(version, work));
  if (version < FIRST_VERSION) throw new RangeError(`No edits were kept behind work of version ${version}`);
  return carryingOutAsData(version, fieldsOf(parsed(work)));
}

function carryingOut(work: Project, turned: (edits: string) => string): (edits: string) => () => Project {
  let project = work;
  return (edits) => {
    const after = applyEdits(project, readEdits(turned(edits)));
    project = after;
    return () => after;
  };
}

/** Turns edits of version 5, 6 or 7, one text after the other, into those of now. */
function editsOfNow(version: number, work: string): (edits: string) => string {
  const toVersion7 = editsOfVersion7(broughtUpTo(VERSION_6, fieldsOf(parsed(work))));
  const turned = (edits: readonly Fields[]): readonly Fields[] => {
    if (version === VERSION_7) return edits;
    return toVersion7(version === VERSION_5 ? editsOfVersion6(edits) : edits);
  };
  return (text) => JSON.stringify(editsOfVersion8(turned(editsIn(text))));
}

function carryingOutAsData(version: number, work: Fields): (edits: string) => () => Project {
  const turned = version === FIRST_VERSION ? editsOfVersion3(work) : (edit: Fields) => [edit];
  let data = broughtUpTo(VERSION_4, work);
  return (edits) => {
    const after = editsIn(edits).reduce<Fields>(
      (before, edit) => turned(edit, before).reduce(afterEditOfVersion4, before),
      data,
    );
    data = after;
    return () => projectFromText(JSON.stringify(after));
  };
}

/** Turns edits of version 3, one after the other, into those of version 4; `before`: the work that each is carried out on. */
function editsOfVersion3(work: Fields): (edit: Fields, before: Fields) => Fields[] {
  // Of the whole piece then, of each pattern now: patterns that come take what was said last.
  let { endNeedleSelection } = fieldsOf(work.piece);
  return (edit, before) => {
    if (edit.kind === 'insert' && (edit.list === 'bands' || edit.list === 'fills'))
      return [{ ...edit, item: { ...fieldsOf(edit.item), endNeedles: endNeedleSelection } }];
    if (edit.kind !== 'set' || edit.of !== 'piece') return [edit];
    const { endNeedleSelection: said, ...to } = fieldsOf(edit.to);
    const piece = { ...edit, to: pieceOfVersion4(to) };
    if (said === undefined) return [piece];
    endNeedleSelection = said;
    const setAll = (of: 'band' | 'fill', patterns: readonly unknown[]): Fields[] =>
      patterns.map((_, at) => ({ kind: 'set', of, [of]: at, to: { endNeedles: said } }));
    return [piece, ...setAll('band', listOf(before.bands)), ...setAll('fill', listOf(before.fills))];
  };
}

/** The edits that the text holds, whatever they are. Throws `RangeError` for what is no list. */
function editsIn(text: string): readonly Fields[] {
  const raw = parsed(text);
  if (!Array.isArray(raw)) throw new RangeError('These are no edits');
  return listOf(raw);
}

function readEdits(text: string): NonNullable<ReturnType<typeof editsFromText>> {
  const edits = editsFromText(text);
  if (!edits) throw new RangeError('These are no edits');
  return edits;
}

function parsed(text: string): unknown {
  const raw = outcome(() => JSON.parse(text) as unknown);
  return raw.ok ? raw.value : null;
}
