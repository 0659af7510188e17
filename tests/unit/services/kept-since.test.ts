/** What changes after work was kept whole, written behind it. */
import { appendFile, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Params, Services } from '@shared/host/index.ts';
import {
  applyEdits,
  editsToText,
  layingChange,
  paintCells,
  projectAt,
  projectFromText,
  projectToText,
  sampleProject,
  setBand,
  setMotif,
  setNumbers,
  setProject,
  startBand,
  startFill,
  type Edit,
} from '@shared/project/index.ts';
import { createServices } from '../../../src-main/services/index.ts';
import { endOfWhole } from '../../../src-main/services/kept-file.ts';
import { keptWorkFromText, lineOf } from '../../../src-main/services/kept-journal.ts';
import { testEnvironment } from './test-environment.ts';

type Since = Params<'recovery.append'>;

let folder: string;
let running: Set<string>;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-since-'));
  running = new Set();
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const OWN = { window: 'window-1', work: 'work-one' };
const FACTS = { ...OWN, keptAt: '2026-01-02T03:04:05.678Z', file: null, laying: null };
const SAMPLE = sampleProject();
const SAMPLE_AT = projectAt(SAMPLE);

/** A run of the program called `instance`. */
function run(instance: string): Services {
  running.add(instance);
  const presence = { instance, isRunning: async (other: string) => running.has(other) };
  return createServices(testEnvironment(folder, { presence }));
}
const end = (instance: string): boolean => running.delete(instance);
const keep = (services: Services, edition: number, text = projectToText(SAMPLE)) =>
  services['recovery.keep']({ ...FACTS, browser: 'browser-1', name: SAMPLE.name, edition, text });
const append = async (services: Services, edition: number, edits: readonly Edit[], given: Partial<Since> = {}) =>
  (await services['recovery.append']({ ...FACTS, edition, edits: editsToText(edits), ...given })).isKept;
const asking = (window: string) => ({ asking: { window, browser: 'browser-1', open: [window] } });
const find = (services: Services, window = 'window-9') => services['recovery.find'](asking(window));
async function take(services: Services, window = 'window-9') {
  const [first] = await find(services, window);
  return first ? services['recovery.take']({ ...asking(window), id: first.id }) : null;
}
const place = (name = 'first.window-1.work-one.backup'): string => join(folder, '.data', 'recovery', name);
const names = async (): Promise<string[]> => (await readdir(join(folder, '.data', 'recovery'))).sort();

const cell = (index: number, to = 1): Edit =>
  paintCells('lighthouse', { at: Uint32Array.of(index), to: Uint8Array.of(to) });
const STEPS: readonly (readonly Edit[])[] = [
  [cell(13)],
  [setProject({ name: 'Cuff' }), setBand(SAMPLE_AT, 0, { choice: 1 })],
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
    const saved = join(folder, 'sleeve.walewright');
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

describe('files of kept work as earlier versions wrote them', () => {
  /** Never changed: if one of them is read otherwise, what people have kept is lost. */
  const golden = (name: string): Promise<string> =>
    readFile(join(import.meta.dirname, '..', '..', 'fixtures', 'kept', name), 'utf8');

  it('are read where the work stands whole in them, with cells in hand', async () => {
    const kept = keptWorkFromText(await golden('whole-3.backup'));
    expect(kept).toMatchObject({
      browser: 'browser-1',
      edition: 7,
      name: 'Skerry sleeve',
      file: { path: '/home/knitter/sleeve.walewright', stamp: '1-ff' },
      rest: 'none',
    });
    expect(projectFromText(kept?.text ?? '')).toEqual(SAMPLE);
    const laid = kept?.laying && layingChange(SAMPLE, kept.laying);
    // The topmost row's first cell; a patch counts from the lower left.
    expect(laid?.edits).toEqual([paintCells('lighthouse', { at: Uint32Array.of(17 * 14), to: Uint8Array.of(1) })]);
  });

  it('are read with what was written behind the work', async () => {
    const kept = keptWorkFromText(await golden('with-lines-3.backup'));
    expect(kept).toMatchObject({ edition: 11, name: 'Skerry cuff', keptAt: '2026-01-02T03:04:06.678Z', rest: 'none' });
    expect(projectFromText(kept?.text ?? '')).toEqual(
      applyEdits(SAMPLE, [
        paintCells('lighthouse', { at: Uint32Array.of(0, 1, 14), to: Uint8Array.of(1, 1, 0) }),
        setProject({ name: 'Skerry cuff' }),
        setBand(SAMPLE_AT, 0, { choice: 1 }),
        setMotif('lighthouse', { name: 'light' }),
      ]),
    );
  });

  it('are read with what was written of the piece, which said then what its patterns say now', async () => {
    const kept = keptWorkFromText(await golden('with-pieces-3.backup'));
    expect(kept).toMatchObject({ edition: 10, rest: 'none' });
    const { piece, bands, fills } = projectAt(projectFromText(kept?.text ?? ''));
    expect(piece.hem).toEqual({ turning: 'loose', gauge: null });
    expect(piece.parts).toEqual([{ name: 'rib', rows: 6, isLined: false, gauge: null, tension: '' }]);
    expect(piece.seamAllowance).toEqual({ left: 2, right: 2 });
    // On for all, then off for those that were there; what came after it is off too.
    expect([...bands, ...fills].map(({ endNeedles }) => endNeedles)).toEqual([false, false, false]);
  });

  it('keep for its patterns what end-needle selection was for the piece', async () => {
    const [head = '', first = '', second = ''] = (await golden('with-pieces-3.backup')).split(/^(?=\+)/m);
    const kept = keptWorkFromText(head + first + second);
    const { bands, fills } = projectAt(projectFromText(kept?.text ?? ''));
    expect([bands, fills].map((list) => list.map(({ endNeedles }) => endNeedles))).toEqual([[true], [true]]);
  });

  it('are read where what was written behind the work says of the whole piece what each pattern says now', async () => {
    const kept = keptWorkFromText(await golden('with-older-fields-3.backup'));
    expect(kept).toMatchObject({ edition: 15, rest: 'none' });
    const rib = { name: 'rib', rows: 12, isLined: false, gauge: { stitches: 30, rows: 44 }, tension: '' };
    const read = projectFromText(kept?.text ?? '');
    const [small, medium] = read.sizes;
    expect([small?.name, medium?.name, read.sizes.length]).toEqual(['S', 'M', 2]);
    expect(projectAt(read).piece).toMatchObject({ shape: { kind: 'rectangle', stitches: 90, rows: 120 }, hemRows: 0 });
    expect(projectAt(read, { size: medium?.id ?? '' })).toMatchObject({
      motifs: SAMPLE.motifs,
      piece: {
        ...SAMPLE_AT.piece,
        name: 'cuff',
        hemRows: 20,
        hem: { turning: 'loose', gauge: null },
        parts: [rib, { ...rib, name: 'yoke', gauge: null }],
      },
      bands: [{ ...startBand('lighthouse', [2, 2]), position: { kind: 'from-row', row: 40 }, choice: 1 }],
      fills: [
        { ...startFill('lighthouse', 90), endNeedles: false },
        { ...startFill('lighthouse', 130), lastRow: 139, endNeedles: false },
      ],
    });
  });

  it('are read with sizes that came and were gone to, lists in another order, and lengths: as their own program had it', async () => {
    const kept = keptWorkFromText(await golden('with-sizes-4.backup'));
    expect(kept).toMatchObject({ edition: 27, name: 'Skerry cuff', rest: 'none' });
    const then = projectFromText(await golden('with-sizes-4.walewright'));
    expect(projectFromText(kept?.text ?? '')).toEqual(then);
    expect(then.sizes.map(({ name }) => name)).toEqual(['S', 'M', 'L']);
  });

  it('are read past a line after which they could not have been opened, where a later one mends it, as those of today are', async () => {
    const text = await golden('with-sizes-4.backup');
    const kept = keptWorkFromText(text);
    const named = (name: string): string => JSON.stringify([{ kind: 'set', of: 'project', to: { name } }]);
    const last = text.trimEnd().split('\n').at(-1) ?? '';
    const wrong = lineOf({ ...FACTS, edition: 28, edits: named('') }, last.slice(1, 65));
    const mended = lineOf({ ...FACTS, edition: 29, edits: named('Skerry cuff') }, wrong.mark);
    expect(keptWorkFromText(text + wrong.line)).toMatchObject({ edition: 27, text: kept?.text, rest: 'damaged' });
    expect(keptWorkFromText(text + wrong.line + mended.line)).toMatchObject({
      edition: 29,
      text: kept?.text,
      rest: 'none',
    });
  });

  it('are read line by line, end-needle selection as it stood after each', async () => {
    const text = await golden('with-older-fields-3.backup');
    const behind = text.slice(endOfWhole(text)?.at).trimEnd().split('\n');
    // The work began with it on; then: a fill, a hem, sections, a band; off with a second band; on; off; a second fill.
    const stood = [[true], [true], [true], [true, true], [false, false, false], [true, true], [false, false]];
    for (const [line, endNeedles] of [...stood, [false, false, false]].entries()) {
      const end = text.indexOf(behind[line] ?? '') + (behind[line]?.length ?? 0) + 1;
      const { bands, fills } = projectAt(projectFromText(keptWorkFromText(text.slice(0, end))?.text ?? ''));
      expect(
        [...bands, ...fills].map((pattern) => pattern.endNeedles),
        `after line ${line + 1}`,
      ).toEqual(endNeedles);
    }
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
