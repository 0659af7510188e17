/**
 * What a project file may hold. Everything that comes from outside passes here.
 *
 * Rules that hold between fields (cells within the palette, bands naming
 * motifs that exist, motifs sharing one ground) are checked here too, so a
 * `Project` in memory never breaks them.
 */
import { z } from 'zod';
import { MOST_COLOURS, MOST_COLUMNS, MOST_ROWS } from '../grid/index.ts';
import { FIRST_SHAPED_ROW, GAUGE_BOUNDS, MOST_PARTS, MOST_STITCHES } from '../piece/index.ts';

/** One character a cell; index in this string = palette index. */
export const CELL_LETTERS = '.X23456789ABCDEFGHIJKLMNOPQRSTUVWYZabcdefghijklmnopqrstuvwxyz+-=';

export const FILE_FORMAT = 'walewright';
export const FILE_VERSION = 3;

/** More motifs than any garment has. */
export const MOST_MOTIFS = 200;

/** More sizes than any pattern comes in. */
export const MOST_SIZES = 20;

/** Letters of a size's name: it heads a column of numbers. */
export const MOST_SIZE_LETTERS = 24;

const count = (most: number) => z.int().min(0).max(most);
const atLeastOne = (most: number) => z.int().min(1).max(most);
const inTenCm = (of: keyof typeof GAUGE_BOUNDS) => z.number().min(GAUGE_BOUNDS[of].least).max(GAUGE_BOUNDS[of].most);
const side = z.enum(['left', 'right']);

export { MOST_STITCHES };
/** More rows than any piece has. */
export const MOST_PIECE_ROWS = 4000;

/** Letters of the name of a piece or of one of its sections. */
export const MOST_NAME_LETTERS = 80;

export const yarnSchema = z.strictObject({
  name: z.string().min(1).max(80),
  colour: z.string().regex(/^#[0-9a-f]{6}$/),
  tex: z.number().positive().max(10000).nullable(),
});

/** Letters of the data URL of one picture to trace: 1600 × 1600 pixels as a good JPEG stay below it. */
export const MOST_UNDERLAY_LETTERS = 3_000_000;

/** Letters of all of them, so that the file stays below what can be written. */
export const MOST_UNDERLAY_LETTERS_IN_ALL = 24_000_000;

/** How far a picture to trace may lie from the chart, and how large it may be, in cells. */
export const FARTHEST_UNDERLAY = 10_000;

export const underlaySchema = z.strictObject({
  picture: z
    .string()
    .max(MOST_UNDERLAY_LETTERS)
    .regex(/^data:image\/(png|jpeg);base64,[A-Za-z0-9+/]+={0,2}$/),
  left: z.number().min(-FARTHEST_UNDERLAY).max(FARTHEST_UNDERLAY),
  bottom: z.number().min(-FARTHEST_UNDERLAY).max(FARTHEST_UNDERLAY),
  columns: z.number().min(1).max(FARTHEST_UNDERLAY),
  rows: z.number().min(1).max(FARTHEST_UNDERLAY),
  opacity: z.number().min(0).max(1),
  isShown: z.boolean(),
});

export const motifSchema = z.strictObject({
  id: z.string().min(1).max(40),
  name: z.string().min(1).max(80),
  ground: count(MOST_COLOURS - 1),
  shows: z.enum(['worn', 'needles']),
  isLettering: z.boolean(),
  underlay: underlaySchema.nullable(),
  /** Topmost row first, as the chart is read by eye. */
  rows: z.array(z.string().min(1).max(MOST_COLUMNS)).min(1).max(MOST_ROWS),
});

/** Stitches more or fewer at an edge. */
const change = z.int().min(-999).max(999);

const shapeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('rectangle'),
    stitches: atLeastOne(MOST_STITCHES),
    rows: atLeastOne(MOST_PIECE_ROWS),
  }),
  z.strictObject({
    kind: z.literal('tapered'),
    stitches: atLeastOne(MOST_STITCHES),
    stitchesAtTop: atLeastOne(MOST_STITCHES),
    rows: atLeastOne(MOST_PIECE_ROWS),
    straightRows: count(MOST_PIECE_ROWS),
  }),
  z.strictObject({
    kind: z.literal('body'),
    stitches: atLeastOne(MOST_STITCHES),
    stitchesAtWaist: atLeastOne(MOST_STITCHES),
    stitchesAtChest: atLeastOne(MOST_STITCHES),
    rowsToWaist: count(MOST_PIECE_ROWS),
    rowsToChest: count(MOST_PIECE_ROWS),
    rows: atLeastOne(MOST_PIECE_ROWS),
  }),
  z.strictObject({
    kind: z.literal('steps'),
    stitches: atLeastOne(MOST_STITCHES),
    rows: atLeastOne(MOST_PIECE_ROWS),
    steps: z
      .array(z.strictObject({ row: z.int().min(FIRST_SHAPED_ROW).max(9999), left: change, right: change }))
      .max(MOST_PIECE_ROWS)
      .superRefine((steps, context) => {
        steps.forEach(({ row }, s) => {
          if (row <= (steps[s - 1]?.row ?? 0)) {
            context.addIssue({ code: 'custom', path: [s, 'row'], message: 'must be above the row before it' });
          }
        });
      }),
  }),
]);

const gaugeSchema = z.strictObject({ stitches: inTenCm('stitches'), rows: inTenCm('rows') });

const partName = z.string().min(1).max(MOST_NAME_LETTERS);

const partsSchema = z
  .array(
    z.strictObject({
      name: partName,
      rows: atLeastOne(MOST_PIECE_ROWS),
      isLined: z.boolean(),
      gauge: gaugeSchema.nullable(),
    }),
  )
  .max(MOST_PARTS)
  .superRefine((parts, context) => {
    const names = new Set<string>();
    parts.forEach(({ name }, p) => {
      if (names.has(name)) context.addIssue({ code: 'custom', path: [p, 'name'], message: `"${name}" stands twice` });
      names.add(name);
    });
  });

/** A part that is gone may still be named: the plan says so, and nothing is lost. */
const sectionNames = [z.enum(['hem-back', 'hem-front', 'body']), z.strictObject({ part: partName })] as const;

const positionSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('centred'),
    section: z.union([z.enum(['shown', 'piece']), ...sectionNames]),
    oddRow: z.enum(['below', 'above']),
  }),
  z.strictObject({
    kind: z.literal('from-edge'),
    edge: z.enum(['lower', 'upper']),
    section: z.union([z.literal('piece'), ...sectionNames]),
    rows: count(MOST_PIECE_ROWS),
  }),
  z.strictObject({ kind: z.literal('above-hem') }),
  z.strictObject({ kind: z.literal('from-row'), row: atLeastOne(MOST_PIECE_ROWS) }),
]);

export const pieceSchema = z.strictObject({
  name: z.string().min(1).max(80),
  shape: shapeSchema,
  oddStitch: side,
  offset: z.int().min(-MOST_STITCHES).max(MOST_STITCHES),
  hemRows: count(MOST_PIECE_ROWS),
  hem: z.strictObject({ hasTurningRow: z.boolean(), gauge: gaugeSchema.nullable() }),
  parts: partsSchema,
  gauge: gaugeSchema,
  bed: z.strictObject({ needles: atLeastOne(MOST_STITCHES).nullable(), pitchMm: z.number().min(1).max(30) }),
  seamAllowance: z.strictObject({ left: count(50), right: count(50) }),
  finishedFace: z.enum(['knit', 'purl']),
  isInfant: z.boolean(),
  isLined: z.boolean(),
  startSide: side,
  endNeedleSelection: z.boolean(),
  floatLimit: z.strictObject({ stitches: count(MOST_STITCHES), mm: z.number().min(0).max(1000).nullable() }),
});

/** No blanks at either end, so that what looks alike is alike. */
export const sizeNameSchema = z
  .string()
  .max(MOST_SIZE_LETTERS)
  .regex(/^\S(.*\S)?$/);

const sizeSchema = z.strictObject({
  name: sizeNameSchema,
  shape: shapeSchema,
  hemRows: count(MOST_PIECE_ROWS),
});

const sizesSchema = z.strictObject({
  name: sizeNameSchema,
  smaller: z.array(sizeSchema).max(MOST_SIZES - 1),
  larger: z.array(sizeSchema).max(MOST_SIZES - 1),
});

const solvedRules = [
  z.strictObject({ kind: z.literal('seam') }),
  z.strictObject({ kind: z.literal('even') }),
  z.strictObject({ kind: z.literal('margins'), stitches: count(MOST_STITCHES) }),
  z.strictObject({ kind: z.literal('gaps'), stitches: count(MOST_STITCHES) }),
] as const;

const firstNeedles = z
  .array(z.string().regex(/^[LR][1-9]\d{0,3}$/))
  .min(1)
  .max(100);

const ruleSchema = z.discriminatedUnion('kind', [
  ...solvedRules,
  z.strictObject({
    kind: z.literal('by-hand'),
    first: firstNeedles,
    before: z.strictObject({ rule: z.discriminatedUnion('kind', solvedRules), choice: count(1000) }).optional(),
  }),
]);

const cutCopiesSchema = z.enum(['kept', 'kept-if-read', 'left-out']);

export const bandSchema = z.strictObject({
  groups: z
    .array(
      z.strictObject({
        motif: z.string(),
        across: atLeastOne(MOST_STITCHES),
        acrossInSizes: z
          .array(z.strictObject({ size: sizeNameSchema, across: atLeastOne(MOST_STITCHES) }))
          .max(MOST_SIZES)
          .optional(),
        up: atLeastOne(MOST_PIECE_ROWS),
        isMirrored: z.boolean(),
        rise: count(MOST_PIECE_ROWS),
        hasOwnBall: z.boolean(),
      }),
    )
    .min(1)
    .max(100),
  unit: z.enum(['repeat', 'whole']),
  rule: ruleSchema,
  judge: z.enum(['figure', 'blocks']),
  choice: count(1000),
  chosenInSizes: z
    .array(z.strictObject({ size: sizeNameSchema, choice: count(1000), first: firstNeedles.nullable() }))
    .max(MOST_SIZES)
    .optional(),
  position: positionSchema,
  cutCopies: cutCopiesSchema,
});

/** Stitches to the left or right. */
const sideways = z.int().min(-MOST_STITCHES).max(MOST_STITCHES);

export const fillSchema = z
  .strictObject({
    motif: z.string(),
    unit: z.enum(['repeat', 'whole']),
    isMirrored: z.boolean(),
    firstRow: atLeastOne(MOST_PIECE_ROWS),
    lastRow: atLeastOne(MOST_PIECE_ROWS).nullable(),
    border: z.strictObject({ left: count(MOST_STITCHES), right: count(MOST_STITCHES) }),
    centre: z.enum(['column', 'between']),
    shift: sideways,
    step: sideways,
    cutCopies: cutCopiesSchema,
  })
  .refine(({ firstRow, lastRow }) => lastRow === null || lastRow >= firstRow, {
    path: ['lastRow'],
    message: 'must not be below the first row',
  });

export const projectFileSchema = z
  .strictObject({
    format: z.literal(FILE_FORMAT),
    version: z.literal(FILE_VERSION),
    name: z.string().min(1).max(120),
    yarns: z.array(yarnSchema).min(1).max(MOST_COLOURS),
    motifs: z.array(motifSchema).min(1).max(MOST_MOTIFS),
    piece: pieceSchema,
    sizes: sizesSchema,
    bands: z.array(bandSchema).max(100),
    fills: z.array(fillSchema).max(100),
  })
  .superRefine((file, context) => {
    const refuse = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
    const ids = new Set<string>();
    const letters = file.motifs.reduce((sum, { underlay }) => sum + (underlay?.picture.length ?? 0), 0);
    if (letters > MOST_UNDERLAY_LETTERS_IN_ALL) refuse(['motifs'], 'hold more pictures to trace than a file takes');
    file.motifs.forEach((motif, m) => {
      if (ids.has(motif.id)) refuse(['motifs', m, 'id'], `"${motif.id}" stands twice`);
      ids.add(motif.id);
      if (motif.ground >= file.yarns.length) refuse(['motifs', m, 'ground'], 'names no yarn of the palette');
      if (motif.ground !== file.motifs[0]?.ground) refuse(['motifs', m, 'ground'], 'differs from the first motif');
      const width = motif.rows[0]?.length;
      motif.rows.forEach((row, r) => {
        if (row.length !== width) refuse(['motifs', m, 'rows', r], `has ${row.length} cells, the first has ${width}`);
        for (const letter of row) {
          const index = CELL_LETTERS.indexOf(letter);
          if (index < 0 || index >= file.yarns.length) {
            refuse(['motifs', m, 'rows', r], `"${letter}" names no yarn of the palette`);
            break;
          }
        }
      });
    });
    const { name, smaller, larger } = file.sizes;
    const names = new Set([name]);
    if (smaller.length + 1 + larger.length > MOST_SIZES) refuse(['sizes'], `are more than ${MOST_SIZES}`);
    for (const [side, sizes] of Object.entries({ smaller, larger })) {
      sizes.forEach((size, s) => {
        if (names.has(size.name)) refuse(['sizes', side, s, 'name'], `"${size.name}" stands twice`);
        names.add(size.name);
      });
    }
    file.bands.forEach((band, b) => {
      band.groups.forEach((group, g) => {
        if (!ids.has(group.motif)) refuse(['bands', b, 'groups', g, 'motif'], `no motif is called "${group.motif}"`);
      });
    });
    file.fills.forEach(({ motif }, f) => {
      if (!ids.has(motif)) refuse(['fills', f, 'motif'], `no motif is called "${motif}"`);
    });
  });

export type ProjectFile = z.infer<typeof projectFileSchema>;
