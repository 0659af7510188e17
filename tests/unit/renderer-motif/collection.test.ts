/** The collection as a dialog shows it, with a host that answers when the test says so. */
import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import type { Host, Method, Params, Result } from '@shared/host/index.ts';
import type { Outcome, Problem } from '@shared/problem/index.ts';
import { projectAround, projectToText, START_YARNS } from '@shared/project/index.ts';
import { sharedNames } from '../../../src-renderer/motif/collection/collected.ts';
import { Collection } from '../../../src-renderer/motif/collection/collection.ts';

type Entry = Result<'collection.look'>[number];

const motif = (file: string, name = file): Entry => ({
  kind: 'motif',
  file,
  stamp: `stamp of ${name}`,
  name,
  width: 3,
  height: 2,
  repeat: { width: 3, height: 2 },
  yarns: [],
});
const missing: Problem = { code: 'file-missing', where: '/stick', facts: {} };

/** A folder that a test changes; each call is noted, and `look` answers when it is let. */
class Folder {
  entries: Entry[] = [];
  problem: Problem | null = null;
  readonly calls: string[] = [];
  lets: Promise<void> = Promise.resolve();

  /** Answers of `look` wait until what this gives is called. */
  hold(): () => void {
    let go = (): void => undefined;
    this.lets = new Promise((resolve) => (go = resolve));
    return () => go();
  }

  readonly host: Pick<Host, 'call'> = {
    call: async <M extends Method>(method: M, params: Params<M>) => {
      this.calls.push(method);
      return (await this.#answer(method, params)) as Outcome<Result<M>>;
    },
  };

  async #answer(method: Method, params: unknown): Promise<Outcome<unknown>> {
    if (this.problem) return { ok: false, problem: this.problem };
    if (method === 'collection.list') {
      return { ok: true, value: { folder: '/f', isOwn: true, left: 0, files: this.entries.map(({ file }) => file) } };
    }
    if (method === 'collection.look') {
      const { files } = params as Params<'collection.look'>;
      const value = files.map((file) => this.entries.find((one) => one.file === file) ?? { kind: 'gone', file });
      await this.lets;
      return { ok: true, value };
    }
    const text = projectToText(projectAround('a', 'a', gridFromText(['X.'], '.X'), 0, 'worn', START_YARNS));
    return { ok: true, value: method === 'collection.read' ? { text, stamp: 'stamp of a' } : {} };
  }
}

const names = ({ now: { motifs } }: Collection): string[] => motifs.map(({ name }) => name);

describe('the collection', () => {
  it('looks at files a few at a time, in their order, until all are seen', async () => {
    const folder = new Folder();
    folder.entries = Array.from({ length: 30 }, (_, at) => motif(`${at}`));
    const collection = new Collection(folder.host);
    await collection.show();
    expect(names(collection)).toEqual(folder.entries.map(({ file }) => file));
    expect([collection.now.looked, collection.now.files]).toEqual([30, 30]);
    expect(folder.calls).toEqual(['collection.list', 'collection.look', 'collection.look', 'collection.look']);
  });

  it('asks no more once nobody looks', async () => {
    const folder = new Folder();
    folder.entries = Array.from({ length: 30 }, (_, at) => motif(`${at}`));
    const collection = new Collection(folder.host);
    const letGo = folder.hold();
    const shown = collection.show();
    collection.close();
    letGo();
    await shown;
    expect(folder.calls.filter((call) => call === 'collection.look').length).toBeLessThanOrEqual(1);
    expect(names(collection)).toEqual([]);
  });

  it('tells files that are no motif apart, and leaves out those that went while they were listed', async () => {
    const folder = new Folder();
    const odd: Entry = { kind: 'unusable', file: 'odd', problem: missing };
    folder.entries = [motif('a'), odd, { kind: 'gone', file: 'c' }];
    const collection = new Collection(folder.host);
    await collection.show();
    expect([names(collection), collection.now.unusable]).toEqual([['a'], [odd]]);
  });

  it('sees at the next showing what another hand did, and does not empty the list for it', async () => {
    const folder = new Folder();
    folder.entries = [motif('a'), motif('b'), motif('c')];
    const collection = new Collection(folder.host);
    await collection.show();
    folder.entries = [motif('a', 'changed'), motif('c'), motif('d')];
    const letGo = folder.hold();
    const shown = collection.show();
    await expect.poll(() => names(collection)).toEqual(['a', 'c']);
    letGo();
    await shown;
    expect(names(collection)).toEqual(['changed', 'c', 'd']);
  });

  it('says why a folder cannot be listed, and which it is, so that another can be chosen', async () => {
    const folder = new Folder();
    folder.entries = [motif('a')];
    const collection = new Collection(folder.host);
    await collection.show();
    folder.problem = missing;
    await collection.show();
    expect([collection.now.problem, names(collection)]).toEqual([missing, []]);
    expect(collection.now.folder).toEqual({ folder: '/stick', isOwn: false, left: 0 });
    folder.problem = null;
    expect(await collection.choose(null)).toBeNull();
    expect([collection.now.problem, names(collection)]).toEqual([null, ['a']]);
  });

  it('reads a file once for its picture and its use, and not one that is another by now', async () => {
    const folder = new Folder();
    const { projects } = new Collection(folder.host);
    const [first, second] = await Promise.all([1, 2].map(() => projects.of({ file: 'a', stamp: 'stamp of a' })));
    expect(first?.motifs[0]?.name).toBe('a');
    expect(second).toBe(first);
    expect(folder.calls).toEqual(['collection.read']);
    expect(await projects.of({ file: 'a', stamp: 'of before' })).toBeNull();
    // Asked again, for it may be there again.
    await projects.of({ file: 'a', stamp: 'of before' });
    expect(folder.calls).toHaveLength(3);
  });

  it('tells names that several have', () => {
    expect([...sharedNames([{ name: 'a' }, { name: 'b' }, { name: 'a' }, { name: 'a' }])]).toEqual(['a']);
  });
});
