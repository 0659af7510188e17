/**
 * Project files that look random and are the same each time, of every version
 * that was ever written.
 *
 * They are made as plain data, without a type or a function of projects, so that
 * nothing that is rebuilt there changes what it is asked.
 */
import { Random } from '../../soak/random.ts';
import { motifsOf, yarnsOf } from './motifs.ts';
import { bandOf, fillOf, type GeneratedBand, type Ground } from './patterns.ts';
import { pieceOf, sizesOf } from './piece.ts';
import { fileOfVersion5 } from './version-5.ts';
import { fileOfVersion6 } from './version-6.ts';
import { fileOfVersion7 } from './version-7.ts';

export const VERSIONS = [1, 2, 3, 4, 5, 6, 7] as const;
export type Version = (typeof VERSIONS)[number];

/** The file called `number` of a version: the same for the same number, and of no other. */
export function generatedFile(version: Version, number: number): object {
  const random = new Random(version * 1_000_003 + number * 7919);
  // Numbers that are near are mixed before they are used.
  for (let turn = 0; turn < 4; turn++) random.next();
  if (version === 1) return fileOfVersion1(random);
  if (version >= 5) {
    // Of several pieces, each is made as the one of a project of its own.
    const made = Array.from({ length: random.of([1, 1, 2, 3]) }, () => inVersion4(random, laterProject(random)));
    const file = fileOfVersion5(random, made);
    if (version === 5) return file;
    const later = fileOfVersion6(file);
    return version === 6 ? later : fileOfVersion7(random, later);
  }
  const project = laterProject(random);
  return { format: 'walewright', version, ...(version < 4 ? project : inVersion4(random, project)) };
}

/** What versions 2 and 3 hold, and most of what later ones do; 2 and 3 differ in what a yarn count of 278 means. */
function laterProject(random: Random) {
  const many = random.whole(1, 30) === 1 ? 1 : random.whole(2, 4);
  const yarns = yarnsOf(random, many);
  const motifs = motifsOf(random, many);
  const piece = pieceOf(random);
  const ground: Ground = { motifs, piece, sizes: sizesOf(random, piece) };
  return { name: 'generated', yarns, motifs, piece, sizes: ground.sizes, ...patternsOf(random, ground) };
}

const BOTH = [true, false] as const;
const TENSIONS = ['', '', '7', '8.1 or looser'] as const;

export type GeneratedVersion4 = ReturnType<typeof inVersion4>;

/** What version 4 says besides, and where it says it. */
function inVersion4(random: Random, { name, piece, bands, fills, ...rest }: ReturnType<typeof laterProject>) {
  const { endNeedleSelection: _, hem, parts, ...own } = piece;
  const tension = () => random.of(TENSIONS);
  const withEndNeedles = <T extends object>(pattern: T) => ({ ...pattern, endNeedles: random.of(BOTH) });
  const file = {
    name,
    notes: random.of(['', 'Bring the long hook.']),
    machine: {
      chooses: random.of(['ahead-seen', 'ahead-seen', 'ahead-unseen', 'by-hand']),
      places: random.of(['any-needle', 'any-needle', { repeat: 24, from: 'L12' }]),
      endNeedles: random.of(['switch', 'switch', 'always', 'none']),
      increases: random.of(['both-edges', 'carriage-side']),
      weights: random.of(BOTH),
    },
    ...rest,
    piece: {
      ...own,
      hem: { turning: random.of(['none', 'loose', 'eyelets']), gauge: hem.gauge },
      parts: parts.map((part) => ({ ...part, tension: tension() })),
      begins: random.of(['usual', 'closed', 'open', 'picked-up']),
      ends: random.of(['cast-off', 'waste-yarn', 'on-a-thread']),
      tension: {
        waste: tension(),
        facing: tension(),
        turningRow: tension(),
        outside: tension(),
        joiningRow: tension(),
        main: tension(),
        pattern: tension(),
        lastRow: tension(),
      },
      notes: random.of(['', 'The cuff is the right one.']),
    },
    bands: bands.map(withEndNeedles),
    fills: fills.map(withEndNeedles),
  };
  const withLengths = <T extends object>(size: T) => ({ ...size, ...lengthsOf(random) });
  const given = file.piece;
  return {
    ...file,
    piece: {
      ...withLengths(given),
      parts: given.parts.map((part) => ({ ...part, ...lengthAs(random, 'lengthMm') })),
      seamAllowance: { ...given.seamAllowance, ...lengthAs(random, 'leftMm'), ...lengthAs(random, 'rightMm') },
    },
    sizes: {
      ...file.sizes,
      smaller: file.sizes.smaller.map(withLengths),
      larger: file.sizes.larger.map(withLengths),
    },
    bands: file.bands.map((band, at) => {
      const { position } = bands[at] as GeneratedBand;
      return { ...band, position: { ...position, ...awayAs(random, position) } };
    }),
  };
}

const LENGTHS = [
  'stitches',
  'stitchesAtTop',
  'stitchesAtWaist',
  'stitchesAtChest',
  'rowsToWaist',
  'rowsToChest',
  'rows',
  'straightRows',
  'hemRows',
] as const;

/** Counts of a size that were given as lengths, or a word of none. Some hold and some do not; a plan asks for none of them. */
function lengthsOf(random: Random): object {
  if (random.of(BOTH)) return {};
  return { lengths: Object.assign({}, ...LENGTHS.map((of) => lengthAs(random, of))) as object };
}

function awayAs(random: Random, { kind }: { readonly kind: string }): object {
  return kind === 'from-edge' ? lengthAs(random, 'lengthMm') : {};
}

/** A length in mm called so, or nothing. */
function lengthAs(random: Random, name: string): object {
  return random.of(BOTH) ? { [name]: random.whole(0, 800) / 2 } : {};
}

/** Bands alone, all-over patterns alone, or an all-over pattern above a band; now and then they meet, or there are none. */
function patternsOf(random: Random, ground: Ground) {
  const { rows } = ground.piece.shape;
  const kind = random.whole(1, 16);
  if (kind === 1) return { bands: [], fills: [] };
  if (kind === 2) {
    const fills = [fillOf(random, ground, 2, 10), fillOf(random, ground, random.whole(10, 12), null)];
    return { bands: [], fills };
  }
  if (kind <= 4) return { bands: [], fills: [fillOf(random, ground, random.whole(1, 9), random.of([null, rows, 12]))] };
  if (kind <= 6) {
    const band = { ...bandOf(random, ground), position: { kind: 'from-row', row: 2 } };
    return { bands: [band], fills: [fillOf(random, ground, random.whole(14, 20), null)] };
  }
  if (kind <= 12) return { bands: [bandOf(random, ground), bandOf(random, ground)], fills: [] };
  return { bands: [bandOf(random, ground)], fills: [] };
}

function fileOfVersion1(random: Random): object {
  const many = random.whole(2, 4);
  const yarns = yarnsOf(random, many);
  const motifs = motifsOf(random, many);
  const { hem: _hem, parts: _parts, ...piece } = pieceOf(random, ['rectangle', 'tapered']);
  const ground: Ground = {
    motifs,
    piece: { ...piece, hem: { hasTurningRow: false, gauge: null }, parts: [] },
    sizes: { name: '1', smaller: [], larger: [] },
  };
  return {
    format: 'walewright',
    version: 1,
    name: 'generated',
    yarns,
    motifs: motifs.map(({ id, name, ground: main, shows, rows }) => ({ id, name, ground: main, shows, rows })),
    piece,
    bands: random.whole(1, 10) === 1 ? [] : [bandOfVersion1(random, bandOf(random, ground))],
  };
}

function bandOfVersion1(random: Random, { groups, unit, rule, judge, choice }: GeneratedBand) {
  const isCentred = random.whole(1, 3) > 1;
  return {
    groups: groups.map(({ motif, across, up }) => ({ motif, across, up })),
    unit,
    rule: rule.kind === 'by-hand' ? { kind: rule.kind, first: 'first' in rule ? rule.first : [] } : rule,
    judge,
    choice,
    position: isCentred
      ? { kind: 'centred', oddRow: random.of(['below', 'above']) }
      : { kind: 'from-row', row: random.whole(1, 9) },
    ownBalls: random.of([true, false]),
  };
}
