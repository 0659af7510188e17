/** Random projects as knitters make them: on every kind of machine, shaped, hemmed, several patterns one above the other. */
import fc from 'fast-check';
import type { Machine, Slot } from '@shared/bed/index.ts';
import type { EdgeStep, FloatLimit } from '@shared/piece/index.ts';
import type { AllOver, Band, ColourOrder } from '@shared/pattern/index.ts';
import { startBand, startAllOver, startGroup, type ProjectAt } from '@shared/project/index.ts';
import { anyWish, wishing } from '../property/anchored-projects.ts';
import { anyFilledProject } from '../property/filled-projects.ts';
import { ALL_YARNS, anyProject } from '../property/projects.ts';
import { settled } from '../written-projects.ts';

const count = (min: number, max: number) => fc.integer({ min, max });

const bed = { needles: 200, pitchMm: 4.5 };

const usual: Machine = {
  bed,
  chooses: 'ahead-seen',
  places: 'any-needle',
  endNeedles: 'switch',
  increases: 'both-edges',
  weights: true,
};

export const anyMachine: fc.Arbitrary<Machine> = fc.oneof(
  { arbitrary: fc.record({ weights: fc.boolean() }).map(({ weights }) => ({ ...usual, weights })), weight: 3 },
  fc.record({
    bed: fc.constant(bed),
    chooses: fc.constantFrom('ahead-seen' as const, 'ahead-unseen' as const, 'by-hand' as const),
    places: fc.oneof(
      { arbitrary: fc.constant('any-needle' as const), weight: 3 },
      fc.record({ repeat: fc.constantFrom(8, 12, 24), from: fc.constantFrom(0 as Slot, -12 as Slot) }),
    ),
    endNeedles: fc.constantFrom('switch' as const, 'always' as const, 'none' as const),
    increases: fc.constantFrom('both-edges' as const, 'carriage-side' as const),
    weights: fc.boolean(),
  }),
);

/** Bands one above the other with 0 to 3 plain rows between them. */
const stacked = (motifs: number): fc.Arbitrary<readonly Band[]> =>
  fc
    .array(
      fc.record({
        motif: fc.nat(motifs - 1),
        copies: fc.array(count(1, 2), { minLength: 1, maxLength: 2 }),
        ownBalls: fc.boolean(),
        endNeedles: fc.boolean(),
        plain: count(0, 3),
      }),
      { minLength: 2, maxLength: 3 },
    )
    .chain((given) =>
      count(1, 9).map((start) => {
        let row = start;
        return given.map(({ motif, copies, ownBalls, endNeedles, plain }): Band => {
          const id = `motif-${motif + 1}`;
          const band: Band = {
            ...startBand(id, copies),
            groups: copies.map((across) => ({ ...startGroup(id, across), hasOwnBall: ownBalls })),
            position: { kind: 'from-row', row },
            endNeedles,
          };
          row += 8 + plain;
          return band;
        });
      }),
    );

/** The height of each drawing is made 8 so that bands stand where they are meant to. */
function withMotifsOf8(project: ProjectAt): ProjectAt {
  const motifs = project.motifs.map((motif) => {
    const { width, height, cells } = motif.grid;
    const all = new Uint8Array(width * 8).fill(project.mainYarn);
    for (let at = 0; at < all.length; at++) all[at] = cells[at % (width * height)] as number;
    return { ...motif, grid: { width, height: 8, cells: all } };
  });
  return { ...project, motifs };
}

const anySteps: fc.Arbitrary<readonly { gap: number; left: number; right: number }[]> = fc.array(
  fc.record({ gap: count(1, 6), left: count(-4, 4), right: count(-4, 4) }),
  { maxLength: 5 },
);

/** Shaped row by row, several stitches at an edge at a time. */
function shapedByRows(project: ProjectAt, given: readonly { gap: number; left: number; right: number }[]): ProjectAt {
  const { stitches, rows } = project.piece.shape;
  const steps: EdgeStep[] = [];
  let row = project.piece.hemRows + 2;
  for (const { gap, left, right } of given) {
    row += gap;
    if (row > rows - 2) break;
    steps.push({ row, left, right });
  }
  return { ...project, piece: { ...project.piece, shape: { kind: 'steps', stitches, rows, steps } } };
}

const anyStacked: fc.Arbitrary<ProjectAt> = fc
  .record({ project: anyProject, seed: fc.nat(1) })
  .chain(({ project }) =>
    stacked(project.motifs.length).map((bands) => ({ ...withMotifsOf8(project), patterns: bands })),
  );

const anyAllOver: fc.Arbitrary<ProjectAt> = fc
  .record({
    project: anyProject,
    firstRow: count(1, 12),
    endNeedles: fc.oneof({ arbitrary: fc.constant(true), weight: 3 }, fc.constant(false)),
  })
  .map(({ project, firstRow, endNeedles }): ProjectAt => {
    const fill: AllOver = { ...startAllOver('motif-1', firstRow + project.piece.hemRows), endNeedles };
    return { ...project, patterns: [fill] };
  });

/** Drawings as high as a section of rows: all in one contrast, of two or three yarns, or without any. */
const anyLine = (width: number, ground: number): fc.Arbitrary<readonly number[]> => {
  const others = [0, 1, 2].filter((yarn) => yarn !== ground) as [number, number];
  return fc.oneof(
    fc.constantFrom(...others).map((yarn) => new Array<number>(width).fill(yarn)),
    fc.constant(new Array<number>(width).fill(ground)),
    fc.constantFrom(...others).chain((yarn) => fc.array(fc.constantFrom(ground, yarn), sized(width))),
    fc.array(count(0, 2), sized(width)),
  );
};

const sized = (length: number) => ({ minLength: length, maxLength: length });

/** Lines that each go on for a few rows, so that yarns wait, are carried up, or are cut and joined again. */
const anyStriped: fc.Arbitrary<ProjectAt> = fc
  .record({
    project: anyProject,
    width: count(1, 9),
    isBand: fc.boolean(),
    copies: count(1, 3),
    endNeedles: fc.boolean(),
  })
  .chain((given) =>
    fc
      .array(fc.record({ line: anyLine(given.width, given.project.mainYarn), rows: count(1, 11) }), {
        minLength: 2,
        maxLength: 5,
      })
      .map((stripes) => ({ ...given, lines: stripes.flatMap(({ line, rows }) => new Array(rows).fill(line)) })),
  )
  .map(({ project, width, isBand, copies, endNeedles, lines }): ProjectAt => {
    const [motif] = project.motifs as [ProjectAt['motifs'][number]];
    const cells = Uint8Array.from(lines.flat() as number[]);
    // A drawing has a figure.
    if (cells.every((cell) => cell === project.mainYarn)) cells[0] = 1 - project.mainYarn;
    const grid = { width, height: lines.length, cells };
    const row = project.piece.hemRows + 2;
    const band: Band = { ...startBand('motif-1', [copies]), position: { kind: 'from-row', row }, endNeedles };
    const fill: AllOver = { ...startAllOver('motif-1', row), endNeedles };
    return {
      ...project,
      yarns: ALL_YARNS,
      motifs: [{ ...motif, grid }, ...project.motifs.slice(1).map((other) => ({ ...other, grid }))],
      patterns: [isBand ? band : fill],
    };
  });

/** Bands with an all-over above them. */
const anyBandsAndAllOver: fc.Arbitrary<ProjectAt> = fc
  .record({ project: anyStacked, plain: count(0, 3) })
  .map(({ project, plain }): ProjectAt => {
    const bands = project.patterns as readonly Band[];
    const { position } = bands.at(-1) as Band;
    const row = (position.kind === 'from-row' ? position.row : 1) + 8 + plain;
    return { ...project, patterns: [...bands, startAllOver('motif-1', row)] };
  });

const anyFloatLimit: fc.Arbitrary<FloatLimit> = fc.record({ stitches: count(0, 8), mm: fc.option(count(5, 45)) });

/** Rows of other yarns up a pattern: each yarn that is not main may stand for another. */
const anyColourOrder = (main: number): fc.Arbitrary<ColourOrder> => {
  const other = fc.constantFrom(...[0, 1, 2].filter((yarn) => yarn !== main));
  return fc.record({
    stripes: fc.array(
      fc.record({
        rows: count(1, 6),
        yarns: fc.uniqueArray(fc.record({ drawn: other, knitted: other }), {
          maxLength: 2,
          selector: ({ drawn }) => drawn,
        }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    repeats: fc.boolean(),
  });
};

/** Every fourth project has its patterns in other colours up the rows. */
const inAnyOrder = (project: ProjectAt): fc.Arbitrary<ProjectAt> =>
  fc.oneof({ arbitrary: fc.constant(null), weight: 3 }, anyColourOrder(project.mainYarn)).map((colourOrder) =>
    colourOrder === null
      ? project
      : {
          ...project,
          yarns: ALL_YARNS,
          patterns: project.patterns.map((pattern) => ({ ...pattern, colourOrder })),
        },
  );

/** Half of them wish for floats that are not too long, of main too. */
const wishedFor = fc.oneof(
  { arbitrary: fc.constant(null), weight: 2 },
  anyWish,
  anyWish.map((wish) => ({ ...wish, longest: Math.min(wish.longest, 4), isBehindFigure: true })),
);

/** Any of these, on any machine. */
export const anyKnittable: fc.Arbitrary<ProjectAt> = fc
  .record({
    project: fc.oneof(anyProject, anyFilledProject, anyStacked, anyAllOver, anyStriped, anyBandsAndAllOver),
    machine: anyMachine,
    steps: fc.oneof({ arbitrary: fc.constant(null), weight: 4 }, anySteps),
    floatLimit: fc.option(anyFloatLimit),
  })
  .map(({ project, machine, steps, floatLimit }) => {
    const shaped = steps === null ? project : shapedByRows(project, steps);
    const piece = floatLimit === null ? shaped.piece : { ...shaped.piece, floatLimit };
    return { ...shaped, machine, piece };
  })
  .chain(inAnyOrder)
  .chain((project) => wishedFor.map((wish) => (wish === null ? settled(project) : wishing(project, wish))));
