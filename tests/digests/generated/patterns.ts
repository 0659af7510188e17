/** Bands and all-over patterns of a generated project file. Most of them fit their piece. */
import type { Random } from '../../soak/random.ts';
import type { GeneratedMotif } from './motifs.ts';
import type { GeneratedPiece, GeneratedSizes } from './piece.ts';

const BOTH = [true, false] as const;
const CLIPPED_COPIES = ['kept', 'kept-if-read', 'left-out'] as const;
const UNITS = ['repeat', 'whole'] as const;

/** Everything that the patterns of a project may depend on. */
export interface Ground {
  readonly motifs: readonly GeneratedMotif[];
  readonly piece: GeneratedPiece;
  readonly sizes: GeneratedSizes;
}

function needle(slot: number): string {
  return slot < 0 ? `L${-slot}` : `R${slot + 1}`;
}

function solvedRuleOf(random: Random) {
  const kind = random.of(['seam', 'even', 'margins', 'gaps']);
  return kind === 'seam' || kind === 'even' ? { kind } : { kind, stitches: random.of([0, 0, random.whole(1, 8)]) };
}

/** First needles for groups so wide, one after the other from about the left edge. */
function firstNeedlesOf(random: Random, { piece }: Ground, widths: readonly number[]): string[] {
  let next = piece.offset - Math.floor(piece.shape.stitches / 2) + random.whole(0, 2);
  return widths.map((width) => {
    const first = next;
    next += width + random.whole(0, 3);
    return needle(first);
  });
}

function ruleOf(random: Random, ground: Ground, widths: readonly number[]) {
  if (random.whole(1, 7) > 3) return solvedRuleOf(random);
  const first = firstNeedlesOf(random, ground, widths);
  if (random.whole(1, 6) === 1) return { kind: 'by-hand', first };
  return { kind: 'by-hand', first, before: { rule: solvedRuleOf(random), choice: random.whole(0, 3) } };
}

/** Mostly a section that the piece has, now and then one that is missing. */
function regionOf(random: Random, piece: GeneratedPiece, isCentred: boolean) {
  const part = { part: piece.parts.length > 0 ? random.of(piece.parts).name : 'gone' };
  const there = [
    'piece',
    'body',
    ...(isCentred ? ['shown'] : []),
    ...(piece.hemRows > 1 ? ['hem-back', 'hem-back', 'hem-front', 'hem-front'] : []),
    ...(piece.parts.length > 0 ? [part, part, part] : []),
  ];
  return random.whole(1, 12) === 1 ? random.of(['hem-back', 'hem-front', part]) : random.of(there);
}

function positionOf(random: Random, piece: GeneratedPiece) {
  switch (random.whole(1, 12)) {
    case 1:
      return { kind: 'above-hem' };
    case 2:
      return { kind: 'from-row', row: random.whole(1, 9) };
    case 3:
    case 4:
    case 5:
    case 6:
    case 7:
      return {
        kind: 'from-edge',
        edge: random.of(['lower', 'upper']),
        section: regionOf(random, piece, false),
        rows: random.whole(0, 4),
      };
    default:
      return { kind: 'centred', section: regionOf(random, piece, true), oddRow: random.of(['below', 'above']) };
  }
}

function sizeNames({ sizes }: Ground): string[] {
  return [...sizes.smaller, ...sizes.larger].map(({ name }) => name);
}

function groupOf(random: Random, ground: Ground, stitches: number) {
  const motif = random.of(ground.motifs);
  const fits = Math.max(1, Math.floor(stitches / (motif.rows[0] as string).length));
  const across = random.whole(1, random.of([Math.min(4, fits), fits]));
  const inSizes = sizeNames(ground).map((size) => ({ size, across: random.whole(1, across + 1) }));
  return {
    motif: motif.id,
    across,
    ...(random.whole(1, 3) === 1 && { acrossInSizes: inSizes }),
    up: random.of([1, 1, 1, 1, 1, random.whole(2, 3)]),
    isMirrored: random.of(BOTH),
    rise: random.whole(1, 4) === 1 ? random.whole(1, 4) : 0,
    hasOwnBall: random.of(BOTH),
  };
}

export function bandOf(random: Random, ground: Ground) {
  const { piece, motifs } = ground;
  const many = random.whole(1, 3);
  const groups = Array.from({ length: many }, () => groupOf(random, ground, piece.shape.stitches / many));
  const widthOf = (id: string): number => (motifs.find((motif) => motif.id === id)?.rows[0] as string).length;
  const widths = groups.map(({ motif, across }) => across * widthOf(motif));
  const chosen = sizeNames(ground).map((size) => ({
    size,
    choice: random.whole(0, 2),
    first: random.of(BOTH) ? firstNeedlesOf(random, ground, widths) : null,
  }));
  const rule = ruleOf(random, ground, widths);
  // Needles are chosen at the edge of the cast-on: low on the piece they stand, and shaping above cuts into copies.
  const isAtEdge = rule.kind === 'by-hand' && random.whole(1, 3) === 1;
  return {
    groups,
    unit: random.of(UNITS),
    rule,
    judge: random.of(['figure', 'blocks']),
    choice: random.whole(1, 6) === 1 ? random.whole(1, 7) : 0,
    ...(random.whole(1, 3) === 1 && { chosenInSizes: chosen }),
    position: isAtEdge ? { kind: 'from-row', row: random.whole(1, 9) } : positionOf(random, piece),
    cutCopies: random.of(CLIPPED_COPIES),
  };
}

export type GeneratedBand = ReturnType<typeof bandOf>;

/** An all-over pattern of the rows from `firstRow` on. */
export function fillOf(random: Random, { motifs }: Ground, firstRow: number, lastRow: number | null) {
  const isBordered = random.of(BOTH);
  return {
    motif: random.of(motifs).id,
    unit: random.of(UNITS),
    isMirrored: random.of(BOTH),
    firstRow,
    lastRow,
    border: { left: isBordered ? random.whole(0, 9) : 0, right: isBordered ? random.whole(0, 9) : 0 },
    centre: random.of(['column', 'between']),
    shift: random.of([0, random.whole(-9, 9)]),
    step: random.of([0, random.whole(-6, 6)]),
    cutCopies: random.of(CLIPPED_COPIES),
  };
}
