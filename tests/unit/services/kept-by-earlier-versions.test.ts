/** Files of kept work as earlier versions wrote them. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  applyEdits,
  layingChange,
  paintCells,
  projectAt,
  projectFromText,
  sampleProject,
  setPattern,
  setMotif,
  setProject,
  startBand,
  startAllOver,
} from '@shared/project/index.ts';
import { endOfWhole } from '../../../src-main/services/kept-file.ts';
import { keptWorkFromText, lineOf } from '../../../src-main/services/kept-journal.ts';
import { onRows } from '../../written-projects.ts';

const SAMPLE = sampleProject();
const SAMPLE_AT = projectAt(SAMPLE);
const FACTS = { keptAt: '2026-01-02T03:04:05.678Z', file: null, laying: null };

describe('files of kept work as earlier versions wrote them', () => {
  /** Never changed: if one of them is read otherwise, what people have kept is lost. */
  const golden = (name: string): Promise<string> =>
    readFile(join(import.meta.dirname, '..', '..', 'fixtures', 'kept', name), 'utf8');

  it('are read with a project of version 2, in both its sizes, of which the larger was at hand', async () => {
    const kept = keptWorkFromText(await golden('whole-2.backup'));
    expect(kept).toMatchObject({ edition: 1, file: null, cameFrom: null, keptAt: FACTS.keptAt, rest: 'none' });
    const read = projectFromText(kept?.text ?? '');
    expect(read.sizes.map(({ name }) => name)).toEqual(['M', 'L']);
    const [medium, large] = read.sizes.map(({ id }) => projectAt(read, { size: id }));
    expect(medium).toMatchObject({ yarns: SAMPLE.yarns, piece: SAMPLE_AT.piece });
    expect(medium?.patterns).toMatchObject([{ groups: [{ across: 2 }, { across: 2 }] }]);
    expect(large).toMatchObject({
      piece: { shape: { kind: 'tapered', stitches: 104, stitchesAtTop: 132, rows: 150, straightRows: 14 } },
      patterns: [{ groups: [{ across: 3 }, { across: 2 }] }],
    });
  });

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
        setPattern(SAMPLE_AT, 'band', 0, { choice: 1 }),
        setMotif('lighthouse', { name: 'light' }),
      ]),
    );
  });

  it('are read with what was written of the piece, which said then what its patterns say now', async () => {
    const kept = keptWorkFromText(await golden('with-pieces-3.backup'));
    expect(kept).toMatchObject({ edition: 10, rest: 'none' });
    const { piece, patterns } = projectAt(projectFromText(kept?.text ?? ''));
    expect(piece.hem).toEqual({ turning: 'loose', gauge: null });
    expect(piece.sections).toEqual([{ name: 'rib', rows: 6, isLined: false, gauge: null, tension: '' }]);
    expect(piece.seamAllowance).toEqual({ left: 2, right: 2 });
    // On for all, then off for those that were there; what came after it is off too.
    expect(patterns.map(({ endNeedles }) => endNeedles)).toEqual([false, false, false]);
  });

  it('keep for its patterns what end-needle selection was for the piece', async () => {
    const [head = '', first = '', second = ''] = (await golden('with-pieces-3.backup')).split(/^(?=\+)/m);
    const kept = keptWorkFromText(head + first + second);
    const { patterns } = projectAt(projectFromText(kept?.text ?? ''));
    expect(patterns.map(({ kind, endNeedles }) => [kind, endNeedles])).toEqual([
      ['band', true],
      ['all-over', true],
    ]);
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
        sections: [rib, { ...rib, name: 'yoke', gauge: null }],
      },
      patterns: [
        { ...startBand('lighthouse', [2, 2]), position: { kind: 'from-row', row: 40 }, choice: 1 },
        { ...startAllOver('lighthouse', 90), endNeedles: false },
        { ...startAllOver('lighthouse', 130), position: onRows(130, 139), endNeedles: false },
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

  it('are read with grounds that were set motif by motif: as their own program had it', async () => {
    const kept = keptWorkFromText(await golden('with-grounds-5.backup'));
    expect(kept).toMatchObject({ edition: 27, name: 'Skerry pullover', rest: 'none' });
    const then = projectFromText(await golden('with-grounds-5.walewright'));
    expect(projectFromText(kept?.text ?? '')).toEqual(then);
  });

  it('are read line by line, the ground as it stood after each', async () => {
    const text = await golden('with-grounds-5.backup');
    const end = endOfWhole(text)?.at ?? 0;
    const lines = text.slice(end).trimEnd().split('\n');
    const grounds = lines.map((_, last) => {
      const kept = keptWorkFromText(`${text.slice(0, end)}${lines.slice(0, last + 1).join('\n')}\n`);
      return projectFromText(kept?.text ?? '').mainYarn;
    });
    // As the program of that version had them after each line.
    expect(grounds).toEqual([1, 3, 3, 3, 3, 3, 1, 0, 2, 2, 2, ...Array<number>(9).fill(1)]);
  });

  it('are read with beds of pieces and rows of all-overs that were set one by one: as their own program had it', async () => {
    const kept = keptWorkFromText(await golden('with-beds-6.backup'));
    expect(kept).toMatchObject({ edition: 23, name: 'Skerry cuff', rest: 'none' });
    const then = projectFromText(await golden('with-beds-6.walewright'));
    expect(projectFromText(kept?.text ?? '')).toEqual(then);
  });

  it('are read line by line, the bed that holds all pieces as it stood after each', async () => {
    const text = await golden('with-beds-6.backup');
    const end = endOfWhole(text)?.at ?? 0;
    const lines = text.slice(end).trimEnd().split('\n');
    const beds = lines.map((_, last) => {
      const kept = keptWorkFromText(`${text.slice(0, end)}${lines.slice(0, last + 1).join('\n')}\n`);
      return projectFromText(kept?.text ?? '').machine.bed.needles;
    });
    // A back of unknown needles comes with the ninth line, has 250 with the tenth, and goes with the fourteenth.
    expect(beds).toEqual([...Array<number>(8).fill(200), null, ...Array<number>(4).fill(250), 200, 200, 200]);
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
      const { patterns } = projectAt(projectFromText(keptWorkFromText(text.slice(0, end))?.text ?? ''));
      expect(
        patterns.map((pattern) => pattern.endNeedles),
        `after line ${line + 1}`,
      ).toEqual(endNeedles);
    }
  });
});
