/**
 * A file of kept work as it grows: the work whole, as it was when the file was
 * written, and after it a line for each time that something was kept since.
 *
 * A line has the edits since the one before, and a hash of itself and of all
 * before it, so that it is believed only where it was written. What a file holds
 * is the state after its last line that is right: a line that breaks off (the
 * program was ended while it was written) costs itself alone.
 */
import { createHash } from 'node:crypto';
import { outcome } from '@shared/problem/index.ts';
import {
  carryingOutKept,
  layingSchema,
  projectFromText,
  projectToText,
  type Laying,
  type Project,
} from '@shared/project/index.ts';
import { z } from '@shared/schema/index.ts';
import { endOfWhole, keptFileFromText, type KeptFile } from './kept-file.ts';

/** What was kept after an edition that the file has. */
export interface KeptSince extends Pick<KeptFile, 'edition' | 'keptAt' | 'file'> {
  /** What changed since, as `editsToText` has it. */
  readonly edits: string;
  readonly laying: Laying | null;
}

/**
 * What stands behind the last line that is right: nothing, a line that breaks
 * off, or something that should not be there. That may hold work, though nobody
 * can tell which: the file is not to be lost.
 */
export type Rest = 'none' | 'broken-off' | 'damaged';

export interface KeptWork extends KeptFile {
  readonly rest: Rest;
}

/** The hash of a line and of all before it, or of the work as it was written whole. */
export type Mark = string;

/** What `editsToText` makes of none. */
const NO_EDITS = '[]';

const LINE = /^\+([0-9a-f]{64}) (.*)$/;

const since = z.strictObject({
  edition: z.int(),
  keptAt: z.iso.datetime({ precision: 3 }),
  file: z.nullable(z.strictObject({ path: z.string(), stamp: z.string() })),
  edits: z.string(),
  laying: z.nullable(layingSchema),
});

/** The line, and the mark that the next one follows. */
export function lineOf(
  { edition, keptAt, file, edits, laying }: KeptSince,
  after: Mark,
): { readonly line: string; readonly mark: Mark } {
  const facts = JSON.stringify({ edition, keptAt, file, edits, laying });
  const mark = markOf(after, facts);
  return { line: `+${mark} ${facts}\n`, mark };
}

/** What was kept, or null if not even the work that the file began with is whole, or a newer program kept it. */
export function keptWorkFromText(content: string): KeptWork | null {
  const end = endOfWhole(content);
  const whole = end && keptFileFromText(content.slice(0, end.at));
  if (!whole) return null;
  const lines = content.slice(end.at).split('\n');
  const brokenOff = lines.pop() as string;
  const { states, isDamaged } = readLines(whole, lines, end.mark);
  const last = states.findLastIndex(canBeOpened);
  const isAll = !isDamaged && last === states.length - 1;
  const rest = !isAll ? 'damaged' : brokenOff === '' ? 'none' : 'broken-off';
  const { project: read = null, ...facts } = states[last] ?? {};
  const project = read?.();
  const changed = project && { name: project.name, text: projectToText(project) };
  return { ...whole, ...facts, ...changed, rest };
}

/** What the work was after a line. */
interface State extends Pick<KeptFile, 'edition' | 'keptAt' | 'file' | 'laying'> {
  /** Null: as it is in the work that the file began with. Throws for what comes of wrong edits. */
  readonly project: (() => Project) | null;
}

/** The states after the lines, up to the first that is wrong. */
function readLines(
  whole: KeptFile,
  lines: readonly string[],
  begin: Mark,
): { readonly states: readonly State[]; readonly isDamaged: boolean } {
  const states: State[] = [];
  let mark = begin;
  let carryOut: ReturnType<typeof carryingOutKept> | null = null;
  for (const line of lines) {
    const [, hash, json = ''] = LINE.exec(line) ?? [];
    const before = states.at(-1) ?? { ...whole, project: null };
    const given = hash === markOf(mark, json) ? factsFrom(json) : null;
    if (hash === undefined || given?.edition !== before.edition + 1) return { states, isDamaged: true };
    const { edits, ...facts } = given;
    const after = outcome(() => {
      if (edits === NO_EDITS) return before.project;
      carryOut ??= carryingOutKept(whole.text);
      return carryOut(edits);
    });
    if (!after.ok) return { states, isDamaged: true };
    states.push({ ...facts, project: after.value });
    mark = hash;
  }
  return { states, isDamaged: false };
}

/** Null for what is no such line. */
function factsFrom(json: string): z.infer<typeof since> | null {
  const raw = outcome(() => JSON.parse(json) as unknown);
  const facts = since.safeParse(raw.ok ? raw.value : null);
  return facts.success ? facts.data : null;
}

/** Edits say nothing of what holds between them: whether all of it fits together is asked as of a file. */
function canBeOpened({ project }: State): boolean {
  return project === null || outcome(() => projectFromText(projectToText(project()))).ok;
}

function markOf(before: Mark, json: string): Mark {
  return createHash('sha256').update(before).update(json).digest('hex');
}
