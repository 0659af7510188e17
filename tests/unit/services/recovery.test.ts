/** Unsaved work, kept aside. */
import { mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Services } from '@shared/host/index.ts';
import { createServices } from '../../../src-main/services/index.ts';
import { keptFromText, keptToText } from '../../../src-main/services/recovery.ts';
import { testEnvironment } from './test-environment.ts';

let folder: string;
let running: Set<string>;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-recovery-'));
  running = new Set();
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** A run of the program called `instance`, at `time`. */
function run(instance: string, time = '2026-01-02T03:04:05.678Z'): Services {
  running.add(instance);
  const presence = { instance, isRunning: async (other: string) => running.has(other) };
  return createServices(testEnvironment(folder, { presence, now: () => new Date(time) }));
}
const end = (instance: string): boolean => running.delete(instance);
const keep = (services: Services, text: string, path: string | null = null) =>
  services['recovery.keep']({ text, path });
const find = (services: Services) => services['recovery.find']({});
const backups = (): Promise<string[]> => readdir(join(folder, '.data', 'recovery'));

describe('work that was kept when the program ended', () => {
  it('is found by the next run, with where it stood and when it was kept', async () => {
    await keep(run('first'), '{"name":"sleeve"}\n', '/home/knitter/sleeve.walewright');
    end('first');
    expect(await find(run('second'))).toEqual({
      text: '{"name":"sleeve"}\n',
      path: '/home/knitter/sleeve.walewright',
      keptAt: '2026-01-02T03:04:05.678Z',
    });
  });

  it('is found again when that run ends without an answer', async () => {
    await keep(run('first'), 'work');
    end('first');
    await find(run('second'));
    end('second');
    expect((await find(run('third')))?.text).toBe('work');
  });

  it('is found again by the same run after its window was reloaded', async () => {
    const services = run('first');
    await keep(services, 'work');
    expect((await find(services))?.text).toBe('work');
  });

  it('is gone once it was dropped', async () => {
    await keep(run('first'), 'work');
    end('first');
    const second = run('second');
    await find(second);
    await second['recovery.drop']({});
    end('second');
    expect(await find(run('third'))).toBeNull();
    expect(await backups()).toEqual([]);
  });

  it('is offered newest first, the older when that is done with', async () => {
    await keep(run('a', '2026-01-02T00:00:00Z'), 'older');
    await keep(run('b', '2026-01-03T00:00:00Z'), 'newer');
    end('a');
    end('b');
    const services = run('c');
    expect((await find(services))?.text).toBe('newer');
    await services['recovery.drop']({});
    expect((await find(services))?.text).toBe('older');
  });

  it('is taken by one run alone when several start at once', async () => {
    await keep(run('first'), 'work');
    end('first');
    const found = await Promise.all(['a', 'b', 'c', 'd'].map((name) => find(run(name))));
    expect(found.filter((kept) => kept !== null).map((kept) => kept.text)).toEqual(['work']);
  });
});

describe('work of a run that is going on', () => {
  it('is not offered to another, and neither writes over the other', async () => {
    const [first, second] = [run('first'), run('second')];
    await keep(first, 'of the first');
    expect(await find(second)).toBeNull();
    await keep(second, 'of the second');
    expect((await find(first))?.text).toBe('of the first');
    expect((await find(second))?.text).toBe('of the second');
  });

  it('is the last that was kept, however fast one follows another', async () => {
    const services = run('first');
    await Promise.all([1, 2, 3, 4, 5].map((n) => keep(services, `state ${n}`.repeat(5000))));
    expect((await find(services))?.text).toBe('state 5'.repeat(5000));
  });

  it('may be dropped before any was kept', async () => {
    await expect(run('first')['recovery.drop']({})).resolves.toEqual({});
  });
});

describe('a backup', () => {
  const kept = { text: 'line\nwith "end 00" in it\nend 0\n', path: null, keptAt: '2026-01-02T03:04:05.678Z' };

  it('has the format that earlier versions wrote', async () => {
    // The golden bytes: if this fails, backups of earlier versions are lost.
    const golden =
      '{"format":"walewright-backup","version":1,"path":"/sleeve.walewright","keptAt":"2026-01-02T03:04:05.678Z"}\n' +
      '{"name":"sleeve"}\n' +
      '\nend 432095e72cdd2d5a30e77f33a5d2304b7349ffbbe465eea56841033e1323b1a5\n';
    await mkdir(join(folder, '.data', 'recovery'), { recursive: true });
    await writeFile(join(folder, '.data', 'recovery', 'earlier.backup'), golden);
    expect(await find(run('now'))).toEqual({
      text: '{"name":"sleeve"}\n',
      path: '/sleeve.walewright',
      keptAt: '2026-01-02T03:04:05.678Z',
    });
    const services = run('later');
    await keep(services, '{"name":"sleeve"}\n', '/sleeve.walewright');
    expect(await readFile(join(folder, '.data', 'recovery', 'later.backup'), 'utf8')).toBe(golden);
  });

  it('comes back as it was, whatever the text', () => {
    expect(keptFromText(keptToText(kept))).toEqual(kept);
  });

  it('is ignored wherever it breaks off', () => {
    const text = keptToText(kept);
    for (let length = 0; length < text.length; length += 1) {
      expect(keptFromText(text.slice(0, length)), `${length} of ${text.length}`).toBeNull();
    }
  });

  it('is ignored when any letter of it is another', () => {
    const text = keptToText(kept);
    for (let at = 0; at < text.length; at += 1) {
      const other = text[at] === 'x' ? 'y' : 'x';
      expect(keptFromText(text.slice(0, at) + other + text.slice(at + 1)), `letter ${at}`).toBeNull();
    }
  });

  it('that is damaged hides no whole one', async () => {
    await keep(run('whole'), 'work');
    await writeFile(join(folder, '.data', 'recovery', 'damaged.backup'), 'x');
    await writeFile(join(folder, '.data', 'recovery', 'something else'), 'x');
    end('whole');
    expect((await find(run('next')))?.text).toBe('work');
  });
});
