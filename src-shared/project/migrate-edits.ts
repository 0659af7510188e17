/**
 * Edits that an earlier version of the program kept behind work, brought up to
 * date before they are checked: as `migrate.ts` does for whole files.
 *
 * What is wrong in them is left as it is: the schema finds it.
 */
import type { Project } from './model.ts';
import { pieceOfVersion4 } from './migrate.ts';

type Fields = { readonly [field: string]: unknown };

/**
 * The edits, as the present version has them. `before`: the project that they
 * are carried out on, brought up to date already. Version 3 was the first to
 * keep edits.
 */
export function editsBroughtUpToDate(edits: unknown, version: number, before: Project): unknown {
  if (version !== 3 || !Array.isArray(edits)) return edits;
  const patterns = { bands: before.bands.length, fills: before.fills.length };
  /** End-needle selection was the piece's: what it was is what its patterns have. */
  let endNeedles = [...before.bands, ...before.fills].some((pattern) => pattern.endNeedles);
  return edits.flatMap((edit: unknown): unknown[] => {
    if (typeof edit !== 'object' || edit === null) return [edit];
    const { kind, of, list, item, to } = edit as Fields;
    const isPattern = list === 'bands' || list === 'fills';
    if (kind === 'remove' && isPattern) patterns[list]--;
    if (kind === 'insert' && isPattern) {
      patterns[list]++;
      return [{ ...edit, item: { ...(item as object), endNeedles } }];
    }
    if (kind !== 'set' || of !== 'piece' || typeof to !== 'object' || to === null) return [edit];
    const { endNeedleSelection, ...others } = to as Fields;
    const set = Object.keys(others).length === 0 ? [] : [{ ...edit, to: pieceOfVersion4(others) }];
    if (typeof endNeedleSelection !== 'boolean') return set;
    endNeedles = endNeedleSelection;
    const ofEach = (name: 'band' | 'fill', many: number): object[] =>
      Array.from({ length: many }, (_, at) => ({ kind: 'set', of: name, [name]: at, to: { endNeedles } }));
    return [...set, ...ofEach('band', patterns.bands), ...ofEach('fill', patterns.fills)];
  });
}
