/**
 * A project file of version 4 as version 5 has it: `piece`, `bands` and `fills`
 * become the first piece of a list, and the sizes, of which the one at hand
 * stood in the piece, a list with the numbers of each.
 *
 * What is wrong in a file stays wrong: the schema finds it and says where.
 */
import { each, edited, fieldsOf, listOf, type Fields } from './plain-data.ts';

/** Of a size of version 4: its id in version 5, its name, and its numbers, or those of the piece where it is at hand. */
interface SizeOf4 {
  readonly id: string;
  readonly name: unknown;
  readonly numbers: Fields;
  readonly isAtHand: boolean;
}

export function toVersion5({ piece, sizes, bands, fills, ...file }: Fields): Fields {
  const all = sizesOf(fieldsOf(sizes), fieldsOf(piece));
  const patterns = [
    ...(each(bands ?? [], (band, at) => bandOf(band, `band-${at + 1}`, all)) as Fields[]),
    ...(each(fills ?? [], (fill, at) => ({ id: `fill-${at + 1}`, kind: 'all-over', ...fill })) as Fields[]),
  ];
  const isWhole = Array.isArray(bands) && Array.isArray(fills);
  return {
    ...file,
    sizes: areSizes(sizes) ? all.map(({ id, name }) => ({ id, name })) : sizes,
    pieces: [edited(piece, (fields) => pieceOf(fields, all, isWhole ? patterns : (bands ?? fills)))],
  };
}

function areSizes(sizes: unknown): boolean {
  const { smaller, larger } = fieldsOf(sizes);
  return Array.isArray(smaller) && Array.isArray(larger);
}

/** Smallest first. */
function sizesOf({ name, smaller, larger }: Fields, piece: Fields): SizeOf4[] {
  const { shape, hemRows, lengths } = piece;
  const atHand = { name, shape, hemRows, ...(lengths !== undefined && { lengths }) };
  const those = [...listOf(smaller), atHand, ...listOf(larger)];
  return those.map(({ name: called, ...numbers }, at) => ({
    id: `size-${at + 1}`,
    name: called,
    numbers,
    isAtHand: at === listOf(smaller).length,
  }));
}

function pieceOf(fields: Fields, sizes: readonly SizeOf4[], patterns: unknown): Fields {
  const { shape: _, hemRows: __, lengths: ___, parts, ...shared } = fields;
  const sectionRows = each(parts, ({ rows, lengthMm }) => ({ rows, ...(lengthMm !== undefined && { lengthMm }) }));
  return {
    id: 'piece-1',
    knit: 1,
    ...shared,
    parts: each(parts, ({ rows: _rows, lengthMm: _lengthMm, ...section }) => section),
    perSize: sizes.map(({ id, numbers }) => ({ size: id, ...numbers, sectionRows })),
    patterns,
  };
}

function bandOf(band: Fields, id: string, sizes: readonly SizeOf4[]): Fields {
  const { rule, choice, chosenInSizes, groups, ...shared } = band;
  const { kind, first, before } = fieldsOf(rule);
  const isByHand = kind === 'by-hand';
  const solved = fieldsOf(before);
  // Needles by hand that no rule found were all there was to say, in every size.
  const isFree = isByHand && before === undefined;
  const chosen = listOf(chosenInSizes);
  const atHand = isByHand ? byHand(first, solved.choice) : byRule(choice);
  const placedIn = ({ name, isAtHand }: SizeOf4): Fields => {
    if (isAtHand) return atHand;
    const waiting = chosen.find(({ size }) => size === name);
    if (!waiting) return BEST;
    const isChoice = waiting.first === null || waiting.first === undefined;
    return isChoice ? byRule(waiting.choice) : byHand(waiting.first, waiting.choice);
  };
  return {
    id,
    kind: 'band',
    ...shared,
    groups: each(groups, (group) => groupOf(group, sizes)),
    rule: isFree ? { kind: 'seam' } : isByHand ? solved.rule : rule,
    placed: isFree ? { all: byHand(first, null), but: [] } : inSizes(BEST, sizes, placedIn),
  };
}

const BEST = byRule(0);

function byRule(choice: unknown): Fields {
  return { by: 'rule', choice };
}

function byHand(first: unknown, before: unknown): Fields {
  return { by: 'hand', first, before };
}

function groupOf({ across, acrossInSizes, ...group }: Fields, sizes: readonly SizeOf4[]): Fields {
  const others = listOf(acrossInSizes);
  const acrossIn = ({ name, isAtHand }: SizeOf4): unknown => {
    const own = isAtHand ? undefined : others.find(({ size }) => size === name);
    return own ? own.across : across;
  };
  return { ...group, across: inSizes(across, sizes, acrossIn) };
}

/** What all sizes have, and what those have that have another. */
function inSizes(all: unknown, sizes: readonly SizeOf4[], of: (size: SizeOf4) => unknown): Fields {
  const each = sizes.map((size) => ({ size: size.id, value: of(size) }));
  return { all, but: each.filter(({ value }) => JSON.stringify(value) !== JSON.stringify(all)) };
}
