/**
 * The contract between the renderer and the services behind it.
 *
 * Each method has a schema for what goes in and what comes out. Electron's IPC
 * and the browser host's HTTP carry the same messages and validate them with
 * this one table, so a service is written once and neither shell knows its
 * methods by name.
 */
import type { Shows } from '../bed/index.ts';
import { daySchema } from '../day/index.ts';
import type { LengthUnit } from '../length/index.ts';
import { underlayFieldsSchema } from '../motif/index.ts';
import type { Outcome } from '../problem/index.ts';
import { layingSchema } from '../project/index.ts';
import { upToLetters, z, type ReadonlyDeep } from '../schema/index.ts';
import * as collection from './collection-contract.ts';
import type { WindowCommand } from './commands.ts';
import { bytesSchema, emptySchema, pathSchema, stampSchema } from './fields-contract.ts';
import * as knitting from './knitting-contract.ts';
import { settingsSchema, settingsSetSchema } from './settings-contract.ts';

const empty = emptySchema;
const path = pathSchema;
const stamp = stampSchema;
const bytes = bytesSchema;

/** An id that a window made: of itself, of its browser, of a work. */
const id = z.string().check(z.regex(/^[a-z0-9-]{8,64}$/));
/** As `Date.toISOString` has it, so that texts sort as times do. */
const time = z.iso.datetime({ precision: 3 });
/** Counts what was kept of one work, from 1. */
const edition = z.int().check(z.gte(1));

/** The SHA-256 of a picture. */
const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));

/** Unsaved work as a window gives it to be kept. */
const keptWork = z.strictObject({
  window: id,
  /** The same for all windows of a browser on an address: they can tell which of them are open. */
  browser: id,
  work: id,
  edition,
  keptAt: time,
  name: upToLetters(300),
  text: upToLetters(60_000_000),
  file: z.nullable(z.strictObject({ path, stamp })),
  /** What is in hand besides, and not in the text yet; null: nothing. */
  laying: z._default(z.nullable(layingSchema), null),
});

/** What became of unsaved work since the edition before. */
const keptSince = z.strictObject({
  window: id,
  work: id,
  edition,
  keptAt: time,
  /** As `editsToText` has them. */
  edits: upToLetters(60_000_000),
  file: z.nullable(z.strictObject({ path, stamp })),
  laying: z.nullable(layingSchema),
});

/** Who asks for kept work, and which windows of its browser are open. */
const asking = z.strictObject({ window: id, browser: id, open: z.array(id).check(z.maxLength(1000)) });

const keptEntry = z.strictObject({
  id: upToLetters(200),
  /** `own`: of this very window, before it was loaded again. */
  of: z.enum(['own', 'ended-run', 'closed-window']),
  /** Empty for what was kept before works had names. */
  work: upToLetters(64),
  /** Null: it is damaged, or a newer program kept it. It stays where it is. */
  kept: z.nullable(z.strictObject({ name: z.string(), path: z.nullable(path), keptAt: time })),
  /** The file that holds it. */
  place: path,
});
/** What must be at a path for it to be written: nothing, or the version that was seen. */
const expectation = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('nothing') }),
  z.strictObject({ kind: z.literal('version'), stamp }),
]);

/** Where a project would be saved, and what is there. */
const target = z.strictObject({
  path,
  name: z.string(),
  /** The version that would be replaced, or null. */
  there: z.nullable(stamp),
  /** True if it would be replaced and nobody has been asked. */
  mustAsk: z.boolean(),
});

const namedVersion = z.strictObject({ name: upToLetters(300), stamp });

const recentEntry = z.strictObject({ path, name: z.string(), exists: z.boolean() });

/** Files a project can be turned into, and what they are made of: its placed motifs, one file each, or the plan of the piece. */
export const exportSources = {
  'chart-png': 'motifs',
  'chart-svg': 'motifs',
  'sheet-pdf': 'plan',
  'rows-csv': 'plan',
} as const;
export type ExportKind = keyof typeof exportSources;
export const exportKinds = Object.keys(exportSources) as readonly ExportKind[];
export const paperSizes = ['a4', 'letter'] as const;
/** Which way round charts are drawn on the sheet: as on the needles, as worn, or both. */
export const chartSides = ['both', 'needles', 'worn'] as const satisfies readonly ('both' | Shows)[];
/** Of which pieces, and in which sizes, files are made: the one that is looked at, or all. */
const scopeSchema = z.strictObject({ pieces: z.enum(['this', 'all']), sizes: z.enum(['this', 'all']) });
const lengthUnits = ['cm', 'in'] as const satisfies readonly LengthUnit[];

export const contract = {
  'host.describe': {
    params: empty,
    result: z.strictObject({
      shell: z.enum(['electron', 'browser']),
      /** True where the platform's own file dialogs can be asked for. */
      hasFileDialogs: z.boolean(),
      /** True where the platform's own print dialog can be asked for; else the page prints itself. */
      hasPrintDialog: z.boolean(),
      version: z.string(),
      homeFolder: path,
      /** A project to open at the start, or null. */
      openAtStart: z.nullable(path),
    }),
  },
  /** The platform's dialog for a file to open; null if the person gave up. */
  /** A project or a picture, or a picture alone. */
  'dialogs.openFile': { params: z.strictObject({ what: z.enum(['any', 'picture']) }), result: z.nullable(path) },
  'dialogs.saveFile': { params: z.strictObject({ suggestedName: upToLetters(200) }), result: z.nullable(target) },
  'dialogs.chooseFolder': { params: empty, result: z.nullable(path) },

  /** What a folder holds that the program opens or writes, for the file panel of the browser host. Null: the home folder. */
  'folders.list': {
    params: z.strictObject({ folder: z.nullable(path) }),
    result: z.strictObject({
      folder: path,
      parent: z.nullable(path),
      /** `other`: a file that the program writes and does not open. */
      entries: z.array(z.strictObject({ name: z.string(), kind: z.enum(['folder', 'project', 'picture', 'other']) })),
    }),
  },

  /** A file that the program opens: a project, or a picture. */
  'documents.read': {
    params: z.strictObject({ path }),
    result: z.strictObject({ path, name: z.string(), bytes, stamp }),
  },
  /** Where a project goes that is saved in that folder under the name typed: this adds the ending. */
  'documents.target': {
    params: z.strictObject({ folder: path, name: upToLetters(1000) }),
    result: target,
  },
  /** Writes a project whole or not at all, if it can be opened again and what is at the path is what is expected. */
  'documents.write': {
    params: z.strictObject({ path, text: upToLetters(60_000_000), expect: expectation }),
    result: z.strictObject({ path, name: z.string(), stamp }),
  },
  'documents.recent': { params: empty, result: z.array(recentEntry) },
  'documents.forgetRecent': { params: z.strictObject({ path }), result: z.array(recentEntry) },

  /** What a person set for the program on this machine, from run to run. */
  'settings.read': { params: empty, result: settingsSchema },
  /** Keeps what a person set; what is left out stays as it was kept, since another window may have set it. */
  'settings.keep': {
    params: settingsSetSchema,
    result: empty,
  },

  'collection.list': collection.collectionList,
  'collection.look': collection.collectionLook,
  'collection.read': collection.collectionRead,
  'collection.keep': collection.collectionKeep,
  'collection.choose': collection.collectionChoose,

  'knitting.begin': knitting.knittingBegin,
  'knitting.read': knitting.knittingRead,
  'knitting.since': knitting.knittingSince,
  'knitting.append': knitting.knittingAppend,
  'knitting.list': knitting.knittingList,
  'knitting.savedAs': knitting.knittingSavedAs,

  /**
   * Keeps unsaved work aside. Each window keeps each work of its own under its
   * own name; of one work, an edition is kept over lower ones alone. Where the
   * text names pictures that are not there, nothing is kept, and the answer says
   * which are `missing`.
   */
  'recovery.keep': {
    params: keptWork,
    result: z.strictObject({ missing: z.optional(z.array(hash)) }),
  },
  /** A picture to trace, which the work of this window goes on to name by the hash that is answered (`picturesApart`). */
  'recovery.picture': {
    params: z.strictObject({ window: id, picture: underlayFieldsSchema.shape.picture }),
    result: z.strictObject({ hash }),
  },
  /**
   * Keeps what changed of a work since its edition before this one, behind that.
   * Where that is not there to be followed, nothing is kept, and the work is to
   * be given whole.
   */
  'recovery.append': { params: keptSince, result: z.strictObject({ isKept: z.boolean() }) },
  /** Work that was kept and can be had: of this window, of runs that have ended, of windows that were closed. */
  'recovery.find': {
    params: z.strictObject({ asking }),
    result: z.array(keptEntry),
  },
  /** Gives kept work to the window that asks, and to no other after it; null if another was quicker. */
  'recovery.take': {
    params: z.strictObject({ asking, id: upToLetters(200) }),
    result: z.nullable(
      z.strictObject({
        work: id,
        edition,
        text: z.string(),
        /** Where the project stands, and which version of it the work began from; null: in no file that is known. */
        file: z.nullable(z.strictObject({ path, name: z.string(), stamp })),
        keptAt: time,
        laying: z.nullable(layingSchema),
      }),
    ),
  },
  /** The work of this window is saved, or its person has let it go. */
  'recovery.drop': { params: z.strictObject({ window: id, work: id }), result: empty },

  /**
   * Writes files made from the project (its file text) into a folder and says
   * which, each whole or not at all. Where files of these names are there that
   * the person has not answered about as they are now, nothing is written, and
   * the answer says which to ask about.
   */
  'exports.write': {
    params: z.strictObject({
      project: upToLetters(60_000_000),
      /** Ids of the piece and the size of it that the files are of; the first if left out. */
      at: z.optional(z.strictObject({ piece: z.string(), size: z.string() })),
      /** Files of that piece in that size alone, if left out. */
      scope: z.optional(scopeSchema),
      /** Names this call for `exports.howFar` and `exports.stop`. */
      run: z.optional(id),
      folder: path,
      kinds: z.array(z.enum(exportKinds)).check(z.minLength(1)),
      paper: z.enum(paperSizes),
      /** The date on the sheet and in the files: the one that the window shows. */
      date: daySchema,
      /** What the fabric is measured in on the sheet; cm if left out. */
      lengthUnit: z.optional(z.enum(lengthUnits)),
      /** Which charts the sheet has; both if left out. */
      charts: z.optional(z.enum(chartSides)),
      /**
       * What the person said of files that are there: nothing yet; to replace
       * those that were seen; to keep both, the new ones with a number.
       */
      there: z.discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('ask') }),
        z.strictObject({ kind: z.literal('replace'), seen: z.array(namedVersion).check(z.maxLength(10_000)) }),
        z.strictObject({ kind: z.literal('number') }),
      ]),
    }),
    result: z.discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('written'),
        folder: path,
        files: z.array(z.strictObject({ path, bytes: z.number() })),
      }),
      z.strictObject({ kind: z.literal('asks'), folder: path, there: z.array(namedVersion) }),
      /** The person gave up before the first was written. */
      z.strictObject({ kind: z.literal('stopped') }),
    ]),
  },
  /** How many files of how many a call of `exports.write` has made; null where none of that name is going on. */
  'exports.howFar': {
    params: z.strictObject({ run: id }),
    result: z.nullable(z.strictObject({ made: z.int(), of: z.int() })),
  },
  /** Gives up a call of `exports.write` that has written nothing yet; else it goes on to its end. */
  'exports.stop': { params: z.strictObject({ run: id }), result: empty },

  /** The platform's dialog to print what the window lays out for a printer; `isPrinted` is false if the person gave up. */
  'window.print': {
    params: z.strictObject({ paper: z.enum(paperSizes) }),
    result: z.strictObject({ isPrinted: z.boolean() }),
  },

  /** Tells the shell whether closing the window would lose work, and what to call it. */
  'window.setState': {
    params: z.strictObject({
      title: upToLetters(300),
      isUnsaved: z.boolean(),
      path: z.nullable(path),
      /** True while the browser's own storage holds work; the browser's profile is then not thrown away. */
      holdsWork: z.optional(z.boolean()),
    }),
    result: empty,
  },
} as const satisfies Record<string, { params: z.ZodMiniType; result: z.ZodMiniType }>;

export type Method = keyof typeof contract;
export type Params<M extends Method> = ReadonlyDeep<z.infer<(typeof contract)[M]['params']>>;
export type Result<M extends Method> = ReadonlyDeep<z.infer<(typeof contract)[M]['result']>>;

/** Services behind the contract: one function a method. Throws `ProblemError` for what a person should be told. */
export type Services = { readonly [M in Method]: (params: Params<M>) => Promise<Result<M>> };

/** What the shell tells the renderer unasked. */
export type HostEvent =
  | { readonly kind: 'command'; readonly command: WindowCommand }
  | { readonly kind: 'open'; readonly path: string }
  /** The window is about to close with unsaved work; answer by saving or asking. */
  | { readonly kind: 'closing' };

/** What the renderer holds: calls to services, and the shell's events. */
export interface Host {
  call<M extends Method>(method: M, params: Params<M>): Promise<Outcome<Result<M>>>;
  /** Returns a function that stops listening. */
  listen(listener: (event: HostEvent) => void): () => void;
}
