/** What a garment takes of its yarns, read back from the PDF of all its pieces and worked out by hand. */
import { beforeAll, describe, expect, it } from 'vitest';
import { plannedPlaces } from '@shared/output/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { garmentPdf } from '../../src-main/services/export/makers.ts';
import { TEST_DAY } from '../day.ts';
import { garmentAt } from '../garment.ts';
import { readPdf, type PageRead } from '../pdf.ts';
import { sectionsOf, sectionUnder, textOf } from './told/page.ts';

async function printed(unit: LengthUnit): Promise<PageRead[]> {
  const [pieces = []] = plannedPlaces(garmentAt('front', 'S'), { pieces: 'all', sizes: 'this' });
  return readPdf(await garmentPdf(pieces, { paper: 'a4', date: TEST_DAY, lengthUnit: unit, charts: 'both' }));
}

/** The lines of the table of yarn, as the eye reads them. */
function yarnOn(pages: readonly PageRead[]): string[] {
  const section = sectionUnder(sectionsOf(pages.slice(0, 1)), /^Yarn for all pieces$/);
  return section?.lines.map(textOf) ?? [];
}

let pages: PageRead[];
beforeAll(async () => void (pages = await printed('cm')));

describe('the first page of all pieces', () => {
  /**
   * Munden's dry-relaxed wool (J. Text. Inst. 50, 1959, T448): l = √(19 / S) cm with
   * S = 2.8 × 4 = 11.2 stitches/cm², so 13.0247 mm a stitch; a float is 100 / 28 = 3.5714 mm a stitch.
   *
   * front:  100 × 50 = 5000 stitches of slate: 65.124 m; two ends of 150 mm, and casting off, 3 to 4 widths of 357.1 mm:
   *         1.25 m in the middle; 66.674 m, knitted once
   * sleeve: 60 × 40 − 4 = 2396 stitches of slate: 31.207 m, and a float of 4: 14.3 mm; two ends and 3½ times 214.3 mm:
   *         0.3 + 0.75 m; 32.272 m, twice 64.543 m;
   *         4 stitches of chalk 52.1 mm and two ends of 150 mm: 0.352 m, twice 0.704 m;
   *         one strand to wrap one needle: a stitch and two ends of 150 mm: 0.313 m, twice 0.626 m
   * slate:  66.674 + 64.543 + 0.626 = 131.843 m, of 1 g a metre 132 g; 10 % more is 145.0 m, 145 g, 3 balls of 50 g
   * chalk:  0.704 m; 10 % more is 0.774 m
   */
  it('has yarn by piece, as often as it is knitted, the sum, and what to buy in metres, grams and balls', () => {
    expect(yarnOn(pages)).toEqual(
      expect.arrayContaining([
        'slate front 66.7 1 66.7 67',
        'slate sleeve 32.3 2 64.5 65',
        'slate strands cut for wrapping 0.6 0.6',
        'slate all pieces 132 132',
        'slate to buy, 10 % more, in balls of 145 145 3',
        '50 g',
        'chalk sleeve 0.4 2 0.7 –',
        'chalk all pieces 0.7 –',
        'chalk to buy, 10 % more 0.8 – –',
      ]),
    );
  });

  // 1 yd = 0.9144 m, 1 oz = 28.3495 g (both exact by the agreement of 1959, to so many places).
  it('has it in yards and ounces for those who read inches', async () => {
    expect(yarnOn(await printed('in'))).toEqual(
      expect.arrayContaining([
        // 66.674 / 0.9144 = 72.9; 131.843 / 0.9144 = 144.2, 131.843 / 28.3495 = 4.65; 145.027: 158.6 and 5.1
        'slate front 72.9 1 72.9 2.4',
        'slate all pieces 144 4.7',
        'slate to buy, 10 % more, in balls of 159 5.1 3',
      ]),
    );
  });

  it('names the pieces with what each measures and how many are knitted', () => {
    const text = pages[0]?.texts.map((run) => run.text).join(' ') ?? '';
    expect(text).toContain('2 pieces, 3 to knit');
    expect(text).toContain('in size S');
    // 100 stitches at 28 in 10 cm are 35.7 cm, 50 rows at 40 are 12.5 cm.
    expect(text).toMatch(/Front: +100 stitches × 50 rows *, +35\.7 × 12\.5 cm/);
    expect(text).toMatch(/Sleeve: +60 stitches × 40 rows/);
  });
});

describe('the pages of all pieces', () => {
  it('say over each of them project, piece and size, and count the pages of each piece by themselves', () => {
    const heads = pages.map(({ texts }) =>
      texts
        .filter(({ y }) => y < 12)
        .map(({ text }) => text)
        .join(' | '),
    );
    const of = (called: string): string[] => heads.filter((head) => head.startsWith(`Skerry · ${called}, size S · `));
    const counts = ['all pieces', 'front', 'sleeve'].map((called) => of(called));
    expect(counts.flat()).toEqual(heads);
    for (const own of counts) {
      expect(own.length).toBeGreaterThan(0);
      own.forEach((head, index) => expect(head).toContain(`Page ${index + 1} of ${own.length}`));
    }
  });
});
