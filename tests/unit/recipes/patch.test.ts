import { describe, expect, it } from 'vitest';
import { parsePatch, patched, type PatchedFile } from '../../recipes/patch.ts';

/** A patch of one file, `f`. */
function patchOf(...lines: string[]): PatchedFile {
  return parsePatch(['Prose.', '', '--- a/f', '+++ b/f', ...lines, ''].join('\n'))[0] as PatchedFile;
}

const BEFORE = 'one\ntwo\nthree\n';

describe('a patch', () => {
  it('goes where its lines stand, whatever was put before them', () => {
    const patch = patchOf('@@ -2 +2,2 @@ here', ' two', '+and a half', '@@', '-three', '+four');
    expect(patched(patch, BEFORE)).toBe('one\ntwo\nand a half\nfour\n');
    expect(patched(patch, `nought\n\n${BEFORE}`)).toBe('nought\n\none\ntwo\nand a half\nfour\n');
  });

  it('makes a file, with the empty lines in it', () => {
    const [made] = parsePatch('--- /dev/null\n+++ b/new/f\n@@\n+one\n+\n+two\n') as [PatchedFile];
    expect(made.path).toBe('new/f');
    expect(patched(made, null)).toBe('one\n\ntwo\n');
    expect(() => patched(made, 'there')).toThrow('new/f is there already');
  });

  it('of several files has each, and pieces keep to their file', () => {
    const files = parsePatch('--- a/f\n+++ b/f\n@@\n one\n+1\n--- a/g\n+++ b/g\n@@\n-two\n');
    expect(files).toEqual([
      { path: 'f', isNew: false, pieces: [{ before: ['one'], after: ['one', '1'] }] },
      { path: 'g', isNew: false, pieces: [{ before: ['two'], after: [] }] },
    ]);
  });

  it.each([
    { why: 'stand nowhere', text: 'one\ntwo and a half\nthree\n', names: 'nowhere in f' },
    { why: 'stand in two places', text: `${BEFORE}${BEFORE}`, names: 'in 2 places in f' },
  ])('is refused where its lines $why', ({ text, names }) => {
    expect(() => patched(patchOf('@@', ' two', '+more'), text)).toThrow(names);
  });

  it('is refused where its file is not there', () => {
    expect(() => patched(patchOf('@@', ' two', '+more'), null)).toThrow('f is not there');
  });

  it('is refused where a line belongs to no piece', () => {
    expect(() => patchOf('@@', ' two', 'stray')).toThrow('Line 7 of the patch belongs to no piece: stray');
  });
});
