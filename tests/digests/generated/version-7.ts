/** What version 7 says: where all-overs start and end, rows above the hem, sections by that name, and the bed with the machine. */
import type { Random } from '../../soak/random.ts';
import type { fileOfVersion6 } from './version-6.ts';

const BOTH = [true, false] as const;

/** A project file of version 7 of what was made as one of version 6. */
export function fileOfVersion7(
  random: Random,
  { pieces, machine, ...file }: ReturnType<typeof fileOfVersion6>,
): object {
  const [first] = pieces as object as readonly Piece[];
  return {
    ...file,
    motifs: file.motifs.map((motif) => ({ ...motif, underlay: motif.underlay && turned(motif.underlay) })),
    version: 7,
    machine: { ...machine, bed: first?.bed },
    pieces: (pieces as object as readonly Piece[]).map((piece) => pieceOf(random, piece, file.motifs)),
  };
}

/** Some pictures to trace are turned; by how much follows from where they lie, so that nothing else is made otherwise for it. */
function turned<Picture extends { readonly left: number; readonly isShown: boolean }>(picture: Picture): object {
  return picture.isShown ? { ...picture, turn: picture.left * 20 } : picture;
}

interface Piece {
  readonly bed: object;
  readonly parts: readonly { readonly name: string }[];
  readonly perSize: readonly { readonly hemRows: number }[];
  readonly patterns: readonly Pattern[];
}

type Pattern =
  | { readonly kind: 'band'; readonly id: string; readonly position: { readonly kind: string } }
  | (Rows & { readonly kind: 'all-over'; readonly id: string });

interface Rows {
  readonly firstRow: number;
  readonly lastRow: number | null;
}

function pieceOf(random: Random, piece: Piece, motifs: readonly { readonly id: string }[]): object {
  const { bed: _, parts, patterns, ...shared } = piece;
  const [only] = patterns;
  // Where there were bands alone, now and then an all-over instead.
  const isFilled = only?.kind === 'band' && random.whole(1, 20) <= 9;
  const there = isFilled ? [fillInstead(random, only.id, (motifs[0] as { id: string }).id)] : patterns;
  return {
    ...shared,
    sections: parts,
    patterns: there.map((pattern) => {
      if (pattern.kind === 'band') return { ...pattern, position: positionOfBand(random, pattern.position) };
      const { firstRow, lastRow, ...others } = pattern;
      return { ...others, position: extentOf(random, piece, { firstRow, lastRow }) };
    }),
  };
}

function fillInstead(random: Random, id: string, motif: string): Extract<Pattern, { kind: 'all-over' }> {
  const fill = {
    kind: 'all-over',
    id,
    motif,
    unit: random.of(['repeat', 'whole']),
    isMirrored: random.of(BOTH),
    firstRow: random.whole(1, 9),
    lastRow: random.of([null, 12]),
    border: { left: 0, right: 0 },
    centre: 'column',
    shift: 0,
    step: random.of([0, random.whole(-6, 6)]),
    cutCopies: 'kept',
    endNeedles: random.of(BOTH),
  } as const;
  return fill;
}

function positionOfBand(random: Random, position: { readonly kind: string }): object {
  if (position.kind === 'above-hem' || random.whole(1, 6) === 1) return aboveHem(random);
  const { section, ...others } = position as { readonly kind: string; readonly section?: unknown };
  return section === undefined ? position : { ...others, section: named(section) };
}

function named(section: unknown): unknown {
  return typeof section === 'object' ? { named: (section as { readonly part: string }).part } : section;
}

/** Mostly from one place to another, in sections that the piece has. */
function extentOf(random: Random, piece: Piece, { firstRow, lastRow }: Rows): object {
  const fromRow = { kind: 'from-row', row: firstRow };
  const region = (isCentred: boolean): unknown => regionOf(random, piece, isCentred);
  if (random.whole(1, 20) <= 8) {
    const from = random.of([fromRow, aboveHem(random), null, null]) ?? fromEdge(random, 'lower', region(false));
    const isToRow = lastRow !== null || random.whole(1, 4) === 1;
    const row = Math.max(lastRow ?? 30, firstRow);
    const to = isToRow && random.of(BOTH) ? { kind: 'to-row', row } : fromEdge(random, 'upper', region(false));
    return { kind: 'from-to', from, to };
  }
  const height = random.whole(1, 7);
  const kind = random.whole(1, 12);
  const at =
    kind === 1
      ? fromRow
      : kind <= 3
        ? aboveHem(random)
        : kind <= 7
          ? fromEdge(random, random.of(['lower', 'upper']), region(false))
          : { kind: 'centred', section: region(true), oddRow: random.of(['below', 'above']) };
  return { kind: 'so-high', height, at };
}

function fromEdge(random: Random, edge: string, section: unknown): object {
  return { kind: 'from-edge', edge, section, rows: random.whole(0, 4), ...length(random) };
}

function aboveHem(random: Random): object {
  return { kind: 'above-hem', rows: random.whole(0, 4), ...length(random) };
}

function length(random: Random): object {
  return random.of(BOTH) ? { lengthMm: random.whole(0, 60) / 2 } : {};
}

/** Mostly a section that the piece has, now and then one that is missing. */
function regionOf(random: Random, { parts, perSize }: Piece, isCentred: boolean): unknown {
  const section = { named: parts.length > 0 ? random.of(parts).name : 'gone' };
  const hasHem = perSize.every(({ hemRows }) => hemRows > 1);
  const there = [
    'piece',
    'body',
    ...(isCentred ? ['shown'] : []),
    ...(hasHem ? ['hem-back', 'hem-back', 'hem-front', 'hem-front'] : []),
    ...(parts.length > 0 ? [section, section, section] : []),
  ];
  return random.whole(1, 6) === 1 ? random.of(['hem-back', 'hem-front', section]) : random.of(there);
}
