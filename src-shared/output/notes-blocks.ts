/** What the knitter wrote on project and piece, and lines to write on. */
import type { LengthUnit } from '../length/index.ts';
import { plain } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import { wholeBlock, type Block } from './blocks/block.ts';
import { headingBlock, paragraphBlock } from './blocks/text.ts';
import { lineItem, textItem } from './items.ts';
import type { SheetFacts } from './sheet-facts.ts';
import { baselineMm, HAIRLINE_MM, LINE_MM, lineHeightMm, SMALL_PT } from './style.ts';

const LINES = 8;
const LINE_APART_MM = 9;

export function notesBlocks({ notes, piece }: SheetFacts, widthMm: number): Block[] {
  const { notes: said } = sheetWords;
  const written = [
    [said.project, notes],
    [said.piece, piece.notes],
  ] as const;
  return [
    headingBlock(plain(said.title), widthMm),
    ...written.flatMap(([title, text]) =>
      text.trim() === ''
        ? []
        : [
            headingBlock(plain(title), widthMm, 3),
            ...text
              .split(/\r?\n/)
              .flatMap((line) => (line.trim() === '' ? [] : [paragraphBlock(plain(line), widthMm)])),
          ],
    ),
    paragraphBlock(plain(said.room), widthMm, { tone: 'soft', keepsWithNext: true }),
    wholeBlock(LINES * LINE_APART_MM, 0, (x, y) => [
      {
        role: 'decoration',
        items: Array.from({ length: LINES }, (_, line) => {
          const at = y + (line + 1) * LINE_APART_MM;
          return lineItem([x, at], [x + widthMm, at], { paint: 'rule', width: HAIRLINE_MM });
        }),
      },
    ]),
  ];
}

/** By a ruler that the knitter has: 5 cm, or 2 in of 25.4 mm. */
const BAR_MM = { cm: 50, in: 50.8 } as const;
const END_MM = 1.5;

/** A bar to measure, which shows whether the page was printed at its own size. */
export function barBlock(unit: LengthUnit): Block {
  const barMm = BAR_MM[unit];
  return wholeBlock(lineHeightMm(SMALL_PT) + 1, 3, (x, y) => {
    const middle = y + lineHeightMm(SMALL_PT) / 2;
    const stroke = { paint: 'ink', width: LINE_MM } as const;
    return [
      {
        role: 'paragraph',
        items: [
          lineItem([x, middle], [x + barMm, middle], stroke),
          lineItem([x, middle - END_MM], [x, middle + END_MM], stroke),
          lineItem([x + barMm, middle - END_MM], [x + barMm, middle + END_MM], stroke),
          textItem(sheetWords.ruler[unit], x + barMm + 3, y + baselineMm(SMALL_PT), { sizePt: SMALL_PT, tone: 'soft' }),
        ],
      },
    ];
  });
}
