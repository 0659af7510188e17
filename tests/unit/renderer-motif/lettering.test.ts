import { describe, expect, it } from 'vitest';
import { applyPatch, gridToText, makeGrid, type Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { applyChange, emptyProject, layingChange } from '@shared/project/index.ts';
import { letteringWords } from '@shared/words/lettering.ts';
import { asLettering, layChange, layingOf } from '../../../src-renderer/motif/editing/cutting.ts';
import {
  FIRST_LETTERING,
  fontWith,
  lettersOf,
  liftedLetters,
  sizeWithRoom,
} from '../../../src-renderer/motif/lettering/lettering.ts';

const project = emptyProject('p', 'm');
const plain = { ...(project.motifs[0] as Motif), grid: makeGrid(6, 6) };
const ink = lettersOf({ ...FIRST_LETTERING, text: 'L' }).ink as Grid;

/** The motif after what is lifted is laid, topmost row first. */
function laid(motif: Motif, colour: number, column: number, row: number): string[] {
  const change = layChange(motif, 0, liftedLetters(ink, colour, { column, row }, true));
  if (!change) return gridToText(motif.grid, '.#o');
  const after = applyChange({ ...project, motifs: [motif] }, change).motifs[0] as Motif;
  return gridToText(after.grid, '.#o');
}

describe('letters on the chart', () => {
  it('are laid in one yarn at the cursor and leave the cells between them as they are', () => {
    expect(gridToText(ink, ' #')).toEqual(['#  ', '#  ', '#  ', '#  ', '###']);
    const dotted = { ...plain, grid: makeGrid(6, 6, 2) };
    expect(laid(dotted, 1, 1, 1)).toEqual(['o#oooo', 'o#oooo', 'o#oooo', 'o#oooo', 'o###oo', 'oooooo']);
  });

  it('that read on the chart make the motif one that must not be mirrored', () => {
    const lifted = liftedLetters(ink, 1, { column: 1, row: 1 }, true);
    const before = { ...project, motifs: [plain] };
    const [paint, laying] = [layChange(plain, 0, lifted), layingOf(plain, 0, lifted)];
    const change = laying && layingChange(before, laying);
    if (!paint || !change) throw new Error('Nothing was laid');
    const [after] = applyChange(before, change).motifs as [Motif];
    expect(after).toEqual({ ...plain, isLettering: true, grid: applyPatch(plain.grid, paint.edits[0].patch) });
    expect(change.name).toBe('lettering');
    expect(asLettering(plain, paint)).toEqual(change);
  });

  it('are a step of undo that is named after them', () => {
    expect(layChange(plain, 0, liftedLetters(ink, 1, { column: 0, row: 0 }, true))?.name).toBe('lettering');
  });

  it.each([
    { motif: { width: 6, height: 6 }, wanted: { width: 6, height: 6, grows: false } },
    { motif: { width: 3, height: 5 }, wanted: { width: 3, height: 5, grows: false } },
    { motif: { width: 2, height: 9 }, wanted: { width: 3, height: 9, grows: true } },
    { motif: { width: 9, height: 4 }, wanted: { width: 9, height: 5, grows: true } },
  ])('in a motif of $motif.width × $motif.height ask for no more room than they take', ({ motif, wanted }) => {
    expect(sizeWithRoom(makeGrid(motif.width, motif.height), ink)).toEqual(wanted);
  });

  it.each([
    { text: 'A漢Б漢', sentence: 'Silkscreen has no 漢 Б.' },
    { text: 'A\tB', sentence: 'Silkscreen has no tab.' },
    { text: 'A\u200bB', sentence: 'Silkscreen has no U+200B.' },
  ])('that a typeface lacks are all named: $sentence', ({ text, sentence }) => {
    const { ink: rest, missing } = lettersOf({ ...FIRST_LETTERING, text });
    expect(letteringWords.missing('Silkscreen', missing, rest !== null)).toBe(`${sentence} The rest is shown.`);
    expect(letteringWords.missing('Silkscreen', missing, false)).toBe(sentence);
  });

  it('are offered in another typeface only where that one has all that is missing', () => {
    // Silkscreen has a broken bar, Pixelify Sans has none; neither has Han.
    expect(lettersOf({ ...FIRST_LETTERING, font: 'pixelify-sans', text: 'a¦b' }).missing).toEqual(['¦']);
    expect(fontWith(['¦'], 'pixelify-sans')?.id).toBe('silkscreen');
    expect(fontWith(['¦', '漢'], 'pixelify-sans')).toBeNull();
    expect(fontWith(['漢'], 'silkscreen')).toBeNull();
  });
});
