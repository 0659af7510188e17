/** Which motif stands where: its name at each of its groups and all-overs, or a letter where there is no room for the name. */
import { allOversOf } from '../../pattern/index.ts';
import { edgesAt } from '../../piece/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { MotifId } from '../../motif/index.ts';
import { CAPITAL_EM, widthMm } from '../font/metrics.ts';
import { printable } from '../font/printable.ts';
import { rectangleItem, textItem } from '../items.ts';
import type { Point, SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import { LABEL_PT } from '../style.ts';
import type { PieceView } from './view.ts';

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Neighbouring blocks of one motif on the same rows. */
interface Standing {
  readonly motif: MotifId;
  readonly blocks: readonly Box[];
  /** Nothing else stands in it, so that its name may. */
  readonly isArea: boolean;
}

interface Chip {
  readonly text: string;
  readonly box: Box;
}

export interface MotifNames {
  readonly items: readonly SheetItem[];
  /** The motifs told by a letter, in the order of the letters. */
  readonly lettered: readonly { readonly letter: string; readonly name: string }[];
}

const CHIP_MM = 4;
const AROUND_MM = 1.4;
const OFF_MM = 0.5;

/** The names of the motifs, on paper of their own, clear of each other, of other blocks and of `drawn`. */
export function motifNames(
  plan: Plan,
  nameOf: (motif: MotifId) => string,
  view: PieceView,
  drawn: readonly SheetItem[],
): MotifNames {
  const standings = standingsOf(plan, view);
  const motifs = [...new Set(standings.map(({ motif }) => motif))];
  const letterOf = (motif: MotifId): string => lettered(motifs.indexOf(motif));
  const taken = [...standings.filter(({ isArea }) => !isArea).flatMap(({ blocks }) => blocks), ...drawn.flatMap(boxOf)];
  const chips: Chip[] = [];
  const letters = new Set<MotifId>();
  for (const standing of standings) {
    const name = printable(nameOf(standing.motif));
    const found =
      chipsFor(name, standing, view, [...taken, ...chips.map(({ box }) => box)]) ??
      chipsFor(letterOf(standing.motif), standing, view, [...taken, ...chips.map(({ box }) => box)]);
    if (!found) continue;
    chips.push(...found);
    if (found[0]?.text !== name) letters.add(standing.motif);
  }
  return {
    items: chips.flatMap(drawChip),
    lettered: motifs
      .filter((motif) => letters.has(motif))
      .map((motif) => ({ letter: letterOf(motif), name: nameOf(motif) })),
  };
}

/** A, B, … Z, AA, AB, … */
function lettered(index: number): string {
  const rest = Math.floor(index / 26);
  return `${rest > 0 ? lettered(rest - 1) : ''}${String.fromCharCode('A'.charCodeAt(0) + (index % 26))}`;
}

/** From the lowest row up, each row from the left. */
function standingsOf(plan: Plan, view: PieceView): Standing[] {
  const { groups, outline } = plan;
  const box = (first: number, last: number, firstRow: number, lastRow: number): Box =>
    boxRound(view.corners(first, last, firstRow, lastRow));
  const inOrder = [...groups].sort((a, b) => a.band - b.band || a.block.first - b.block.first);
  const runs: { band: number; motif: MotifId; blocks: Box[] }[] = [];
  for (const { band, motif, block, firstRow, lastRow } of inOrder) {
    const last = runs.at(-1);
    const found = box(block.first, block.last, firstRow, lastRow);
    if (last?.band === band && last.motif === motif) last.blocks.push(found);
    else runs.push({ band, motif, blocks: [found] });
  }
  const areas = allOversOf(plan).map(({ motif, firstRow, lastRow }): Standing => {
    const middle = Math.floor((firstRow + lastRow) / 2);
    const { first, last } = edgesAt(outline, middle);
    const across = { left: view.x(first, middle), right: view.x(last + 1, middle) };
    return { motif, blocks: [{ ...across, top: view.y(lastRow + 1), bottom: view.y(firstRow) }], isArea: true };
  });
  return [...runs.map(({ motif, blocks }) => ({ motif, blocks, isArea: false })), ...areas];
}

/** The text at each block, or once for all of them; null where there is no place. */
function chipsFor(text: string, { blocks, isArea }: Standing, view: PieceView, taken: readonly Box[]): Chip[] | null {
  const width = widthMm(text, LABEL_PT) + AROUND_MM;
  const placeAt = (block: Box, others: readonly Box[]): Box | null =>
    placesAt(block, width, view, isArea).find((place) => others.every((other) => !meet(place, other))) ?? null;
  const each: Box[] = [];
  for (const block of blocks) {
    const place = placeAt(block, [...taken, ...each]);
    if (place) each.push(place);
  }
  if (each.length === blocks.length) return each.map((box) => ({ text, box }));
  const all = {
    left: Math.min(...blocks.map(({ left }) => left)),
    right: Math.max(...blocks.map(({ right }) => right)),
    top: Math.min(...blocks.map(({ top }) => top)),
    bottom: Math.max(...blocks.map(({ bottom }) => bottom)),
  };
  const once =
    placeAt(all, taken) ??
    placeWithin(
      all,
      width,
      taken.filter((box) => !blocks.includes(box)),
    );
  return once ? [{ text, box: once }] : null;
}

/** Where a block takes up its rows, its name stands on it, at its top. */
function placeWithin(block: Box, width: number, others: readonly Box[]): Box | null {
  const isLarge = block.right - block.left >= 2 * width && block.bottom - block.top >= 3 * CHIP_MM;
  const left = (block.left + block.right - width) / 2;
  const top = block.top + OFF_MM;
  const place = { left, right: left + width, top, bottom: top + CHIP_MM };
  return isLarge && others.every((other) => !meet(place, other)) ? place : null;
}

/** Above the block, below it; of an area in its middle. */
function placesAt(block: Box, width: number, view: PieceView, isArea: boolean): Box[] {
  const [least, most] = [view.left, view.right];
  if (width > most - least) return [];
  const middle = (block.left + block.right) / 2;
  const left = Math.max(least, Math.min(middle - width / 2, most - width));
  const at = (top: number): Box => ({ left, right: left + width, top, bottom: top + CHIP_MM });
  if (isArea) {
    const centre = (block.top + block.bottom - CHIP_MM) / 2;
    return [0, 1, -1, 2, -2].map((step) => at(centre + step * CHIP_MM * 1.5));
  }
  const [above, below] = [at(block.top - OFF_MM - CHIP_MM), at(block.bottom + OFF_MM)];
  return [above, below].filter(({ top, bottom }) => top >= view.y(view.rows + 1) && bottom <= view.y(1));
}

function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** Where lines and numbers are drawn already. */
function boxOf(item: SheetItem): Box[] {
  if (item.kind === 'rectangle') {
    return [{ left: item.x, right: item.x + item.width, top: item.y, bottom: item.y + item.height }];
  }
  if (item.kind !== 'path') return [];
  return [boxRound(item.lines.flat())];
}

function boxRound(points: readonly Point[]): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

function drawChip({ text, box: { left, right, top, bottom } }: Chip): SheetItem[] {
  const baseline = (top + bottom + LABEL_PT * POINT_MM * CAPITAL_EM) / 2;
  return [
    rectangleItem(left, top, right - left, bottom - top, 'paper'),
    textItem(text, (left + right) / 2, baseline, { sizePt: LABEL_PT, anchor: 'middle' }),
  ];
}
