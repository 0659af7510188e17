/** A file of kept work: its format, and what cannot be read. */
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keptFileFromText } from '../../../src-main/services/kept-file.ts';
import { keep, runsInEachTest } from './kept-runs.ts';

const { keptIn, run, end, asking, find, take } = runsInEachTest();

describe('what cannot be read', () => {
  const golden2 = async (): Promise<string> => {
    await keep(run('golden'), { file: { path: '/sleeve.walewright', stamp: '1-ff' } });
    end('golden');
    const text = await readFile(join(keptIn(), 'golden.window-1.work-one.backup'), 'utf8');
    await rm(join(keptIn(), 'golden.window-1.work-one.backup'));
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
      await writeFile(join(keptIn(), name), text);
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
    expect(await readFile(join(keptIn(), 'newer.window-1.work-two.backup'), 'utf8')).toBe(newer);
    expect(await readFile(join(keptIn(), 'damaged.window-1.work-one.backup'), 'utf8')).toBe(whole.slice(0, -9));
    expect(await readFile(join(keptIn(), 'earlier-damaged.backup'), 'utf8')).toBe('x');
  });

  it('is a file of kept work that breaks off anywhere, or in which any letter is another', async () => {
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
    await mkdir(keptIn(), { recursive: true });
    await writeFile(join(keptIn(), '0b5e9b1c-7a55-4d5c-9c1e-0d1e2f3a4b5c.backup'), golden);
    const now = run('now');
    expect(await find(now)).toMatchObject([{ of: 'ended-run', kept: { path: '/sleeve.walewright' } }]);
    expect(await take(now)).toMatchObject({ text: '{"name":"sleeve"}\n', file: null, edition: 1 });
  });

  it('has the format of version 2', async () => {
    await keep(run('first'), { file: { path: '/sleeve.walewright', stamp: '1-ff' } });
    expect(await readFile(join(keptIn(), 'first.window-1.work-one.backup'), 'utf8')).toBe(
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
