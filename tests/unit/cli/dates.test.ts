/** The date on what the command line writes: today's, or the one given, and then the same bytes at any time. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());
const sample = folder.file('sample.walewright', projectToText(sampleProject()));

/** 26 November 2026 where the test runs, and a moment more than a year later. */
const NOW = new Date(2026, 10, 26, 9, 30);
const LATER = new Date(2028, 1, 3, 21, 5);
/** `date -u -d @1700000000`: Tue Nov 14 22:13:20 UTC 2023. */
const EPOCH = { text: '1700000000', day: '2023-11-14', inWords: '14 November 2023' };

const set = process.env['SOURCE_DATE_EPOCH'];
afterEach(() => {
  vi.useRealTimers();
  if (set === undefined) delete process.env['SOURCE_DATE_EPOCH'];
  else process.env['SOURCE_DATE_EPOCH'] = set;
});
delete process.env['SOURCE_DATE_EPOCH'];

let runs = 0;
/** What a call at that moment writes, by the ends of the names. */
async function written(at: Date, ...typed: string[]): Promise<Map<string, Buffer>> {
  vi.useFakeTimers({ now: at, toFake: ['Date'] });
  const into = join(folder.path, `run-${(runs += 1)}`);
  const answer = await callJson<{ files?: { path: string }[] }>(...typed, '--to', into);
  vi.useRealTimers();
  if (!answer.files) throw new Error(JSON.stringify(answer));
  return new Map(answer.files.map(({ path }) => [path.slice(into.length), readFileSync(path)]));
}

/** What a PDF says in its running heads and in its properties. */
async function datesOf(files: ReadonlyMap<string, Buffer>): Promise<{ heads: string[]; made: unknown }> {
  const bytes = [...files].find(([name]) => name.endsWith('.pdf'))?.[1] ?? Buffer.alloc(0);
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const heads: string[] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    heads.push(...items.flatMap((item) => ('str' in item && item.str.startsWith('Page ') ? [item.str] : [])));
  }
  expect(heads).toHaveLength(pdf.numPages);
  const { info } = await pdf.getMetadata();
  const made = (info as { CreationDate: string }).CreationDate;
  expect((info as { ModDate: string }).ModDate).toBe(made);
  await pdf.destroy();
  return { heads, made };
}

describe('what export writes', () => {
  const typed = ['export', sample];

  it('puts today’s date on every page and into the file', async () => {
    const { heads, made } = await datesOf(await written(NOW, ...typed));
    for (const head of heads) expect(head).toMatch(/^Page \d+ of \d+ · 26 November 2026$/);
    // ISO 32000-1, 7.9.4: year, month, day, then the time.
    expect(made).toMatch(/^D:20261126/);
  });

  it('puts the date of --date there, before SOURCE_DATE_EPOCH', async () => {
    process.env['SOURCE_DATE_EPOCH'] = EPOCH.text;
    const { heads, made } = await datesOf(await written(NOW, ...typed, '--date', '2024-02-29'));
    for (const head of heads) expect(head).toContain('· 29 February 2024');
    expect(made).toMatch(/^D:20240229/);
  });

  it('puts the day of SOURCE_DATE_EPOCH there', async () => {
    process.env['SOURCE_DATE_EPOCH'] = EPOCH.text;
    const { heads, made } = await datesOf(await written(NOW, ...typed));
    for (const head of heads) expect(head).toContain(`· ${EPOCH.inWords}`);
    expect(made).toMatch(/^D:20231114/);
  });

  it('writes the same bytes at another time with the same date, and others without', async () => {
    const dated = [...typed, '--date', EPOCH.day];
    const first = await written(NOW, ...dated);
    expect(first.size).toBe(4);
    expect(await written(LATER, ...dated)).toEqual(first);
    process.env['SOURCE_DATE_EPOCH'] = EPOCH.text;
    expect(await written(LATER, ...typed)).toEqual(first);
    delete process.env['SOURCE_DATE_EPOCH'];
    expect(await written(LATER, ...typed)).not.toEqual(first);
  });

  it('is dated by demo in the same way', async () => {
    const dated = await written(LATER, 'demo', '--date', EPOCH.day);
    expect(dated).toEqual(await written(NOW, ...typed, '--date', EPOCH.day));
  });
});

describe('a date that is none', () => {
  it.each(['yesterday', '2026-02-30', '26.11.2026'])(
    '%j is refused with what to write, and nothing is written',
    async (date) => {
      const { status, warned } = await call('export', sample, '--to', join(folder.path, 'nothing'), '--date', date);
      expect(status).toBe(1);
      for (const part of ['--date', date, '2026-11-26']) expect(warned).toContain(part);
      expect(() => readFileSync(join(folder.path, 'nothing'))).toThrow('ENOENT');
    },
  );

  it.each(['now', '-1', '1.5', '0x10', '999999999999', ' '])(
    'SOURCE_DATE_EPOCH %j is refused with what to do, and nothing is written',
    async (text) => {
      process.env['SOURCE_DATE_EPOCH'] = text;
      const answer = await callJson('export', sample, '--to', join(folder.path, 'nothing'));
      expect(answer).toMatchObject({
        error: {
          code: 'epoch-unusable',
          where: 'SOURCE_DATE_EPOCH',
          message: expect.stringContaining('--date') as string,
        },
      });
      expect(() => readFileSync(join(folder.path, 'nothing'))).toThrow('ENOENT');
    },
  );

  it('SOURCE_DATE_EPOCH set to nothing is as good as not set', async () => {
    process.env['SOURCE_DATE_EPOCH'] = '';
    expect((await datesOf(await written(NOW, 'export', sample))).made).toMatch(/^D:20261126/);
  });
});
