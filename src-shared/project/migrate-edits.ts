/**
 * Edits that an earlier version wrote behind work it had kept, carried out on
 * that work as the present version reads it.
 *
 * An edit is turned by itself, as data, before it is checked. What it says may
 * depend on the work and on the edits before it, so they are read one after
 * the other, and what only the earlier version knew goes along.
 */
import { outcome } from '../problem/index.ts';
import { applyEdits } from './change.ts';
import { editsFromText } from './edit-file.ts';
import { fileVersionOf } from './file.ts';
import { FILE_VERSION, pieceOfVersion4, type Fields } from './migrate.ts';
import type { Project } from './model.ts';

/** The first version that wrote edits behind kept work. */
const FIRST_VERSION = 3;

/** Turns edits of one version into those of the next; `before` is the project that the edit is carried out on. */
type EditStep = (edit: Fields, before: Project) => Fields[];

/** By the version that they start from: each makes a step for the edits behind one work, from that work's file. */
const STEPS: { readonly [version: number]: (work: Fields) => EditStep } = {
  3: (work) => {
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
      return [piece, ...setAll('band', before.bands), ...setAll('fill', before.fills)];
    };
  },
};

/**
 * What carries out the edits behind kept work, in the order in which they were
 * written: each time it is given the project before them and their text, and
 * gives the project after them. `work`: the text of the file that the work
 * began with, whose version the edits are of. Throws `RangeError` for what are
 * no edits of that version, and what `applyEdits` throws.
 */
export function carryingOutKept(work: string): (before: Project, edits: string) => Project {
  const version = fileVersionOf(work) ?? FILE_VERSION;
  if (version === FILE_VERSION) return (before, edits) => applyEdits(before, readEdits(edits));
  const file = fieldsOf(parsed(work));
  const steps: EditStep[] = [];
  for (let from = version; from < FILE_VERSION; from++) {
    const step = STEPS[from];
    if (!step || version < FIRST_VERSION) throw new RangeError(`No edits were kept behind work of version ${version}`);
    steps.push(step(file));
  }
  return (before, edits) => {
    const raw = parsed(edits);
    if (!Array.isArray(raw)) throw new RangeError('These are no edits');
    return raw.reduce<Project>((project, edit) => {
      const turned = steps.reduce((each, step) => each.flatMap((one) => step(one, project)), [fieldsOf(edit)]);
      return applyEdits(project, readEdits(JSON.stringify(turned)));
    }, before);
  };
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

function fieldsOf(value: unknown): Fields {
  return typeof value === 'object' && value !== null ? (value as Fields) : {};
}
