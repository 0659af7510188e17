/** Unsaved work, kept aside. */
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { stampOf } from '../../../src-main/services/stamp.ts';
import { keep, runsInEachTest, WORK } from './kept-runs.ts';

const { folder, keptIn, run, end, asking, find, take } = runsInEachTest();
const backups = (): Promise<string[]> => readdir(keptIn());

describe('work that was kept when the program ended', () => {
  const file = { path: '/home/knitter/sleeve.walewright', stamp: '3-abc' };

  it('is found by the next run, with where it stood, in which version, and when it was kept', async () => {
    await keep(run('first'), { text: '{"name":"sleeve"}\n', file, edition: 7 });
    end('first');
    const second = run('second');
    expect(await find(second)).toMatchObject([
      { of: 'ended-run', kept: { name: 'Sleeve', path: file.path, keptAt: WORK.keptAt } },
    ]);
    expect(await take(second)).toEqual({
      work: 'work-one',
      edition: 7,
      text: '{"name":"sleeve"}\n',
      file: { ...file, name: 'sleeve.walewright' },
      keptAt: WORK.keptAt,
      laying: null,
    });
  });

  it('comes with what was in hand, also where its text was saved', async () => {
    const text = projectToText(sampleProject());
    const saved = join(folder(), 'sleeve.walewright');
    await writeFile(saved, text);
    const file = { path: saved, stamp: 'any' };
    const laying = { name: 'move' as const, motif: 'lighthouse', rows: ['X.', '.X'], isLettering: false };
    await keep(run('first'), { text, file, laying });
    end('first');
    expect(await take(run('second'))).toMatchObject({ text, laying });
    await keep(run('third'), { text, file, window: 'window-3', work: 'work-three' });
    end('third');
    expect(await find(run('fourth'), 'window-3')).toEqual([]);
  });

  it('is found again when that run ends without an answer, taken or not', async () => {
    await keep(run('first'));
    end('first');
    await find(run('second'));
    end('second');
    expect((await take(run('third')))?.text).toBe('work');
    end('third');
    expect((await take(run('fourth')))?.text).toBe('work');
  });

  it('is found again by its own window when the page was loaded again, on the same run or the next', async () => {
    const first = run('first');
    await keep(first);
    expect(await find(first, 'window-1')).toMatchObject([{ of: 'own' }]);
    end('first');
    expect(await find(run('second'), 'window-1')).toMatchObject([{ of: 'own' }]);
  });

  it('stays with its window where that one is open still, and is free once it is closed', async () => {
    await keep(run('first'));
    end('first');
    const second = run('second');
    expect(await find(second, 'window-9', ['window-1'])).toEqual([]);
    expect(await take(second, 'window-9', ['window-1'])).toBeNull();
    expect(await find(second, 'window-1', ['window-9'])).toMatchObject([{ of: 'own' }]);
    expect(await find(second)).toMatchObject([{ of: 'ended-run' }]);
  });

  it('is gone once it was dropped', async () => {
    await keep(run('first'));
    end('first');
    const second = run('second');
    await take(second);
    await second['recovery.drop']({ window: 'window-9', work: 'work-one' });
    end('second');
    expect(await find(run('third'))).toEqual([]);
    expect(await backups()).toEqual([]);
  });

  it('is found newest first', async () => {
    await keep(run('a'), { keptAt: '2026-01-02T00:00:00.000Z', name: 'older' });
    await keep(run('b'), { keptAt: '2026-01-03T00:00:00.000Z', name: 'newer' });
    end('a');
    end('b');
    expect((await find(run('c'))).map(({ kept }) => kept?.name)).toEqual(['newer', 'older']);
  });

  it('is taken by one run alone when several start at once', async () => {
    await keep(run('first'));
    end('first');
    const taken = await Promise.all(['a', 'b', 'c', 'd'].map((name) => take(run(name))));
    expect(taken.filter((kept) => kept !== null).map((kept) => kept.text)).toEqual(['work']);
  });

  it('is not offered, and goes, when its file holds that very text: it was saved just before the end', async () => {
    const saved = join(folder(), 'sleeve.walewright');
    await writeFile(saved, 'work');
    await keep(run('first'), { file: { path: saved, stamp: stampOf(Buffer.from('earlier')) } });
    end('first');
    expect(await find(run('second'))).toEqual([]);
    expect(await backups()).toEqual([]);
  });

  it('is not offered when it was saved as a new file, by a window that went before it could drop it', async () => {
    const first = run('first');
    const text = projectToText(sampleProject());
    await keep(first, { text });
    const path = join(folder(), 'new.walewright');
    await first['documents.write']({ path, text, expect: { kind: 'nothing' } });
    expect(await find(first, WORK.window)).toEqual([]);
    expect(await backups()).toEqual([]);
  });

  it('is offered though another version of it was saved as a new file', async () => {
    const first = run('first');
    await keep(first, { text: projectToText({ ...sampleProject(), name: 'Other sleeve' }) });
    const text = projectToText(sampleProject());
    await first['documents.write']({ path: join(folder(), 'new.walewright'), text, expect: { kind: 'nothing' } });
    expect(await find(first, WORK.window)).toHaveLength(1);
  });
});

describe('work of a run that is going on', () => {
  it('is not offered to another, and neither writes over the other', async () => {
    const [first, second] = [run('first'), run('second')];
    await keep(first, { text: 'of the first' });
    expect(await find(second)).toEqual([]);
    await keep(second, { window: 'window-2', text: 'of the second' });
    expect((await take(first, 'window-1'))?.text).toBe('of the first');
    expect((await take(second, 'window-2'))?.text).toBe('of the second');
  });

  it('is each window’s own: what one keeps or drops leaves the other’s as it was', async () => {
    const services = run('first');
    await keep(services, { text: 'of window 1' });
    await keep(services, { window: 'window-2', work: 'work-two', text: 'of window 2' });
    // Both name the other's work, as a tab that was duplicated might.
    await services['recovery.drop']({ window: 'window-2', work: 'work-one' });
    await services['recovery.drop']({ window: 'window-2', work: 'work-two' });
    end('first');
    const next = run('next');
    expect((await find(next)).length).toBe(1);
    expect((await take(next))?.text).toBe('of window 1');
  });

  it('is offered once its window was closed, to windows of its browser alone', async () => {
    const services = run('first');
    await keep(services);
    expect(await find(services, 'window-2', ['window-1'])).toEqual([]);
    expect(await find(services, 'window-2', [], 'browser-2')).toEqual([]);
    expect(await find(services, 'window-2')).toMatchObject([{ of: 'closed-window' }]);
  });

  it('cannot be taken when its window is open again since it was found', async () => {
    const services = run('first');
    await keep(services);
    const [found] = await find(services, 'window-2');
    const late = { ...asking('window-2', ['window-1']), id: found?.id ?? '' };
    expect(await services['recovery.take'](late)).toBeNull();
    expect((await find(services, 'window-1')).length).toBe(1);
  });

  it('is the last that was kept, however fast one follows another', async () => {
    const services = run('first');
    await Promise.all([1, 2, 3, 4, 5].map((n) => keep(services, { edition: n, text: `state ${n}`.repeat(5000) })));
    expect((await take(services, 'window-1'))?.text).toBe('state 5'.repeat(5000));
  });

  it('may be dropped before any was kept', async () => {
    await expect(run('first')['recovery.drop']({ window: 'window-1', work: 'work-one' })).resolves.toEqual({});
  });
});

describe('of one work of one window', () => {
  it('a later edition on another run passes the earlier, which goes', async () => {
    await keep(run('first'), { edition: 3, text: 'third' });
    end('first');
    const second = run('second');
    await keep(second, { edition: 4, text: 'fourth' });
    expect((await backups()).length).toBe(1);
    end('second');
    expect((await take(run('third')))?.text).toBe('fourth');
  });

  it('what a run before kept goes when its window, which outlived that run, lets it go', async () => {
    await keep(run('first'));
    await keep(run('first'), { work: 'work-two' });
    end('first');
    await run('second')['recovery.drop']({ window: 'window-1', work: 'work-one' });
    expect(await backups()).toEqual(['first.window-1.work-two.backup']);
  });

  it('an edition that comes late from elsewhere takes no later one’s place', async () => {
    await keep(run('first'), { edition: 5, text: 'fifth' });
    end('first');
    const second = run('second');
    await keep(second, { edition: 4, text: 'fourth' });
    end('second');
    const found = await find(run('third'));
    expect(found.length).toBe(1);
    expect((await take(run('fourth')))?.text).toBe('fifth');
  });
});
