/** What version 5 says: pieces in a list, each with numbers for each size, and patterns named by ids. */
import type { Random } from '../../soak/random.ts';
import type { fillOf, GeneratedBand } from './patterns.ts';
import type { GeneratedVersion4 } from './project-file.ts';

/** A project file of version 5 of pieces that were each made as the piece of a project of version 4; motifs and sizes are the first one's. */
export function fileOfVersion5(random: Random, made: readonly GeneratedVersion4[]) {
  const { piece: _piece, sizes: _sizes, bands: _bands, fills: _fills, ...first } = made[0] as GeneratedVersion4;
  const { smaller, larger } = (made[0] as GeneratedVersion4).sizes;
  const sizes = [...smaller, ...larger, null].map((_, at) => ({ id: `s${at + 1}`, name: `size ${at + 1}` }));
  const motifs = first.motifs.map(({ id }) => id);
  const pieces = made.map((project, at) =>
    pieceOf(
      random,
      project,
      at + 1,
      sizes.map(({ id }) => id),
      motifs,
    ),
  );
  return { format: 'walewright', version: 5, ...first, sizes, pieces };
}

function pieceOf(
  random: Random,
  { piece, sizes: { smaller, larger }, bands, fills }: GeneratedVersion4,
  number: number,
  sizes: readonly string[],
  motifs: readonly string[],
) {
  const { shape, hemRows, parts, lengths, ...shared } = piece as typeof piece & { readonly lengths?: object };
  const others = [...smaller, ...larger].map(({ name: _, ...own }): object => own);
  const numbers: readonly object[] = [{ shape, hemRows, ...(lengths && { lengths }) }, ...others];
  const id = (kind: string, at: number): string => `${kind}-${number}-${at + 1}`;
  const patterns = [
    ...bands.map((band, at) => ({
      id: id('band', at),
      kind: 'band',
      ...bandOf(random, band as object as Band, sizes, motifs),
    })),
    ...(fills as object as readonly Fill[]).map((fill, at) => ({
      id: id('fill', at),
      kind: 'all-over',
      ...fill,
      motif: near(motifs, fill.motif),
    })),
  ];
  return {
    id: `piece-${number}`,
    knit: random.of([1, 1, 2, 12]),
    ...shared,
    name: `piece ${number}`,
    parts: parts.map(({ rows: _, lengthMm: __, ...part }: Part) => part),
    perSize: sizes.map((size, at) => ({
      size,
      ...numbers[at % numbers.length],
      sectionRows: parts.map(({ rows, lengthMm }: Part) => ({
        rows: Math.max(1, rows - (at % 2)),
        ...(lengthMm !== undefined && { lengthMm }),
      })),
    })),
    patterns,
  };
}

interface Part {
  readonly rows: number;
  readonly lengthMm?: number;
}

type Band = GeneratedBand & { readonly chosenInSizes?: unknown };
type Fill = ReturnType<typeof fillOf>;

function bandOf(random: Random, band: Band, sizes: readonly string[], motifs: readonly string[]) {
  const {
    rule,
    choice: _choice,
    chosenInSizes: _chosen,
    groups,
    ...shared
  } = band as GeneratedBand & {
    readonly chosenInSizes?: unknown;
  };
  const first = 'first' in rule ? rule.first : groups.map((_, at) => `L${40 - 12 * at}`);
  const byRule = (choice: number): Placed => ({ by: 'rule', choice });
  const placed = (): Placed =>
    random.whole(1, 3) === 1
      ? { by: 'hand', first, before: random.of([null, random.whole(0, 3)]) }
      : byRule(random.of([0, random.whole(0, 7)]));
  const ruled = 'before' in rule && rule.before ? rule.before.rule : rule;
  return {
    ...shared,
    groups: groups.map((group) => {
      const { acrossInSizes: _, ...own } = group as typeof group & { readonly acrossInSizes?: unknown };
      const across = inSizes(random, sizes, group.across, () => random.whole(1, group.across + 1));
      return { ...own, motif: near(motifs, group.motif), across };
    }),
    rule: 'first' in ruled ? { kind: 'seam' } : ruled,
    placed: inSizes(random, sizes, random.whole(1, 4) === 1 ? placed() : byRule(0), placed),
  };
}

type Placed =
  | { readonly by: 'rule'; readonly choice: number }
  | { readonly by: 'hand'; readonly first: readonly string[]; readonly before: number | null };

/** A value in all sizes, and another one in some of them. */
function inSizes<T>(random: Random, sizes: readonly string[], all: T, other: () => T) {
  const some = random.of([[], sizes.filter(() => random.of([true, false]))]);
  const but = some.map((size) => ({ size, value: other() }));
  return { all, but: but.filter(({ value }) => JSON.stringify(value) !== JSON.stringify(all)) };
}

/** One of the motifs that there are for one that was meant. */
function near(motifs: readonly string[], meant: string): string {
  return motifs.includes(meant) ? meant : (motifs[0] as string);
}
