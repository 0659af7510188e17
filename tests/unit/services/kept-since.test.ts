/** What changes after work was kept whole, written behind it. */
import { appendFile, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Params, Services } from '@shared/host/index.ts';
import {
  applyEdits,
  editsToText,
  paintCells,
  projectAt,
  projectFromText,
  projectToText,
  sampleProject,
  setPattern,
  setMotif,
  setNumbers,
  setProject,
  type Edit,
} from '@shared/project/index.ts';
import { endOfWhole } from '../../../src-main/services/kept-file.ts';
import { keptWorkFromText, lineOf } from '../../../src-main/services/kept-journal.ts';
import { runsInEachTest } from './kept-runs.ts';

type Since = Params<'recovery.append'>;

const { folder, keptIn, run, end, asking, find, take } = runsInEachTest();

const OWN = { window: 'window-1', work: 'work-one' };
const FACTS = { ...OWN, keptAt: '2026-01-02T03:04:05.678Z', file: null, laying: null };
const SAMPLE = sampleProject();
const SAMPLE_AT = projectAt(SAMPLE);

const keep = (services: Services, edition: number, text = projectToText(SAMPLE)) =>
  services['recovery.keep']({ ...FACTS, browser: 'browser-1', name: SAMPLE.name, edition, text });
const append = async (services: Services, edition: number, edits: readonly Edit[], given: Partial<Since> = {}) =>
  (await services['recovery.append']({ ...FACTS, edition, edits: editsToText(edits), ...given })).isKept;
const place = (name = 'first.window-1.work-one.backup'): string => join(keptIn(), name);
const names = async (): Promise<string[]> => (await readdir(keptIn())).sort();

const cell = (index: number, to = 1): Edit =>
  paintCells('lighthouse', { at: Uint32Array.of(index), to: Uint8Array.of(to) });
const STEPS: readonly (readonly Edit[])[] = [
  [cell(13)],
  [setProject({ name: 'Cuff' }), setPattern(SAMPLE_AT, 'band', 0, { choice: 1 })],
  [setMotif('lighthouse', { name: 'light' }), cell(14)],
];
/** The text of the work as it was kept, then after each of {@link STEPS}. */
const TEXTS = STEPS.reduce(
  (texts, edits) => [...texts, projectToText(applyEdits(projectFromText(texts.at(-1) as string), edits))],
  [projectToText(SAMPLE)],
);

async function keepAll(services: Services): Promise<void> {
  await keep(services, 1);
  for (const [index, edits] of STEPS.entries()) expect(await append(services, 2 + index, edits)).toBe(true);
}

describe('what changed since work was kept', () => {
  it('is found with it, as it was kept last', async () => {
    const file = { path: '/home/knitter/sleeve.walewright', stamp: '3-abc' };
    const laying = { name: 'move' as const, motif: 'lighthouse', rows: ['X.', '.X'], isLettering: false };
    const first = run('first');
    await keepAll(first);
    const keptAt = '2026-01-02T03:05:00.000Z';
    expect(await append(first, 5, [], { file, laying, keptAt })).toBe(true);
    end('first');
    const second = run('second');
    expect(await find(second)).toMatchObject([{ kept: { name: 'Cuff', path: file.path, keptAt } }]);
    expect(await take(second)).toEqual({
      work: 'work-one',
      edition: 5,
      text: TEXTS.at(-1),
      file: { ...file, name: 'sleeve.walewright' },
      keptAt,
      laying,
    });
    expect(await names()).toEqual(['second.window-9.work-one.backup']);
  });

  it('counts for whether the work was saved', async () => {
    const saved = join(folder(), 'sleeve.walewright');
    const file = { path: saved, stamp: 'any' };
    await writeFile(saved, TEXTS[0] as string);
    const first = run('first');
    await keep(first, 1);
    await append(first, 2, STEPS[0] ?? [], { file });
    end('first');
    expect(await find(run('second'))).toHaveLength(1);
    await writeFile(saved, TEXTS[1] as string);
    expect(await find(run('third'))).toEqual([]);
  });

  it('is not kept where the edition before is not there to be followed', async () => {
    const first = run('first');
    expect(await append(first, 2, [cell(13)])).toBe(false);
    await keep(first, 1);
    expect(await append(first, 3, [cell(13)])).toBe(false);
    expect(await append(first, 2, [cell(13)], { work: 'work-two' })).toBe(false);
    expect(await append(first, 2, [], { edits: '[{"kind":"other"}]' })).toBe(false);
    expect(await append(first, 2, [cell(13)])).toBe(true);
    // The same once more.
    expect(await append(first, 2, [cell(13)])).toBe(false);
    await rm(place());
    expect(await append(first, 3, [cell(14)])).toBe(false);
    end('first');
    expect(await append(run('second'), 3, [cell(14)])).toBe(false);
  });

  it('is not kept behind work that was taken or dropped, before that is kept anew', async () => {
    const first = run('first');
    await keep(first, 1);
    end('first');
    const second = run('second');
    await take(second, 'window-1');
    expect(await append(second, 2, [cell(13)])).toBe(false);
    await keep(second, 2);
    expect(await append(second, 3, [cell(13)])).toBe(true);
    await second['recovery.drop'](OWN);
    expect(await append(second, 4, [cell(14)])).toBe(false);
    expect(await names()).toEqual([]);
  });

  it('grows only so long, and then the work is kept whole', async () => {
    const first = run('first');
    await keep(first, 1);
    let edition = 1;
    const name = (): Edit => setProject({ name: 'x'.repeat(100) + edition });
    while (await append(first, edition + 1, [name()])) edition++;
    const { length } = await readFile(place());
    expect(length).toBeGreaterThan(200_000);
    expect(length).toBeLessThan(300_000);
    await keep(first, edition + 1);
    expect((await readFile(place())).length).toBeLessThan(10_000);
    expect(await append(first, edition + 2, [cell(13)])).toBe(true);
  });

  it('is the last that was kept, however fast one follows another', async () => {
    const first = run('first');
    await Promise.all([keep(first, 1), ...STEPS.map((edits, index) => append(first, 2 + index, edits))]);
    expect((await take(first, 'window-1'))?.text).toBe(TEXTS.at(-1));
  });
});

describe('a file of kept work with lines behind it', () => {
  const kept = async (): Promise<string> => {
    await keepAll(run('first'));
    end('first');
    return readFile(place(), 'utf8');
  };

  // The golden bytes: if these fail, what earlier versions kept is lost.
  it('has this format', async () => {
    const first = run('first');
    await first['recovery.keep']({ ...FACTS, browser: 'browser-1', name: 'Sleeve', edition: 1, text: 'work' });
    await append(first, 2, [cell(13), setNumbers(SAMPLE_AT.at, { lengths: undefined } as object)]);
    const text = await readFile(place(), 'utf8');
    expect(text.slice(endOfWhole(text)?.at)).toBe(
      '+797b9ba7efa866f493375a58fa23ba8a544d73964ed773c075d7ba453dc4dc3f ' +
        '{"edition":2,"keptAt":"2026-01-02T03:04:05.678Z","file":null,"edits":' +
        '"[{\\"kind\\":\\"paint\\",\\"motif\\":\\"lighthouse\\",\\"patch\\":[[13,\\"X\\"]]},' +
        '{\\"kind\\":\\"set\\",\\"of\\":\\"numbers\\",\\"piece\\":\\"piece-1\\",\\"size\\":\\"size-1\\",' +
        '\\"to\\":{\\"gone\\":[\\"lengths\\"]}}]",' +
        '"laying":null}\n',
    );
  });

  it('loses at most its last line where it breaks off anywhere', async () => {
    const text = await kept();
    const begin = endOfWhole(text)?.at ?? 0;
    for (let at = begin; at <= text.length; at++) {
      const whole = text.slice(begin, at).split('\n').length - 1;
      const isBetween = at === begin || text[at - 1] === '\n';
      expect(keptWorkFromText(text.slice(0, at)), `${at} of ${text.length}`).toMatchObject({
        text: TEXTS[whole],
        edition: 1 + whole,
        rest: isBetween ? 'none' : 'broken-off',
      });
    }
  });

  it('is not believed from the line on in which any letter is another', async () => {
    const text = await kept();
    const begin = endOfWhole(text)?.at ?? 0;
    for (let at = begin; at < text.length; at++) {
      const other = text[at] === 'x' ? 'y' : 'x';
      const read = keptWorkFromText(text.slice(0, at) + other + text.slice(at + 1));
      const before = text.slice(begin, at).split('\n').length - 1;
      // The last line without its end is one that breaks off.
      const rest = at === text.length - 1 ? 'broken-off' : 'damaged';
      expect(read, `letter ${at}`).toMatchObject({ text: TEXTS[before], edition: 1 + before, rest });
    }
  });

  it('is set aside as it is where something in it is wrong, told of, and offered as far as it can be read', async () => {
    const text = await kept();
    const spoiled = text.replace('"edition":3', '"edition":9');
    await writeFile(place(), spoiled);
    const second = run('second');
    const found = await find(second);
    const [aside] = (await names()).filter((name) => name.endsWith('.unread'));
    expect(found.map(({ id, kept: read }) => [id, read?.name ?? null])).toEqual([
      ['first.window-1.work-one.backup', 'Skerry sleeve'],
      [aside, null],
    ]);
    expect(found[1]?.place).toBe(place(aside));
    expect(await second['recovery.take']({ ...asking('window-9'), id: aside ?? '' })).toBeNull();
    expect(await take(second)).toMatchObject({ text: TEXTS[1], edition: 2 });
    // What is kept from then on, saved and dropped leaves it as it was.
    await second['recovery.keep']({
      ...FACTS,
      window: 'window-9',
      browser: 'browser-1',
      name: 'x',
      edition: 3,
      text: 'y',
    });
    await second['recovery.drop']({ window: 'window-9', work: 'work-one' });
    end('second');
    expect(await names()).toEqual([aside]);
    expect(await readFile(place(aside), 'utf8')).toBe(spoiled);
    expect(await find(run('third'))).toMatchObject([{ id: aside, kept: null }]);
    expect(await names()).toEqual([aside]);
  });

  it('is set aside too where its window goes on with another run, or lets the work go', async () => {
    const spoiled = (await kept()).replace('"edition":3', '"edition":9');
    await writeFile(place(), spoiled);
    const second = run('second');
    await keep(second, 9);
    expect(await names()).toEqual([
      expect.stringMatching(/^first\.window-1\.work-one\.[0-9a-f]{8}\.unread$/),
      'second.window-1.work-one.backup',
    ]);
    await writeFile(place(), spoiled.slice(0, -20));
    end('second');
    await run('third')['recovery.drop'](OWN);
    expect((await names()).filter((name) => name.endsWith('.unread'))).toHaveLength(2);
  });

  it.each<[string, readonly Edit[], Partial<Since>]>([
    ['edits that do not apply', [setMotif('gone', { name: 'x' })], {}],
    ['edits after which the work cannot be opened', [cell(0, 40)], {}],
    ['an edition that is not the next', [cell(13)], { edition: 7 }],
    ['what are no edits', [], { edits: '[{"kind":"other"}]' }],
  ])('is believed up to %s', async (_, edits, given) => {
    const text = await kept();
    const last = text.slice(0, -1).split('\n').at(-1) ?? '';
    const { line } = lineOf({ ...FACTS, edition: 5, edits: editsToText(edits), ...given }, last.slice(1, 65));
    await appendFile(place(), line);
    const read = keptWorkFromText(await readFile(place(), 'utf8'));
    expect(read).toMatchObject({ text: TEXTS.at(-1), edition: 4, rest: 'damaged' });
  });
});
