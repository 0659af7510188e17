/**
 * A file of kept work.
 *
 * A line of JSON (whose work it is, where the project stands, when it was
 * kept), the project's text as it is, and an end mark with a hash of all before
 * it. One without its right mark is damaged.
 */
import { createHash } from 'node:crypto';
import { outcome } from '@shared/problem/index.ts';
import { layingSchema, type Laying } from '@shared/project/index.ts';
import { letters, upToLetters, z } from '@shared/schema/index.ts';

export interface KeptFile {
  readonly browser: string;
  readonly edition: number;
  readonly keptAt: string;
  readonly name: string;
  readonly text: string;
  readonly file: { readonly path: string; readonly stamp: string } | null;
  /** What was in hand besides the text, and not laid in it. */
  readonly laying: Laying | null;
  /** Of work that was kept when no stamp was: the file that it came from, in which version is not known. */
  readonly cameFrom: string | null;
}

const END = '\nend ';
const END_MARK = /^\nend ([0-9a-f]{64})\n/;

const FORMAT = 'walewright-backup';
const path = letters(4096);
const time = z.iso.datetime({ precision: 3 });
const head = z.object({
  format: z.literal(FORMAT),
  version: z.literal(2),
  name: z.string(),
  file: z.nullable(z.object({ path, stamp: upToLetters(100) })),
  keptAt: time,
  browser: z.string(),
  edition: z.int().check(z.gte(1)),
  /** Left out by programs that did not keep it. */
  laying: z._default(z.nullable(layingSchema), null),
});
const headOfVersion1 = z.object({
  format: z.literal(FORMAT),
  version: z.literal(1),
  path: z.nullable(path),
  keptAt: time,
});

export function keptFileToText({
  browser,
  edition,
  keptAt,
  name,
  text,
  file,
  laying,
}: Omit<KeptFile, 'cameFrom'>): string {
  const facts = {
    format: FORMAT,
    version: 2,
    name,
    file,
    keptAt,
    browser,
    edition,
    ...(laying === null ? {} : { laying }),
  };
  const body = `${JSON.stringify(facts)}\n${text}`;
  return body + endMark(body);
}

/** Where the work that a file of kept work begins with ends, and the hash in its end mark; null if it has none. */
export function endOfWhole(content: string): { readonly at: number; readonly mark: string } | null {
  const [end, mark = ''] = END_MARK.exec(content.slice(Math.max(0, content.lastIndexOf(END)))) ?? [];
  return end === undefined ? null : { at: content.lastIndexOf(END) + end.length, mark };
}

/** What was kept, or null if it is not whole or a newer program kept it. */
export function keptFileFromText(content: string): KeptFile | null {
  const end = content.lastIndexOf(END);
  const body = content.slice(0, Math.max(end, 0));
  if (end < 0 || content.slice(end) !== endMark(body)) return null;
  const firstBreak = body.indexOf('\n');
  const raw = outcome(() => JSON.parse(body.slice(0, firstBreak)) as unknown);
  if (!raw.ok) return null;
  const text = body.slice(firstBreak + 1);
  const now = head.safeParse(raw.value);
  if (now.success) {
    const { browser, edition, keptAt, name, file, laying } = now.data;
    return { browser, edition, keptAt, name, text, file, laying, cameFrom: null };
  }
  const earlier = headOfVersion1.safeParse(raw.value);
  if (!earlier.success) return null;
  const { keptAt, path } = earlier.data;
  return { browser: '', edition: 1, keptAt, name: '', text, file: null, laying: null, cameFrom: path };
}

function endMark(body: string): string {
  return `${END}${createHash('sha256').update(body).digest('hex')}\n`;
}
