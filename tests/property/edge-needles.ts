/**
 * End-needle selection, row by row, from the trade's rules (common practice,
 * no source) and from nothing of the program: on each row of a pattern that
 * has it, the two edge needles knit contrast. It is the contrast that is
 * nearest in the row; on a blank row the one that is still in the feeder from
 * the row before, and if there is none, the one that will be put in next. Of
 * two it is the one that is knitted again above, for it need not be changed.
 */
import type { ProjectAt } from '@shared/project/index.ts';

/** Needles from left to right; null beside the piece. */
export type Line<Yarn> = readonly (Yarn | null)[];

/** Rows of patterns that have end-needle selection on, with the machine that there is. */
export function isSelectingOn(
  { machine, patterns: asked }: ProjectAt,
  { patterns }: { readonly patterns: readonly { readonly firstRow: number; readonly lastRow: number }[] },
  row: number,
): boolean {
  if (machine.endNeedles === 'none') return false;
  const isAlways = machine.endNeedles === 'always';
  return patterns.some(
    ({ firstRow, lastRow }, index) =>
      row >= firstRow && row <= lastRow && (isAlways || asked[index]?.endNeedles === true),
  );
}

/** A row of one line with the contrast its edge needles take; `isParted`: groups of it have balls of their own. */
export function edgesOn<Yarn>(
  lines: readonly Line<Yarn>[],
  row: number,
  main: Yarn,
  isOn: (row: number) => boolean,
  isParted: (row: number) => boolean,
): Line<Yarn> {
  const line = lines[row - 1] as Line<Yarn>;
  if (!isOn(row)) return line;
  const figureOf = (of: number): Yarn[] =>
    (lines[of - 1] ?? []).filter((yarn): yarn is Yarn & {} => yarn !== null && yarn !== main);
  let near = row;
  while (near >= 1 && isOn(near) && figureOf(near).length === 0) near--;
  if (near < 1 || !isOn(near)) {
    near = row;
    while (near <= lines.length && isOn(near) && figureOf(near).length === 0) near++;
    if (near > lines.length || !isOn(near)) return line;
  }
  const figure = figureOf(near);
  const ends = [figure[0] as Yarn, figure.at(-1) as Yarn] as const;
  let above = row;
  while (near < row && isOn(above) && above <= lines.length && figureOf(above).length === 0) above++;
  const again = near < row && isOn(above) ? ends.find((yarn) => figureOf(above).includes(yarn)) : undefined;
  const isEachItsOwn = near === row || isParted(row);
  const left = isEachItsOwn ? ends[0] : (again ?? ends[0]);
  const right = isEachItsOwn ? ends[1] : left;
  const first = line.findIndex((yarn) => yarn !== null);
  const last = line.findLastIndex((yarn) => yarn !== null);
  return line.map((yarn, at) => {
    if (yarn !== main) return yarn;
    return at === first ? left : at === last ? right : yarn;
  });
}

/** Whether a row lies in a group that has a ball of its own. */
export function isPartedOn(
  { patterns }: ProjectAt,
  groups: readonly { readonly firstRow: number; readonly lastRow: number }[],
  row: number,
): boolean {
  const given = patterns.flatMap((pattern) => (pattern.kind === 'band' ? pattern.groups : []));
  return groups.some(
    ({ firstRow, lastRow }, index) => given[index]?.hasOwnBall === true && row >= firstRow && row <= lastRow,
  );
}
