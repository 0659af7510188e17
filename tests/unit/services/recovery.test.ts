/** Unsaved work, kept aside. */
import { mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Params, Services } from '@shared/host/index.ts';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { createServices } from '../../../src-main/services/index.ts';
import { stampOf } from '../../../src-main/services/stamp.ts';
import { testEnvironment } from './test-environment.ts';

type Work = Params<'recovery.keep'>;

let folder: string;
let running: Set<string>;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-recovery-'));
  running = new Set();
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const WORK: Work = {
  window: 'window-1',
  browser: 'browser-1',
  work: 'work-one',
  edition: 1,
  keptAt: '2026-01-02T03:04:05.678Z',
  name: 'Sleeve',
  text: 'work',
  file: null,
  laying: null,
};

/** A run of the program called `instance`. */
function run(instance: string): Services {
  running.add(instance);
  const presence = { instance, isRunning: async (other: string) => running.has(other) };
  return createServices(testEnvironment(folder, { presence }));
}
const end = (instance: string): boolean => running.delete(instance);
const keep = (services: Services, given: Partial<Work> = {}) => services['recovery.keep']({ ...WORK, ...given });
const asking = (window: string, open: string[] = [], browser = 'browser-1') => ({
  asking: { window, browser, open: [window, ...open] },
});
const find = (services: Services, window = 'window-9', open: string[] = [], browser?: string) =>
  services['recovery.find'](asking(window, open, browser));
async function take(services: Services, window = 'window-9', open: string[] = []) {
  const [first] = await find(services, window, open);
  return first ? services['recovery.take']({ ...asking(window, open), id: first.id }) : null;
}
const place = (): string => join(folder, '.data', 'recovery');
const backups = (): Promise<string[]> => readdir(place());

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
    const saved = join(folder, 'sleeve.walewright');
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
    const saved = join(folder, 'sleeve.walewright');
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
    const path = join(folder, 'new.walewright');
    await first['documents.write']({ path, text, expect: { kind: 'nothing' } });
    expect(await find(first, WORK.window)).toEqual([]);
    expect(await backups()).toEqual([]);
  });

  it('is offered though another version of it was saved as a new file', async () => {
    const first = run('first');
    await keep(first, { text: projectToText({ ...sampleProject(), name: 'Other sleeve' }) });
    const text = projectToText(sampleProject());
    await first['documents.write']({ path: join(folder, 'new.walewright'), text, expect: { kind: 'nothing' } });
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

describe('what cannot be read', () => {
  const golden2 = async (): Promise<string> => {
    await keep(run('golden'), { file: { path: '/sleeve.walewright', stamp: '1-ff' } });
    end('golden');
    const text = await readFile(join(place(), 'golden.window-1.work-one.backup'), 'utf8');
    await rm(join(place(), 'golden.window-1.work-one.backup'));
    return text;
  };

  it('is told of, stays as it was, and hides nothing that can be', async () => {
    const whole = await golden2();
    const newer = whole.replace('"version":2', '"version":3');
    for (const [name, text] of [
      ['damaged.window-1.work-one.backup', whole.slice(0, -9)],
      ['newer.window-1.work-two.backup', newer],
      ['earlier-damaged.backup', 'x'],
      ['something else', 'x'],
    ] as const) {
      await writeFile(join(place(), name), text);
    }
    await keep(run('first'), { work: 'work-own' });
    end('first');
    const next = run('next');
    const found = await find(next, 'window-1');
    expect(found.map(({ id, kept }) => [id, kept?.name ?? null])).toEqual([
      ['first.window-1.work-own.backup', 'Sleeve'],
      ...['damaged.window-1.work-one.backup', 'earlier-damaged.backup', 'newer.window-1.work-two.backup'].map((id) => [
        id,
        null,
      ]),
    ]);
    for (const { id, kept } of found) {
      if (kept === null) expect(await next['recovery.take']({ ...asking('window-1'), id })).toBeNull();
    }
    // The same window keeps on, saves, and lets its work go.
    await keep(next, { edition: 9 });
    await next['recovery.drop']({ window: 'window-1', work: 'work-one' });
    expect(await readFile(join(place(), 'newer.window-1.work-two.backup'), 'utf8')).toBe(newer);
    expect(await readFile(join(place(), 'damaged.window-1.work-one.backup'), 'utf8')).toBe(whole.slice(0, -9));
    expect(await readFile(join(place(), 'earlier-damaged.backup'), 'utf8')).toBe('x');
  });

  it('is a file of kept work that breaks off anywhere, or in which any letter is another', async () => {
    const { keptFileFromText } = await import('../../../src-main/services/kept-file.ts');
    const text = await golden2();
    expect(keptFileFromText(text)).not.toBeNull();
    for (let at = 0; at < text.length; at += 1) {
      expect(keptFileFromText(text.slice(0, at)), `${at} of ${text.length}`).toBeNull();
      const other = text[at] === 'x' ? 'y' : 'x';
      expect(keptFileFromText(text.slice(0, at) + other + text.slice(at + 1)), `letter ${at}`).toBeNull();
    }
  });
});

describe('a file of kept work', () => {
  // The golden bytes: if these fail, what earlier versions kept is lost.
  it('has the format that was written before windows kept their own, and is read without a version to save over', async () => {
    const golden =
      '{"format":"walewright-backup","version":1,"path":"/sleeve.walewright","keptAt":"2026-01-02T03:04:05.678Z"}\n' +
      '{"name":"sleeve"}\n' +
      '\nend 432095e72cdd2d5a30e77f33a5d2304b7349ffbbe465eea56841033e1323b1a5\n';
    await mkdir(place(), { recursive: true });
    await writeFile(join(place(), '0b5e9b1c-7a55-4d5c-9c1e-0d1e2f3a4b5c.backup'), golden);
    const now = run('now');
    expect(await find(now)).toMatchObject([{ of: 'ended-run', kept: { path: '/sleeve.walewright' } }]);
    expect(await take(now)).toMatchObject({ text: '{"name":"sleeve"}\n', file: null, edition: 1 });
  });

  it('has the format of version 2', async () => {
    await keep(run('first'), { file: { path: '/sleeve.walewright', stamp: '1-ff' } });
    expect(await readFile(join(place(), 'first.window-1.work-one.backup'), 'utf8')).toBe(
      '{"format":"walewright-backup","version":2,"name":"Sleeve","file":{"path":"/sleeve.walewright","stamp":"1-ff"},' +
        '"keptAt":"2026-01-02T03:04:05.678Z","browser":"browser-1","edition":1}\nwork' +
        '\nend a0fcaa4226a5c3815ae513df7019608e558632efe70b8a4cb02c07bcde8d544c\n',
    );
  });

  it('keeps any text as it is', async () => {
    const text = 'line\nwith "end 00" in it\nend 0\n';
    await keep(run('first'), { text });
    end('first');
    expect((await take(run('second')))?.text).toBe(text);
  });
});
