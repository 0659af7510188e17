/** The piece of a generated project file and its sizes. Most can be knitted. */
import type { Random } from '../../soak/random.ts';

const SIDES = ['left', 'right'] as const;
const BOTH = [true, false] as const;

function gaugeOf(random: Random) {
  return { stitches: random.whole(16, 40), rows: random.whole(20, 60) };
}

function ownGaugeOf(random: Random) {
  return random.of(BOTH) ? gaugeOf(random) : null;
}

/** A shape of any kind, about as wide and long as is asked for. */
function shapeOf(random: Random, kind: string, stitches: number, rows: number) {
  switch (kind) {
    case 'tapered': {
      const stitchesAtTop = Math.max(1, stitches + random.whole(-20, 12));
      return { kind, stitches, stitchesAtTop, rows, straightRows: random.whole(0, 8) };
    }
    case 'body': {
      const third = Math.floor(rows / 3);
      const stitchesAtWaist = Math.max(1, stitches - random.whole(0, 8));
      const stitchesAtChest = stitchesAtWaist + random.whole(0, 10);
      return { kind, stitches, stitchesAtWaist, stitchesAtChest, rowsToWaist: third, rowsToChest: third, rows };
    }
    case 'steps': {
      const steps: { row: number; left: number; right: number }[] = [];
      const isStraight = random.whole(1, 3) === 1;
      for (
        let row = isStraight ? rows + 1 : random.whole(2, 8);
        row <= rows && steps.length < 12;
        row += random.whole(1, 9)
      ) {
        steps.push({ row, left: random.whole(-4, 2), right: random.whole(-4, 2) });
      }
      return { kind, stitches, rows, steps };
    }
    default:
      return { kind, stitches, rows };
  }
}

/** Sections of the piece's own above the hem, as high as the piece leaves room for; now and then higher. */
function partsOf(random: Random, room: number) {
  const parts: { name: string; rows: number; isLined: boolean; gauge: ReturnType<typeof ownGaugeOf> }[] = [];
  if (random.of(BOTH)) return parts;
  let left = random.whole(1, 30) === 1 ? 200 : room;
  for (let number = 1; number <= random.whole(1, 3) && left > 0; number++) {
    const rows = random.whole(Math.min(left, 6), Math.min(left, 18));
    parts.push({ name: `part ${number}`, rows, isLined: random.of(BOTH), gauge: ownGaugeOf(random) });
    left -= rows;
  }
  return parts;
}

function hemRowsOf(random: Random, rows: number): number {
  return random.whole(1, 3) <= 2
    ? Math.min(random.of([random.whole(1, 8), random.whole(16, 40), random.whole(16, 40)]), rows)
    : 0;
}

const SHAPES = ['rectangle', 'tapered', 'body', 'steps'] as const;

/** `shapes`: the kinds of shape that the version of the file has. */
export function pieceOf(random: Random, shapes: readonly string[] = SHAPES) {
  const [stitches, rows] = [random.whole(24, 110), random.whole(30, 100)];
  const hemRows = hemRowsOf(random, rows);
  return {
    name: 'piece',
    shape: shapeOf(random, random.of(shapes), stitches, rows),
    oddStitch: random.of(SIDES),
    offset: random.whole(1, 3) === 1 ? random.whole(-30, 30) : 0,
    hemRows,
    hem: { hasTurningRow: random.of(BOTH), gauge: ownGaugeOf(random) },
    parts: partsOf(random, rows - hemRows),
    gauge: gaugeOf(random),
    bed: { needles: random.of([null, 200, 150, 60]), pitchMm: random.of([4.5, 6.5, 9]) },
    seamAllowance: { left: random.whole(0, 3), right: random.whole(0, 3) },
    finishedFace: random.of(['knit', 'purl']),
    isInfant: random.of(BOTH),
    isLined: random.of(BOTH),
    startSide: random.of(SIDES),
    endNeedleSelection: random.of(BOTH),
    floatLimit: { stitches: random.whole(1, 9), mm: random.of([null, 10, 25, 40]) },
  };
}

export type GeneratedPiece = ReturnType<typeof pieceOf>;

/** Sizes on both sides of the one at hand; a size may have another kind of shape than the others. */
export function sizesOf(random: Random, { shape, hemRows }: GeneratedPiece) {
  const most = random.of([0, 1, 1, 2]);
  const some = (side: string, sign: number) =>
    Array.from({ length: random.whole(0, most) }, (_, index) => {
      const by = sign * random.whole(1, 9);
      const kind = random.of([shape.kind, random.of(SHAPES), 'steps']);
      const sized = shapeOf(random, kind, Math.max(4, shape.stitches + 2 * by), Math.max(4, shape.rows + by));
      return { name: `${side} ${index + 1}`, shape: sized, hemRows: Math.min(hemRows, sized.rows) };
    });
  return { name: 'mine', smaller: some('smaller', -1), larger: some('larger', 1) };
}

export type GeneratedSizes = ReturnType<typeof sizesOf>;
