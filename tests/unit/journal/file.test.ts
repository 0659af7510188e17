/** The text of a journal: what is believed of it, and what is told of the rest. */
import { describe, expect, it } from 'vitest';
import { beginningLine, entryLine, journalFromText, type Beginning, type Entry } from '@shared/journal/index.ts';
import { outcome } from '@shared/problem/index.ts';

const BEGUN: Beginning = {
  of: {
    project: { name: 'Skerry – pullover', path: '/home/kari/skerry.walewright' },
    piece: { id: 'piece-1', name: 'sleeve' },
    size: { id: 'size-1', name: 'M' },
    copy: 2,
  },
  digest: '2-00000000',
  order: '{}',
};

const entry = (number: number): Entry => ({
  number,
  id: `entry-${number}-of-many`,
  at: '2026-01-02T03:04:05.678Z',
  event: { kind: 'row-done', reading: number - 1 },
});

/** The lines of a journal with so many entries. */
function written(entries: number): string[] {
  const first = beginningLine(BEGUN);
  const lines = [first.line];
  let check = first.check;
  for (let number = 1; number <= entries; number++) {
    const next = entryLine(entry(number), check);
    lines.push(next.line);
    check = next.check;
  }
  return lines;
}

const codeOf = (text: string): string => {
  const read = outcome(() => journalFromText(text));
  return read.ok ? 'read' : read.problem.code;
};

describe('a journal', () => {
  it('is read as it was written, in plain ASCII whatever a project is called', () => {
    const text = written(3).join('');
    expect(text).toMatch(/^[\x20-\x7e\n]+$/);
    expect(journalFromText(text)).toEqual({
      begun: BEGUN,
      entries: [entry(1), entry(2), entry(3)],
      check: text.split('\n')[3]?.slice(0, 8),
      length: text.length,
      rest: { kind: 'none' },
    });
  });

  it('cut at any letter has its last whole line, and is gone on with behind that', () => {
    const lines = written(3);
    const text = lines.join('');
    for (let cut = 0; cut < text.length; cut++) {
      const read = journalFromText(text.slice(0, cut));
      const whole = text.slice(0, cut).split('\n').length - 1;
      if (whole === 0) {
        expect(read).toBeNull();
        continue;
      }
      const length = lines.slice(0, whole).join('').length;
      expect(read).toMatchObject({ length, rest: { kind: cut === length ? 'none' : 'broken-off' } });
      expect(read?.entries).toHaveLength(whole - 1);
      const next = entryLine(entry(whole), read?.check ?? '');
      expect(journalFromText(text.slice(0, length) + next.line)?.entries).toHaveLength(whole);
    }
  });

  const lines = written(4);
  it.each<[string, readonly string[], number]>([
    [
      'a letter that is another',
      [lines[0], lines[1], (lines[2] as string).replace('row-done', 'row-gone'), lines[3]] as string[],
      3,
    ],
    ['a line left out', [lines[0], lines[1], lines[3]] as string[], 3],
    ['a line twice', [lines[0], lines[1], lines[1], lines[2]] as string[], 3],
    ['lines the other way round', [lines[0], lines[2], lines[1]] as string[], 2],
    ['an empty line', [lines[0], '\n', lines[1]] as string[], 2],
    ['a line of something else', [lines[0], lines[1], 'and so on\n'] as string[], 3],
  ])('with %s is believed up to there', (_, spoiled, line) => {
    const read = journalFromText(spoiled.join(''));
    expect(read?.rest).toEqual({ kind: 'damaged', line });
    expect(read?.entries).toHaveLength(line - 2);
    expect(read?.length).toBe(spoiled.slice(0, line - 1).join('').length);
  });

  it('believes no event that it does not know, though its line be as it was written', () => {
    const [first] = lines as [string];
    const strange = entryLine({ ...entry(1), event: { kind: 'sung', reading: 0 } as never }, first.slice(0, 8));
    expect(journalFromText(first + strange.line)?.rest).toEqual({ kind: 'damaged', line: 2 });
    const second = entryLine(entry(2), first.slice(0, 8));
    expect(journalFromText(first + second.line)?.rest).toEqual({ kind: 'damaged', line: 2 });
  });

  it('that begins wrongly is none', () => {
    const [first] = lines as [string];
    expect(codeOf(first.replace('sleeve', 'sleevf'))).toBe('journal-damaged');
    expect(codeOf('{"format":"walewright-project"}\n')).toBe('journal-not-ours');
    expect(codeOf('hello')).toBe('journal-not-ours');
    expect(codeOf(entryLine(entry(1), '').line)).toBe('journal-not-ours');
    expect(codeOf(beginningLine({ ...BEGUN, digest: 'none' }).line)).toBe('journal-damaged');
    expect(codeOf('')).toBe('read');
  });

  it('of a newer version is not read', () => {
    // What is given last stands in the line.
    const text = beginningLine({ ...BEGUN, version: 2 } as never).line;
    expect(outcome(() => journalFromText(text))).toMatchObject({
      problem: { code: 'journal-newer', facts: { version: 2, known: 1 } },
    });
  });
});
