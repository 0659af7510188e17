/** Yarns and motifs of a generated project file. */
import type { Random } from '../../soak/random.ts';

/** The letters of cells as files have them: index in this string = index of the yarn. */
const LETTERS = '.X23';

const COLOURS = ['#5d7591', '#fbf7ea', '#4a5a2a', '#6d8190'] as const;

/** How many tex a yarn has: nobody said, the figure that version 2 made up, or one that a person wrote. */
const TEX = [null, 278, 250, 62.5] as const;

export function yarnsOf(random: Random, many: number) {
  return COLOURS.slice(0, many).map((colour, index) => ({ name: `yarn ${index + 1}`, colour, tex: random.of(TEX) }));
}

/** One chart in letters, topmost row first: cells at random, or a tile repeated and cut off, now and then a slip in it. */
function chartOf(random: Random, yarns: number, ground: number): string[] {
  const [width, height] = [random.whole(1, 12), random.whole(1, 8)];
  const isTiled = random.whole(1, 3) === 1;
  const [across, up] = isTiled ? [random.whole(1, 5), random.whole(1, 4)] : [width, height];
  const isPlain = random.whole(1, 40) === 1;
  const tile = Array.from({ length: across * up }, () =>
    isPlain || random.whole(1, 5) <= 3 ? ground : random.whole(0, yarns - 1),
  );
  // Figures are wanted, so the first cell of a tile is one.
  if (!isPlain) tile[0] = (ground + 1) % yarns;
  return Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (_, column) => LETTERS[tile[(row % up) * across + (column % across)] as number]).join(
      '',
    ),
  );
}

function underlayOf(random: Random) {
  if (random.whole(1, 3) > 1) return null;
  return {
    picture: random.of(['data:image/png;base64,iVBORw0KGgo=', 'data:image/jpeg;base64,/9j/2Q==']),
    left: random.whole(-8, 8) / 4,
    bottom: random.whole(-8, 8) / 4,
    columns: random.whole(4, 80) / 4,
    rows: random.whole(4, 80) / 4,
    opacity: random.whole(1, 10) / 10,
    isShown: random.of([true, false]),
  };
}

export function motifsOf(random: Random, yarns: number) {
  const ground = random.whole(0, Math.min(1, yarns - 1));
  return Array.from({ length: random.whole(1, 3) }, (_, index) => ({
    id: `motif-${index + 1}`,
    name: `motif ${index + 1}`,
    ground,
    shows: random.of(['worn', 'needles']),
    isLettering: random.of([true, false]),
    underlay: underlayOf(random),
    rows: chartOf(random, yarns, ground),
  }));
}

export type GeneratedMotif = ReturnType<typeof motifsOf>[number];
