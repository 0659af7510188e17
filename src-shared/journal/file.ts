/**
 * A journal as text: a line for what is begun, and one for each event since.
 *
 * A line is a check, a blank, and JSON in plain ASCII. The check is over the
 * line and over the check before it, so a line is believed only where it was
 * written. One that breaks off (the program was ended while it was written)
 * costs itself alone; from one that is wrong on, nothing is believed.
 */
import { crc32 } from '../checksum/index.ts';
import { problemError } from '../problem/index.ts';
import { checked, z } from '../schema/index.ts';
import { beginningSchema, entrySchema, type Beginning, type Entry } from './model.ts';

const FORMAT = 'walewright-knitting';

/** Of the text; a newer one is not read. */
export const JOURNAL_VERSION = 1;

/** The check of a line, which the next line follows. */
export type Check = string;

/** What stands behind the last line that is believed. */
export type Rest =
  | { readonly kind: 'none' }
  /** The beginning of a line. */
  | { readonly kind: 'broken-off' }
  /** `line` (from 1) is not as it was written, or does not follow. */
  | { readonly kind: 'damaged'; readonly line: number };

export interface Journal {
  readonly begun: Beginning;
  readonly entries: readonly Entry[];
  /** Of the last line that is believed. */
  readonly check: Check;
  /** Letters up to the end of that line. */
  readonly length: number;
  readonly rest: Rest;
}

const headSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(JOURNAL_VERSION),
  ...beginningSchema.shape,
});

/** The first line, with its end. */
export function beginningLine(begun: Beginning): { readonly line: string; readonly check: Check } {
  return lineOf({ format: FORMAT, version: JOURNAL_VERSION, ...begun }, '');
}

/** The line of an entry behind the line with the check `after`, with its end. */
export function entryLine(entry: Entry, after: Check): { readonly line: string; readonly check: Check } {
  return lineOf(entry, after);
}

/**
 * What a journal holds, or null where not even its first line is whole: nothing
 * was begun. Throws `journal-not-ours`, `journal-newer` or `journal-damaged`
 * where the first line is no beginning.
 */
export function journalFromText(text: string): Journal | null {
  const lines = text.split('\n');
  const brokenOff = lines.pop() as string;
  const [first, ...others] = lines;
  if (first === undefined) {
    if (brokenOff !== '' && !/^[0-9a-f]{1,8}( |$)/.test(brokenOff)) throw problemError('journal-not-ours', {});
    return null;
  }
  const begun = beginningFrom(first);
  const check = first.slice(0, CHECK_LETTERS);
  const start: Journal = { begun, entries: [], check, length: first.length + 1, rest: { kind: 'none' } };
  return goneOn(start, others, brokenOff);
}

/** The journal with what `text` has behind its last line that was believed. */
export function journalContinued(journal: Journal, text: string): Journal {
  const lines = text.split('\n');
  const brokenOff = lines.pop() as string;
  return goneOn(journal, lines, brokenOff);
}

function goneOn({ begun, entries: before, ...end }: Journal, lines: readonly string[], brokenOff: string): Journal {
  const entries = [...before];
  let { check, length } = end;
  for (const line of lines) {
    const entry = entryFrom(line, check);
    if (entry?.number !== entries.length + 1) {
      return { begun, entries, check, length, rest: { kind: 'damaged', line: entries.length + 2 } };
    }
    entries.push(entry);
    check = line.slice(0, CHECK_LETTERS);
    length += line.length + 1;
  }
  return { begun, entries, check, length, rest: { kind: brokenOff === '' ? 'none' : 'broken-off' } };
}

const CHECK_LETTERS = 8;
const LINE = /^([0-9a-f]{8}) ([\x20-\x7e]+)$/;

function lineOf(value: object, after: Check): { readonly line: string; readonly check: Check } {
  const json = JSON.stringify(value).replace(
    /[\u007f-\uffff]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  const check = checkOf(json, after);
  return { line: `${check} ${json}\n`, check };
}

/** The check of a text of ASCII letters behind another line. */
function checkOf(json: string, after: Check): Check {
  const text = after + json;
  const bytes = new Uint8Array(text.length);
  for (let at = 0; at < text.length; at++) bytes[at] = text.charCodeAt(at);
  return crc32(bytes).toString(16).padStart(CHECK_LETTERS, '0');
}

/** What a line holds; null where it is not as it was written. */
function jsonOf(line: string, after: Check): unknown {
  const [, check, json = ''] = LINE.exec(line) ?? [];
  if (check === undefined || check !== checkOf(json, after)) return null;
  try {
    return JSON.parse(json);
  } catch {
    return null;
  }
}

function beginningFrom(line: string): Beginning {
  const raw = jsonOf(line, '');
  if (raw === null && !LINE.test(line)) throw problemError('journal-not-ours', {});
  if (raw === null) throw problemError('journal-damaged', { line: 1 });
  const { format, version } = raw as { format?: unknown; version?: unknown };
  if (format !== FORMAT) throw problemError('journal-not-ours', {});
  if (typeof version === 'number' && version > JOURNAL_VERSION) {
    throw problemError('journal-newer', { version, known: JOURNAL_VERSION });
  }
  const read = checked(headSchema, raw);
  if (!read.ok) throw problemError('journal-damaged', { line: 1 });
  const { format: _, version: __, ...begun } = read.value;
  return begun;
}

function entryFrom(line: string, after: Check): Entry | null {
  const read = checked(entrySchema, jsonOf(line, after));
  return read.ok ? read.value : null;
}
