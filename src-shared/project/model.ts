/**
 * The one value a person works on.
 *
 * A `Project` is immutable. It changes only through `Change` (change.ts), and
 * all that is computed is a pure function of it. What each folder's values are
 * is said once, by the schemas in its `model.ts`; the types follow from there,
 * so that what is read from a file and what the program holds cannot drift
 * apart. Rules that hold between fields (cells within the palette, bands naming
 * motifs that exist, motifs sharing one ground) are checked here, so a
 * `Project` in memory never breaks them.
 */
import { machineSchema } from '../bed/index.ts';
import { CELL_LETTERS, linesSchema, MOST_COLOURS, type Grid } from '../grid/index.ts';
import { motifIdSchema, motifSchema, type Motif, type MotifId } from '../motif/index.ts';
import { bandSchema, fillSchema, MOST_PATTERNS } from '../pattern/index.ts';
import { MOST_NOTE_LETTERS, MOST_SIZES, pieceSchema, sizesSchema } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import { letters, refuse, upToLetters, z, type ReadonlyDeep } from '../schema/index.ts';

/** More motifs than any garment has. */
export const MOST_MOTIFS = 200;

/** Letters of the name of a project, and of a yarn. */
export const MOST_PROJECT_LETTERS = 120;
export const MOST_YARN_LETTERS = 80;

/** Thicker than any yarn. */
export const MOST_TEX = 10_000;

/** Letters of the data URLs of all pictures to trace, so that the file stays below what can be written. */
export const MOST_UNDERLAY_LETTERS_IN_ALL = 24_000_000;

const yarnSchema = z.strictObject({
  name: letters(MOST_YARN_LETTERS),
  /** `#rrggbb`, small letters. */
  colour: z.string().check(z.regex(/^#[0-9a-f]{6}$/)),
  /** Grams in 1000 m (ISO 1144), or null if not known. */
  tex: z.nullable(z.number().check(z.gt(0), z.lte(MOST_TEX))),
});
export interface Yarn extends ReadonlyDeep<z.infer<typeof yarnSchema>> {}

/** The fields of a project, in the order of the file. */
export const projectFields = {
  name: letters(MOST_PROJECT_LETTERS),
  /** For whoever knits it. */
  notes: upToLetters(MOST_NOTE_LETTERS),
  machine: machineSchema,
  /** The palette: cells hold indices into it. */
  yarns: z.array(yarnSchema).check(z.minLength(1), z.maxLength(MOST_COLOURS)),
  motifs: z.array(motifSchema).check(z.minLength(1), z.maxLength(MOST_MOTIFS)),
  piece: pieceSchema,
  sizes: sizesSchema,
  bands: z.array(bandSchema).check(z.maxLength(MOST_PATTERNS)),
  fills: z.array(fillSchema).check(z.maxLength(MOST_PATTERNS)),
};

export interface Project extends ReadonlyDeep<z.infer<z.ZodMiniObject<typeof projectFields>>> {}

export const layingSchema = z.strictObject({
  name: z.enum(['move', 'paste', 'lettering']),
  motif: motifIdSchema,
  /** Its rows as a project file has them; whether its cells are yarns is known with the project. */
  rows: linesSchema,
  /** They are letters that read on the chart: from then on the motif must not be seen mirrored. */
  isLettering: z.boolean(),
});
/** Cells in hand that are not laid yet (`laying.ts`): the motif as it would be if they were laid where they are. */
export interface Laying extends ReadonlyDeep<z.infer<typeof layingSchema>> {}

/** What is being checked, its fields each right by themselves. */
type Checked = z.core.ParsePayload<Project>;

/** Refuses fields that contradict each other. */
export function checkTogether(payload: Checked): void {
  // A motif that is wrong by itself has not become one.
  if (payload.issues.length > 0) return;
  checkMotifs(payload);
  checkSizes(payload);
  checkMotifsNamed(payload);
}

function checkMotifs(payload: Checked): void {
  const { yarns, motifs } = payload.value;
  const ids = new Set<MotifId>();
  const inAll = motifs.reduce((sum, { underlay }) => sum + (underlay?.picture.length ?? 0), 0);
  if (inAll > MOST_UNDERLAY_LETTERS_IN_ALL) refuse(payload, ['motifs'], 'underlays-too-large', {});
  motifs.forEach(({ id, ground, grid }, m) => {
    if (ids.has(id)) refuse(payload, ['motifs', m, 'id'], 'twice', { name: id });
    ids.add(id);
    if (ground >= yarns.length) refuse(payload, ['motifs', m, 'ground'], 'yarn-missing', {});
    if (ground !== motifs[0]?.ground) refuse(payload, ['motifs', m, 'ground'], 'ground-differs', {});
    const at = firstBeyond(grid, yarns.length);
    if (at === null) return;
    const fromTop = grid.height - 1 - Math.floor(at / grid.width);
    const letter = CELL_LETTERS.charAt(grid.cells[at] as number);
    refuse(payload, ['motifs', m, 'rows', fromTop], 'letter-without-yarn', { letter });
  });
}

/** Index of the first cell, in the order in which a file has them, that holds none of so many yarns; null if there is none. */
function firstBeyond({ width, height, cells }: Grid, yarns: number): number | null {
  for (let row = height - 1; row >= 0; row--) {
    for (let at = row * width; at < (row + 1) * width; at++) if ((cells[at] as number) >= yarns) return at;
  }
  return null;
}

function checkSizes(payload: Checked): void {
  const { name, smaller, larger } = payload.value.sizes;
  if (smaller.length + 1 + larger.length > MOST_SIZES) refuse(payload, ['sizes'], 'too-many', { most: MOST_SIZES });
  const names = new Set([name]);
  for (const [side, sizes] of Object.entries({ smaller, larger })) {
    sizes.forEach((size, s) => {
      if (names.has(size.name)) refuse(payload, ['sizes', side, s, 'name'], 'twice', { name: size.name });
      names.add(size.name);
    });
  }
}

function checkMotifsNamed(payload: Checked): void {
  const { motifs, bands, fills } = payload.value;
  const ids = new Set(motifs.map(({ id }) => id));
  bands.forEach(({ groups }, b) => {
    groups.forEach(({ motif }, g) => {
      if (!ids.has(motif)) refuse(payload, ['bands', b, 'groups', g, 'motif'], 'motif-missing', { motif });
    });
  });
  fills.forEach(({ motif }, f) => {
    if (!ids.has(motif)) refuse(payload, ['fills', f, 'motif'], 'motif-missing', { motif });
  });
}

/** The motif called `id`. Throws `motif-missing`. */
export function motifOf({ motifs }: Pick<Project, 'motifs'>, id: MotifId): Motif {
  const motif = motifs.find((candidate) => candidate.id === id);
  if (!motif) throw problemError('motif-missing', { motif: id });
  return motif;
}

/** Palette index of the yarn of the plain fabric: the ground that all motifs share. */
export function mainYarn({ motifs }: Pick<Project, 'motifs'>): number {
  return motifs[0]?.ground ?? 0;
}
