import { describe, expect, it } from 'vitest';
import { wholeBlock, type Block } from '@shared/output/blocks/block.ts';
import { listBlock } from '@shared/output/blocks/list.ts';
import { pour, type Frame } from '@shared/output/blocks/pour.ts';
import { cell, tableBlock } from '@shared/output/blocks/table.ts';
import { headingBlock, paragraphBlock } from '@shared/output/blocks/text.ts';
import type { SheetElement } from '@shared/output/index.ts';
import { plain } from '@shared/words/index.ts';

/** A block that says what it is and where it was set down. */
function named(name: string, heightMm: number, spaceAboveMm = 0, keepsWithNext = false): Block {
  const draw = (_: number, y: number): SheetElement[] => [
    {
      role: 'paragraph',
      items: [{ kind: 'text', x: 0, y, sizePt: 9, anchor: 'start', tone: 'ink', spans: plain(name) }],
    },
  ];
  return wholeBlock(heightMm, spaceAboveMm, draw, keepsWithNext);
}

/** `name` on frame `frame` at `y`, for each block in frames of one height. */
function poured(blocks: readonly Block[], heightMm: number): string[] {
  const found: string[] = [];
  const frame = (page: number): Frame => ({ page, x: 0, y: 0, heightMm });
  pour(
    blocks,
    { frame: frame(0), usedMm: 0 },
    (last) => frame(last.page + 1),
    (page, elements) => {
      for (const element of elements) {
        if (element.role !== 'paragraph') continue;
        for (const item of element.items) {
          if (item.kind === 'text') found.push(`${item.spans.map(({ text }) => text).join('')} ${page}:${item.y}`);
        }
      }
    },
  );
  return found;
}

/** On which frame each element stands that was poured into frames of one height. */
function framesOf(blocks: readonly Block[], heightMm: number): { readonly role: string; readonly frame: number }[] {
  const found: { role: string; frame: number }[] = [];
  const frame = (page: number): Frame => ({ page, x: 0, y: 0, heightMm });
  pour(
    blocks,
    { frame: frame(0), usedMm: 0 },
    (last) => frame(last.page + 1),
    (page, elements) => found.push(...elements.map(({ role }) => ({ role, frame: page }))),
  );
  return found;
}

describe('blocks poured into columns', () => {
  it('stand one below the other, with the space above them but at the top of a column', () => {
    expect(poured([named('a', 10, 4), named('b', 10, 4), named('c', 15, 4)], 30)).toEqual(['a 0:0', 'b 0:14', 'c 1:0']);
  });

  it('leave no short end alone: what stands before it goes over too, with its heading, or as much of it as can', () => {
    const heading = named('heading', 5, 0, true);
    expect(poured([named('a', 30), heading, named('b', 20), named('end', 8)], 60)).toEqual([
      'a 0:0',
      'heading 1:0',
      'b 1:5',
      'end 1:25',
    ]);
    // Together they would need more than there is anywhere.
    expect(poured([named('b', 55), named('end', 8)], 60)).toEqual(['b 0:0', 'end 1:0']);
    const entries = Array.from({ length: 20 }, (_, i) => ({
      label: `${i + 1}.`,
      labelTone: 'ink' as const,
      text: plain('Knit plain'),
      more: [],
    }));
    const list = listBlock(entries, 80);
    const found = framesOf([list, named('end', 4)], list.heightMm + 3);
    expect(found.map(({ role, frame }) => `${role} ${frame}`)).toEqual(['list 0', 'list 1', 'paragraph 1']);
  });

  // A heading of 10 mm, a space of 2 and a block of 8 below a block of 20: 40 mm in all.
  it.each([
    { heightMm: 40, found: ['a 0:0', 'heading 0:20', 'b 0:32'] },
    { heightMm: 39.9, found: ['a 0:0', 'heading 1:0', 'b 1:12'] },
    { heightMm: 30, found: ['a 0:0', 'heading 1:0', 'b 1:12'] },
  ])('keep a heading with what follows it in columns of $heightMm mm', ({ heightMm, found }) => {
    expect(poured([named('a', 20), named('heading', 10, 0, true), named('b', 8, 2)], heightMm)).toEqual(found);
  });

  it('keep two headings, and the note below a table, together too', () => {
    const blocks = [named('a', 20), named('one', 5, 0, true), named('two', 5, 1, true), named('b', 8, 2)];
    expect(poured(blocks, 41)).toEqual(['a 0:0', 'one 0:20', 'two 0:26', 'b 0:33']);
    expect(poured(blocks, 40.9)).toEqual(['a 0:0', 'one 1:0', 'two 1:6', 'b 1:13']);
  });

  it('never leave a heading at the foot of a column, whatever follows it', () => {
    const heading = headingBlock(plain('Yarn to have ready'), 80);
    const cells = Array.from({ length: 40 }, (_, row) => [cell(`${row}`), cell('text')]);
    const columns = [
      { title: 'Row', widthMm: 20, align: 'start' as const },
      { title: 'What', widthMm: 60, align: 'start' as const },
    ];
    const followers: readonly [string, Block][] = [
      ['paragraph', paragraphBlock(plain('A few words that stand below.'), 80)],
      ['table', tableBlock(columns, cells, { title: 'Rows' })],
      ['list', listBlock([{ label: '1', labelTone: 'accent', text: plain('Cast on.'), more: [] }], 80)],
    ];
    for (const [role, follower] of followers) {
      for (let above = 0; above < 100; above += 0.5) {
        const found = framesOf([named('above', above), heading, follower], 100);
        const at = found.findIndex((element) => element.role === 'heading');
        const next = found.slice(at).find((element) => element.role === role);
        expect(next?.frame).toBe(found[at]?.frame);
      }
    }
  });

  it('break only where they say that they can', () => {
    expect(() => named('a', 10).split(5)).toThrow(RangeError);
    expect(() => poured([named('a', 31)], 30)).toThrow('fits on no page');
  });
});

describe('what is too tall for a column', () => {
  const many = Array.from({ length: 900 }, (_, at) => `word${at}`);
  /** All texts poured into columns of 70 mm, in order. */
  const textsIn = (block: Block): string[] => {
    const found: string[] = [];
    const frame = (page: number): Frame => ({ page, x: 0, y: 0, heightMm: 70 });
    pour(
      [block],
      { frame: frame(0), usedMm: 0 },
      (last) => frame(last.page + 1),
      (_, elements) => {
        for (const element of elements) {
          const items =
            element.role === 'list'
              ? element.entries.flatMap(({ label, body }) => [...label, ...body])
              : element.role === 'table'
                ? element.rows.filter(({ isHeader }) => !isHeader).flatMap(({ cells }) => cells.flat())
                : element.items;
          for (const item of items) {
            if (item.kind !== 'text') continue;
            expect(item.y).toBeLessThanOrEqual(70);
            found.push(item.spans.map(({ text }) => text).join(''));
          }
        }
      },
    );
    return found;
  };

  it('goes on in the next, and loses no word: paragraphs', () => {
    expect(
      textsIn(paragraphBlock(plain(many.join(' ')), 80))
        .join(' ')
        .split(' '),
    ).toEqual(many);
  });

  it('goes on in the next, and loses no word: an entry of a list, under one label', () => {
    const [text, more] = [many.slice(0, 600), many.slice(600)];
    const entry = { label: '!', labelTone: 'warn' as const, text: plain(text.join(' ')), more: plain(more.join(' ')) };
    const found = textsIn(listBlock([entry, { ...entry, text: plain('end'), more: [] }], 80));
    expect(found.join(' ').split(' ')).toEqual(['!', ...many, '!', 'end']);
  });

  it('goes on in the next, and loses no word: a row of a table, under its name', () => {
    const columns = [
      { title: 'Row', widthMm: 20, align: 'start' as const },
      { title: 'Needles', widthMm: 60, align: 'start' as const },
    ];
    const found = textsIn(tableBlock(columns, [[cell('7'), cell(many.join(' '))]], { title: 'Rows' }));
    const named = found.filter((text) => /^7( …)?$/.test(text.trim()));
    expect(named[0]).toBe('7');
    expect(new Set(named.slice(1))).toEqual(new Set(['7 …']));
    expect(named.length).toBeGreaterThan(3);
    expect(
      found
        .filter((text) => text.startsWith('word'))
        .join(' ')
        .split(' '),
    ).toEqual(many);
  });

  it('goes on in the next, and loses no word: a row of a table whose name is as tall', () => {
    const columns = [
      { title: 'Name', widthMm: 30, align: 'start' as const },
      { title: 'Needles', widthMm: 50, align: 'start' as const },
    ];
    const name = Array.from({ length: 60 }, (_, at) => `name${at}`);
    const found = textsIn(tableBlock(columns, [[cell(name.join(' ')), cell(many.join(' '))]], { title: 'Rows' }));
    const words = found.join(' ').split(' ');
    expect(new Set(words.filter((word) => word.startsWith('name')))).toEqual(new Set(name));
    expect(words.filter((word) => word.startsWith('word'))).toEqual(many);
  });
});
