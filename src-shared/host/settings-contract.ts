/** What a person set for the program on their machine. */
import { machineSaidSchema } from '../bed/index.ts';
import { letters, whole, z } from '../schema/index.ts';
import { pathSchema } from './fields-contract.ts';

/** How large a window opens until a person has made it another size. */
export const START_WINDOW = { width: 1280, height: 800 } as const;

/** The smallest that a window is opened. */
export const LEAST_WINDOW = { width: 480, height: 400 } as const;

/** Larger than any screen, or wall of screens. */
const MOST_PIXELS = 20_000;

/** How large the window is, its frame counted, in CSS pixels. */
const windowSize = z.strictObject({
  width: whole(LEAST_WINDOW.width, MOST_PIXELS),
  height: whole(LEAST_WINDOW.height, MOST_PIXELS),
});

/** Where files were chosen last in the program's own panel, by what they were for. Null: nowhere yet. */
const lastFolders = z.strictObject({
  projects: z.nullable(pathSchema),
  pictures: z.nullable(pathSchema),
  exports: z.nullable(pathSchema),
});
export type LastFolders = z.infer<typeof lastFolders>;

export const NO_LAST_FOLDERS: LastFolders = { projects: null, pictures: null, exports: null };

/** What helps a person at the machine. */
const aidsSchema = z.strictObject({
  /** Rows are said aloud. */
  speaks: z.enum(['no', 'short', 'long']),
  /** A tone where hands are needed. */
  sounds: z.boolean(),
  /** How long it takes yet is told. */
  tellsTime: z.boolean(),
  /** The side of the fabric that is drawn. */
  sees: z.enum(['purl', 'knit']),
  /** A key of the person's own that ends a row, as `KeyboardEvent.key` has it; null: none. */
  key: z.nullable(letters(32)),
});
export type Aids = z.infer<typeof aidsSchema>;

/** As they are until a person sets them: nothing is heard unasked. */
export const START_AIDS: Aids = { speaks: 'no', sounds: false, tellsTime: true, sees: 'purl', key: null };

export const settingsSchema = z.strictObject({
  /** Shortcuts of a single key act. */
  singleKeys: z.boolean(),
  /** What the person's machine can do: that of new projects. Null until it was asked. */
  machine: z._default(z.nullable(machineSaidSchema), null),
  /**
   * The folder of the collection. Null: one beside these settings. A window does
   * not set it here: what it chooses is looked at first.
   */
  collection: z._default(z.nullable(pathSchema), null),
  /** As the window was left. Null until it was made another size than that of the start. */
  window: z._default(z.nullable(windowSize), null),
  lastFolders: z._default(lastFolders, NO_LAST_FOLDERS),
  aids: z._default(aidsSchema, START_AIDS),
});

/** What is set now; what is left out stays. */
export const settingsSetSchema = z.strictObject({
  singleKeys: z.optional(z.boolean()),
  machine: z.optional(machineSaidSchema),
  window: z.optional(windowSize),
  lastFolders: z.optional(lastFolders),
  aids: z.optional(aidsSchema),
});
