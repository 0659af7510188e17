/** Journals of pieces on the needles, behind the contract. */
import { mkdtemp, readdir, readFile, rm, writeFile, chmod, appendFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Services } from '@shared/host/index.ts';
import { beginningLine, entryLine, journalFromText, type KnittingEvent, type PieceKey } from '@shared/journal/index.ts';
import { digestOf, followJournal, orderToText } from '@shared/knitting/index.ts';
import { createServices, dispatch } from '../../../src-main/services/index.ts';
import { knittingOf, trial } from '../knitting/knitting.ts';
import { testEnvironment } from './test-environment.ts';

let folder: string;
let services: Services;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-knitting-'));
  services = createServices(testEnvironment(folder));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const order = orderToText(knittingOf(trial()));
const key = (given: Partial<PieceKey> = {}): PieceKey => ({
  project: { name: 'Skerry', path: '/home/kari/skerry.walewright' },
  piece: { id: 'piece-1', name: 'sleeve' },
  size: { id: 'size-1', name: 'M' },
  copy: 1,
  ...given,
});
const begun = (of = key()) => ({ of, digest: digestOf(order), order });
const begin = (of = key(), isAnew = false) => services['knitting.begin']({ begun: begun(of), isAnew });

let sent = 0;
const row = (reading: number): { id: string; event: KnittingEvent } => ({
  id: `window-1-${++sent}`,
  event: { kind: 'row-done', reading },
});
const append = (after: number, ...events: ReturnType<typeof row>[]) =>
  services['knitting.append']({ of: key(), after, events });

async function readingOf(of = key()): Promise<number | null> {
  const read = await services['knitting.read']({ of });
  const journal = read && journalFromText(read.text);
  return journal && followJournal(journal).place.reading;
}

/** The one journal there is. */
async function onlyFile(): Promise<string> {
  const all = (await readdir(join(folder, '.data', 'knitting'))).filter((name) => name.endsWith('.journal'));
  expect(all).toHaveLength(1);
  return join(folder, '.data', 'knitting', all[0] as string);
}

describe('the journal of a piece', () => {
  it('is none before it is begun', async () => {
    expect(await services['knitting.read']({ of: key() })).toBeNull();
    expect(await services['knitting.list']({})).toEqual([]);
    expect(await services['knitting.since']({ of: key(), after: 0 })).toEqual({ entries: [] });
    await expect(append(0, row(0))).rejects.toThrow('journal-missing');
  });

  it('is begun once, and gone on with from run to run', async () => {
    expect((await begin()).isNew).toBe(true);
    const { isKept, entries } = await append(0, row(0), row(1));
    expect(isKept).toBe(true);
    expect(entries.map(({ number, at, event }) => [number, at, event.reading])).toEqual([
      [1, '2026-01-02T03:04:05.678Z', 0],
      [2, '2026-01-02T03:04:05.678Z', 1],
    ]);
    services = createServices(testEnvironment(folder));
    const again = await begin();
    expect(again.isNew).toBe(false);
    expect(journalFromText(again.text)?.entries).toEqual(entries);
    await append(2, row(2));
    expect(await readingOf()).toBe(3);
  });

  it('is one for each piece, size and copy of a project', async () => {
    const others = [
      key({ copy: 2 }),
      key({ size: { id: 'size-2', name: 'L' } }),
      key({ piece: { id: 'piece-2', name: 'front' } }),
      key({ project: { name: 'Skerry', path: null } }),
    ];
    await begin();
    await append(0, row(0));
    for (const of of others) {
      expect((await begin(of)).isNew).toBe(true);
      expect(await readingOf(of)).toBe(0);
    }
    expect(await readingOf(key({ piece: { id: 'piece-1', name: 'another name' } }))).toBe(1);
  });

  it('keeps nothing that cannot be, and nothing of what is sent with it', async () => {
    await begin();
    await expect(append(0, row(0), row(5))).rejects.toThrow('counted-elsewhere');
    await expect(append(0, { id: 'window-1-x', event: { kind: 'finished', reading: 0 } })).rejects.toThrow(
      'not-at-end',
    );
    expect(await readingOf()).toBe(0);
  });

  it('refuses an order that nobody can follow', async () => {
    await expect(services['knitting.begin']({ begun: { ...begun(), order: '{}' }, isAnew: false })).rejects.toThrow(
      'order-unreadable',
    );
    expect(await services['knitting.read']({ of: key() })).toBeNull();
  });

  it('begun anew is put aside', async () => {
    await begin();
    await append(0, row(0));
    expect((await begin(key(), true)).isNew).toBe(true);
    expect(await readingOf()).toBe(0);
    const names = await readdir(join(folder, '.data', 'knitting'));
    expect(names.filter((name) => name.endsWith('.ended'))).toHaveLength(1);
  });
});

describe('two windows', () => {
  it('agree on the count: the one that comes second is told what the first has done', async () => {
    await begin();
    const other = createServices(testEnvironment(folder));
    await append(0, row(0));
    const late = await other['knitting.append']({
      of: key(),
      after: 0,
      events: [{ id: 'window-2-a', event: { kind: 'row-done', reading: 0 } }],
    });
    expect(late.isKept).toBe(false);
    expect(late.entries).toHaveLength(1);
    expect(await readingOf()).toBe(1);
    const next = await other['knitting.append']({
      of: key(),
      after: 1,
      events: [{ id: 'window-2-b', event: { kind: 'row-done', reading: 1 } }],
    });
    expect(next.isKept).toBe(true);
    expect((await services['knitting.since']({ of: key(), after: 1 })).entries.map(({ id }) => id)).toEqual([
      'window-2-b',
    ]);
  });

  it('that count at once count one row each time', async () => {
    await begin();
    const runs = [services, createServices(testEnvironment(folder)), createServices(testEnvironment(folder))];
    const counts = runs.map(() => 0);
    for (let reading = 0; reading < 8; reading++) {
      const answers = await Promise.all(
        runs.map((run, window) =>
          run['knitting.append']({
            of: key(),
            after: reading,
            events: [{ id: `window-${window}-${reading}`, event: { kind: 'row-done', reading } }],
          }),
        ),
      );
      answers.forEach(({ isKept }, window) => (counts[window] = (counts[window] as number) + Number(isKept)));
    }
    expect(counts.reduce((sum, count) => sum + count)).toBe(8);
    expect(await readingOf()).toBe(8);
  });

  it('whose answer got lost may send the same again', async () => {
    await begin();
    const events = [row(0), row(1)];
    const first = await append(0, ...events);
    expect(await append(0, ...events)).toEqual(first);
    const third = row(2);
    expect((await append(0, ...events, third)).entries.map(({ id }) => id)).toEqual(
      [...events, third].map(({ id }) => id),
    );
    expect(await readingOf()).toBe(3);
  });
});

describe('a journal that is not whole', () => {
  it('cut short goes on behind its last whole line', async () => {
    await begin();
    await append(0, row(0), row(1));
    const file = await onlyFile();
    const text = await readFile(file, 'utf8');
    await writeFile(file, text.slice(0, -20));
    expect(await readingOf()).toBe(1);
    expect((await append(1, row(1))).isKept).toBe(true);
    expect((await append(2, row(2))).isKept).toBe(true);
    expect(await readingOf()).toBe(3);
    expect(journalFromText(await readFile(file, 'utf8'))?.rest).toEqual({ kind: 'none' });
    expect(await readdir(join(folder, '.data', 'knitting'))).toHaveLength(1);
  });

  it.each([
    ['empty', 0],
    ['cut within its first line', 200],
  ])('%s is told, and nothing is written over it', async (_, length) => {
    await begin();
    await append(0, row(0));
    const file = await onlyFile();
    const cut = (await readFile(file, 'utf8')).slice(0, length);
    await writeFile(file, cut);
    await expect(services['knitting.read']({ of: key() })).rejects.toThrow('journal-damaged');
    await expect(begin()).rejects.toThrow('journal-damaged');
    await expect(append(1, row(1))).rejects.toThrow('journal-damaged');
    expect(await readFile(file, 'utf8')).toBe(cut);
    expect((await begin(key(), true)).isNew).toBe(true);
    expect(await readingOf()).toBe(0);
  });

  it('damaged further down is put aside as it is before it is gone on with', async () => {
    await begin();
    await append(0, row(0), row(1), row(2));
    const file = await onlyFile();
    const lines = (await readFile(file, 'utf8')).split('\n');
    lines[2] = (lines[2] as string).replace('row-done', 'row-gone');
    const spoiled = lines.join('\n');
    await writeFile(file, spoiled);
    expect(await readingOf()).toBe(1);
    await append(1, row(1));
    expect(await readingOf()).toBe(2);
    const aside = (await readdir(join(folder, '.data', 'knitting'))).find((name) => name.endsWith('.unread'));
    expect(await readFile(join(folder, '.data', 'knitting', aside as string), 'utf8')).toBe(spoiled);
  });

  it('is followed no further than to what cannot be, though each line be as it was written', async () => {
    await begin();
    await append(0, row(0), row(1));
    const file = await onlyFile();

    const journal = journalFromText(await readFile(file, 'utf8'));
    const strange = entryLine(
      { number: 3, id: 'stranger-1', at: '2026-01-02T03:04:05.678Z', event: { kind: 'finished', reading: 2 } },
      journal?.check ?? '',
    );
    await appendFile(file, strange.line);
    expect((await services['knitting.since']({ of: key(), after: 0 })).entries).toHaveLength(2);
    expect((await append(2, row(2))).isKept).toBe(true);
    expect(await readingOf()).toBe(3);
    expect(journalFromText(await readFile(file, 'utf8'))?.entries).toHaveLength(3);
  });

  it('of a newer version, or of something else, is left as it is and told', async () => {
    await begin();
    const file = await onlyFile();
    for (const [text, code] of [
      [beginningLine({ ...begun(), version: 2 } as never).line, 'journal-newer'],
      ['{"format":"walewright-project"}\n', 'journal-not-ours'],
    ] as const) {
      await writeFile(file, text);
      await expect(append(0, row(0))).rejects.toThrow(code);
      await expect(begin()).rejects.toThrow(code);
      expect(await dispatch(services, 'knitting.read', { of: key() })).toMatchObject({ ok: false, problem: { code } });
      expect(await dispatch(services, 'knitting.list', {})).toMatchObject({
        ok: true,
        value: [{ kind: 'unusable', file, problem: { code } }],
      });
      expect(await readFile(file, 'utf8')).toBe(text);
    }
  });

  it.skipIf(process.getuid?.() === 0)('in a folder that cannot be written is told, and read all the same', async () => {
    await begin();
    await append(0, row(0));
    const data = join(folder, '.data', 'knitting');
    await chmod(data, 0o500);
    try {
      await expect(append(1, row(1))).rejects.toThrow('folder-not-writable');
      expect(await readingOf()).toBe(1);
    } finally {
      await chmod(data, 0o700);
    }
  });
});

describe('the pieces on the needles', () => {
  it('are listed, last counted first, with how far they are', async () => {
    let minute = 0;
    const now = () => new Date(Date.UTC(2026, 0, 2, 3, minute++));
    services = createServices(testEnvironment(folder, { now }));
    const [one, two, three] = [key(), key({ copy: 2 }), key({ copy: 3 })];
    for (const of of [one, two, three]) await begin(of);
    await services['knitting.append']({ of: two, after: 0, events: [row(0), row(1), row(2)] });
    await services['knitting.append']({ of: one, after: 0, events: [row(0)] });
    const listed = await dispatch(services, 'knitting.list', {});
    expect(listed.ok && listed.value).toEqual([
      {
        kind: 'piece',
        of: one,
        reading: 1,
        last: 12,
        isFinished: false,
        carriageAt: 'left',
        countedAt: '2026-01-02T03:01:00.000Z',
      },
      {
        kind: 'piece',
        of: two,
        reading: 3,
        last: 12,
        isFinished: false,
        carriageAt: 'left',
        countedAt: '2026-01-02T03:00:00.000Z',
      },
      { kind: 'piece', of: three, reading: 0, last: 12, isFinished: false, carriageAt: 'right', countedAt: null },
    ]);
  });

  it('go with a project that is saved for the first time, and stay with the file of one that is saved elsewhere', async () => {
    const unsaved = { name: 'Skerry', path: null };
    const saved = { name: 'Skerry', path: '/home/kari/a.walewright' };
    const elsewhere = { name: 'Skerry too', path: '/home/kari/b.walewright' };
    await begin(key({ project: unsaved }));
    await services['knitting.append']({ of: key({ project: unsaved }), after: 0, events: [row(0), row(1)] });
    await begin(key({ project: { name: 'another', path: null } }));
    await services['knitting.savedAs']({ from: unsaved, to: saved });
    expect(await readingOf(key({ project: saved }))).toBe(2);
    expect(await readingOf(key({ project: unsaved }))).toBeNull();
    await services['knitting.savedAs']({ from: saved, to: elsewhere });
    await services['knitting.append']({ of: key({ project: elsewhere }), after: 2, events: [row(2)] });
    expect([await readingOf(key({ project: saved })), await readingOf(key({ project: elsewhere }))]).toEqual([2, 3]);
    // What is counted there stays.
    await services['knitting.savedAs']({ from: saved, to: elsewhere });
    expect(await readingOf(key({ project: elsewhere }))).toBe(3);
    expect(await readingOf(key({ project: { name: 'another', path: null } }))).toBe(0);
  });
});

describe('a project saved over a file whose piece has another count', () => {
  const path = '/home/kari/a.walewright';
  const there = key({ project: { name: 'a', path } });
  const counts = async (of: PieceKey, rows: number): Promise<void> => {
    await begin(of);
    await services['knitting.append']({ of, after: 0, events: Array.from({ length: rows }, (_, at) => row(at)) });
  };
  const aside = async (ending: string): Promise<string[]> => {
    const data = join(folder, '.data', 'knitting');
    const names = (await readdir(data)).filter((name) => name.endsWith(ending));
    return Promise.all(names.map((name) => readFile(join(data, name), 'utf8')));
  };

  it.each([
    ['never saved', { name: 'Skerry', path: null }],
    ['saved elsewhere', { name: 'Skerry', path: '/home/kari/b.walewright' }],
  ])('%s: goes on with its own, and the other is put aside', async (_, from) => {
    await counts(there, 3);
    const before = (await services['knitting.read']({ of: there }))?.text;
    await counts(key({ project: from }), 5);
    await services['knitting.savedAs']({ from, to: there.project });
    expect(await readingOf(there)).toBe(5);
    expect(await aside('.ended')).toEqual([before]);
    expect(await readingOf(key({ project: from }))).toBe(from.path === null ? null : 5);
  });

  it('puts aside one that cannot be read, as it is', async () => {
    await counts(there, 3);
    await writeFile(await onlyFile(), 'a page of text\n');
    const from = { name: 'Skerry', path: null };
    await counts(key({ project: from }), 5);
    await services['knitting.savedAs']({ from, to: there.project });
    expect(await readingOf(there)).toBe(5);
    expect(await aside('.unread')).toEqual(['a page of text\n']);
  });

  it('stays where it is when it gets the name that it has', async () => {
    const from = { name: 'Skerry', path: null };
    await counts(key({ project: from }), 5);
    await services['knitting.savedAs']({ from, to: from });
    expect(await readingOf(key({ project: from }))).toBe(5);
  });
});

it.each([
  ['knitting.read', {}],
  ['knitting.read', { of: { ...key(), copy: 0 } }],
  ['knitting.since', { of: key(), after: -1 }],
  ['knitting.append', { of: key(), after: 0, events: [] }],
  [
    'knitting.append',
    { of: key(), after: 0, events: [{ id: 'window-1-a', event: { kind: 'row-done', reading: '3' } }] },
  ],
  ['knitting.append', { of: key(), after: 0, events: [{ id: '../x', event: { kind: 'row-done', reading: 3 } }] }],
  ['knitting.begin', { begun: { ...begun(), digest: '' }, isAnew: false }],
])('%s with %j is refused before any service is asked', async (method, params) => {
  expect(await dispatch({} as Services, method, params)).toMatchObject({ problem: { code: 'request-invalid' } });
});
