/** Random projects: any motif, any piece it may stand on, any way to place it. */
import fc from 'fast-check';
import type { Grid } from '@shared/grid/index.ts';
import type { Slot } from '@shared/bed/index.ts';
import { SOLVED_KINDS, startRule } from '@shared/placement/index.ts';
import {
  reshaped,
  type Gauge,
  type LoopSource,
  type Section,
  type Position,
  type Region,
  type Shape,
} from '@shared/piece/index.ts';
import type { Underlay } from '@shared/motif/index.ts';
import { bandsOf, type Band, type PlacementRule } from '@shared/pattern/index.ts';
import {
  START_MACHINE,
  type OnHand,
  type Yarn,
  type ProjectAt,
  addSize,
  afterChange,
  changeCopies,
  changeSize,
  inSize,
  projectAt,
  currentSize,
  START_PIECE,
} from '@shared/project/index.ts';
import { beside } from './beside.ts';
import { drawing } from './drawings.ts';
import { writtenProject } from '../written-projects.ts';

export const count = (least: number, most: number) => fc.integer({ min: least, max: most });
const side = fc.constantFrom('left' as const, 'right' as const);

export const ALL_YARNS: readonly Yarn[] = [
  { name: 'slate', colour: '#5d7591', count: { system: 'tex', value: 278, plies: 1 }, onHand: null },
  { name: 'chalk', colour: '#fbf7ea', count: null, onHand: null },
  { name: 'kelp', colour: '#4a5a2a', count: { system: 'tex', value: 250, plies: 1 }, onHand: null },
];

/** A drawing with at least one figure cell, the ground being `ground`. */
function figure(yarns: number, ground: number): fc.Arbitrary<Grid> {
  return drawing({ mostWidth: 9, mostHeight: 8, colours: yarns }).map((grid) =>
    grid.cells.some((cell) => cell !== ground)
      ? grid
      : { ...grid, cells: grid.cells.map((cell, at) => (at === 0 ? 1 - ground : cell)) },
  );
}

const place = fc.double({ min: -50, max: 50, noNaN: true }).map((value) => value + 0);
const size = fc.double({ min: 1, max: 200, noNaN: true });

/** A picture to trace, or none. Nothing here decodes it. */
export const anyUnderlay: fc.Arbitrary<Underlay | null> = fc.option(
  fc.record({
    picture: fc.constantFrom('data:image/png;base64,iVBORw0KGgo=', 'data:image/jpeg;base64,/9j/2Q=='),
    left: place,
    bottom: place,
    columns: size,
    rows: size,
    opacity: fc.double({ min: 0.1, max: 1, noNaN: true }),
    isShown: fc.boolean(),
    turn: fc.double({ min: -180, max: 180, noNaN: true }).map((turn) => turn + 0),
  }),
);

const solvedRule = fc.tuple(fc.constantFrom(...SOLVED_KINDS), count(0, 20)).map(([kind, stitches]) => {
  const start = startRule(kind, null);
  return 'stitches' in start ? { ...start, stitches } : start;
});

const rule: fc.Arbitrary<PlacementRule> = fc.oneof(
  { weight: 4, arbitrary: solvedRule },
  fc
    .tuple(fc.array(count(-40, 30), { minLength: 1, maxLength: 3 }), fc.option(count(0, 7), { nil: undefined }))
    .map(([needles, choice]) => ({
      kind: 'by-hand' as const,
      first: [...needles].sort((a, b) => a - b) as Slot[],
      ...(choice === undefined ? {} : { before: { rule: { kind: 'seam' as const }, choice } }),
    })),
);

/** A size more, and what it differs in: so many stitches and rows, and copies of the first group. */
interface MoreSize {
  readonly side: 'smaller' | 'larger';
  readonly stitches: number;
  readonly rows: number;
  readonly across: number | null;
}

const moreSizes: fc.Arbitrary<readonly MoreSize[]> = fc.oneof(
  { arbitrary: fc.constant([]), weight: 2 },
  fc.array(
    fc.record({
      side: fc.constantFrom('smaller' as const, 'larger' as const),
      stitches: count(-12, 12),
      rows: count(0, 12),
      across: fc.option(count(1, 4)),
    }),
    { minLength: 1, maxLength: 3 },
  ),
);

/** The project with more sizes: each beside the one before it, like it but for what it differs in, and looked at. */
function inSizes(project: ProjectAt, more: readonly MoreSize[], current: number): ProjectAt {
  const grown = more.reduce((made, { side, stitches, rows, across }, number) => {
    const id = `size-${number + 2}`;
    const place = currentSize(made) + (side === 'smaller' ? 0 : 1);
    const { whole, at } = afterChange(made, addSize(made, place, `size ${number + 2}`, id));
    const added = projectAt(whole, { ...at, size: id });
    const { shape, hemRows } = made.piece;
    const width = Math.max(1, shape.stitches + stitches);
    const to = { shape: { ...shape, stitches: width, rows: shape.rows + rows } as Shape, hemRows };
    const changed = afterChange(added, changeSize(added, place, to));
    const copies = across ?? bandsOf(made)[0]?.groups[0]?.across ?? 1;
    return afterChange(changed, changeCopies(changed, place, 0, 0, copies));
  }, project);
  return inSize(grown, current % grown.sizes.length);
}
/** What is done about long floats and carries. */
export const anyMending = fc.record({
  longFloats: fc.constantFrom('left' as const, 'hooked-up' as const, 'latched-up' as const),
  longCarries: fc.constantFrom('carried' as const, 'cut' as const),
});

const anyGauge: fc.Arbitrary<Gauge> = fc.record({ stitches: count(12, 40), rows: count(16, 60) });
const ownGauge = fc.option(anyGauge);
const anyTension = fc.constantFrom('', '7', '8.1 or looser');

/** Most pieces have no sections of their own, and most that do can be knitted. */
export const anySections: fc.Arbitrary<readonly Section[]> = fc.oneof(
  { arbitrary: fc.constant([]), weight: 2 },
  fc
    .array(fc.record({ rows: count(1, 12), isLined: fc.boolean(), gauge: ownGauge, tension: anyTension }), {
      maxLength: 3,
    })
    .map((parts) => parts.map((part, index) => ({ name: `section ${index + 1}`, ...part }))),
);

const region = fc.constantFrom<Region>('piece', 'hem-back', 'hem-front', 'body', { named: 'section 1' });

export const anyPosition: fc.Arbitrary<Position> = fc.oneof(
  {
    arbitrary: fc.record({
      kind: fc.constant('centred' as const),
      section: fc.oneof(fc.constant('shown' as const), region),
      oddRow: fc.constantFrom('below' as const, 'above' as const),
    }),
    weight: 3,
  },
  fc.record({
    kind: fc.constant('from-edge' as const),
    edge: fc.constantFrom('lower' as const, 'upper' as const),
    section: region,
    rows: count(0, 12),
  }),
  fc.record({ kind: fc.constant('above-hem' as const), rows: count(0, 6) }),
);

/** Where the length of a stitch is known from: mostly the gauge. */
export const anyLoop: fc.Arbitrary<LoopSource> = fc.oneof(
  {
    arbitrary: fc.record({
      from: fc.constant('gauge' as const),
      state: fc.constantFrom('dry-relaxed' as const, 'wet-relaxed' as const, 'fully-relaxed' as const),
    }),
    weight: 3,
  },
  fc.record({
    from: fc.constant('machine' as const),
    width: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
    length: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
  }),
  fc.record({ from: fc.constant('unravelled' as const), stitches: count(1, 200), mm: count(1, 4000) }),
  fc.record({
    from: fc.constant('weighed' as const),
    stitches: count(1, 200),
    rows: count(1, 200),
    grams: count(1, 90),
  }),
);

export const anyOnHand: fc.Arbitrary<OnHand | null> = fc.option(
  fc.record({ in: fc.constantFrom('grams' as const, 'balls' as const), amount: count(0, 1000) }),
);

/** What a person left as it is, once found on these rows; most of it is found no more. */
export const anyLeftAsIs: fc.Arbitrary<readonly string[] | undefined> = fc.option(
  fc.uniqueArray(
    fc
      .tuple(fc.constantFrom('long-floats', 'long-carry', 'cut-copies'), count(1, 60), count(0, 20), fc.nat(0xffffffff))
      .map(([code, first, more, mark]) => `${code} ${first}-${first + more} ${mark.toString(16).padStart(8, '0')}`),
    { minLength: 1, maxLength: 3 },
  ),
  { nil: undefined },
);

/**
 * Every project a file can hold, small; not every one can be knitted (groups
 * may be wider than the piece, or the motif taller than the hem).
 */
export const anyProject: fc.Arbitrary<ProjectAt> = fc
  .record({ yarns: count(2, 3), ground: count(0, 1) })
  .chain(({ yarns, ground }) =>
    fc.record({
      yarns: fc.constant(ALL_YARNS.slice(0, yarns)),
      motifs: fc.array(
        fc.tuple(
          figure(yarns, ground),
          fc.constantFrom('worn' as const, 'needles' as const),
          fc.boolean(),
          anyUnderlay,
        ),
        { minLength: 1, maxLength: 2 },
      ),
      ground: fc.constant(ground),
      groups: fc.array(
        fc.record({
          motif: fc.nat(1),
          across: count(1, 3),
          up: count(1, 2),
          isMirrored: fc.boolean(),
          rise: fc.oneof({ arbitrary: fc.constant(0), weight: 2 }, count(0, 9)),
          hasOwnBall: fc.boolean(),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      stitches: count(20, 90),
      rows: count(18, 60),
      hemRows: fc.oneof(fc.constant(0), count(1, 40)),
      rule,
      row: fc.oneof(fc.constant(null), count(1, 30)),
      position: anyPosition,
      parts: anySections,
      unit: fc.constantFrom('repeat' as const, 'whole' as const),
      judge: fc.constantFrom('figure' as const, 'blocks' as const),
      choice: fc.oneof({ arbitrary: fc.constant(0), weight: 3 }, count(1, 7)),
      cutCopies: fc.constantFrom('kept' as const, 'kept-if-read' as const, 'left-out' as const),
      endNeedles: fc.boolean(),
      /** Most machines have a switch. */
      endNeedlesOfMachine: fc.oneof(
        { arbitrary: fc.constant('switch' as const), weight: 4 },
        fc.constantFrom('always' as const, 'none' as const),
      ),
      piece: fc.record({
        oddStitch: side,
        offset: count(-10, 10),
        startSide: side,
        finishedFace: fc.constantFrom('knit' as const, 'purl' as const),
        isInfant: fc.boolean(),
        isLined: fc.boolean(),
        seamAllowance: fc.record({ left: count(0, 3), right: count(0, 3) }),
        gauge: anyGauge,
        hem: fc.record({
          turning: fc.constantFrom('none' as const, 'loose' as const, 'eyelets' as const),
          gauge: ownGauge,
        }),
        begins: fc.constantFrom('usual' as const, 'closed' as const, 'open' as const, 'picked-up' as const),
        ends: fc.constantFrom('cast-off' as const, 'waste-yarn' as const, 'on-a-thread' as const),
        tension: fc.record({
          waste: anyTension,
          facing: anyTension,
          turningRow: anyTension,
          outside: anyTension,
          joiningRow: anyTension,
          main: anyTension,
          pattern: anyTension,
          lastRow: anyTension,
        }),
        notes: fc.string({ maxLength: 40 }),
      }),
      taper: fc.oneof(fc.constant(null), fc.record({ by: count(-10, 20), straight: count(0, 10) })),
      waist: fc.oneof({ arbitrary: fc.constant(null), weight: 3 }, count(0, 8)),
      sizes: fc.record({ more: moreSizes, current: fc.nat(3) }),
      isRowByRow: fc.oneof({ arbitrary: fc.constant(false), weight: 3 }, fc.constant(true)),
      mending: anyMending,
      yarn: fc.record({ margin: count(0, 100), onHand: fc.array(anyOnHand, { maxLength: 3 }) }),
      leftAsIs: beside(anyLeftAsIs),
    }),
  )
  .map((parts): ProjectAt => {
    const { motifs, groups, stitches, rows, taper, waist, isRowByRow } = parts;
    const third = Math.floor(rows / 3);
    const hemRows = Math.min(parts.hemRows, rows);
    const shape: Shape = taper
      ? { kind: 'tapered', stitches, stitchesAtTop: stitches + taper.by, rows, straightRows: taper.straight }
      : waist === null
        ? { kind: 'rectangle', stitches, rows }
        : {
            kind: 'body',
            stitches,
            stitchesAtWaist: stitches - 2 * waist,
            stitchesAtChest: stitches + waist,
            rowsToWaist: third,
            rowsToChest: third,
            rows,
          };
    const band: Band = {
      kind: 'band',
      groups: groups.map((group) => ({ ...group, motif: `motif-${(group.motif % motifs.length) + 1}` })),
      unit: parts.unit,
      rule: parts.rule,
      judge: parts.judge,
      choice: parts.choice,
      position: parts.row === null ? parts.position : { kind: 'from-row', row: parts.row },
      cutCopies: parts.cutCopies,
      endNeedles: parts.endNeedles,
      colourOrder: null,
      anchors: null,
      ...parts.mending,
    };
    const project: ProjectAt = writtenProject({
      name: 'any',
      notes: '',
      machine: { ...START_MACHINE, endNeedles: parts.endNeedlesOfMachine },
      yarnMargin: parts.yarn.margin,
      yarns: parts.yarns.map((yarn, index) => ({ ...yarn, onHand: parts.yarn.onHand[index] ?? null })),
      mainYarn: parts.ground,
      motifs: motifs.map(([grid, shows, isLettering, underlay], index) => ({
        id: `motif-${index + 1}`,
        name: `motif ${index + 1}`,
        grid,
        shows,
        isLettering,
        underlay,
      })),
      piece: {
        ...START_PIECE,
        ...parts.piece,
        hemRows,
        sections: parts.parts,
        ...(parts.leftAsIs && { leftAsIs: parts.leftAsIs }),
        shape: isRowByRow ? reshaped(shape, 'steps', { ...parts.piece, hemRows }) : shape,
      },
      patterns: [band],
    });
    return inSizes(project, parts.sizes.more, parts.sizes.current);
  });
