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
   * front:  100 × 50 = 5000 stitches of slate: 65.124 m, knitted once
   * sleeve: 60 × 40 − 4 = 2396 stitches of slate: 31.207 m, and a float of 4: 14.3 mm; 31.222 m, twice 62.443 m;
   *         4 stitches of chalk 52.1 mm and two ends of 150 mm: 0.352 m, twice 0.704 m;
   *         one strand to wrap one needle: a stitch and two ends of 150 mm: 0.313 m, twice 0.626 m
   * slate:  65.124 + 62.443 + 0.626 = 128.193 m, of 1 g a metre 128 g; 10 % more is 141.0 m, 141 g, 3 balls of 50 g
   * chalk:  0.704 m; 10 % more is 0.774 m
   */
  it('has yarn by piece, as often as it is knitted, the sum, and what to buy in metres, grams and balls', () => {
    expect(yarnOn(pages)).toEqual(
      expect.arrayContaining([
        'slate front 65.1 1 65.1 65',
        'slate sleeve 31.2 2 62.4 62',
        'slate strands cut for wrapping 0.6 0.6',
        'slate all pieces 128 128',
        'slate to buy, 10 % more 141 141 3',
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
        // 65.124 / 0.9144 = 71.2; 128.193 / 0.9144 = 140.2, 128.193 / 28.3495 = 4.5; 141.012: 154.2 and 5.0
        'slate front 71.2 1 71.2 2.3',
        'slate all pieces 140 4.5',
        'slate to buy, 10 % more 154 5 3',
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
