import { describe, expect, it } from 'vitest';
import type { PlacedAllOver } from '@shared/fabric/index.ts';
import { label } from '@shared/bed/index.ts';
import {
  placementSheet,
  sheetFacts,
  type PaperSize,
  type SheetDocument,
  type SheetItem,
} from '@shared/output/index.ts';
import { rowLines } from '@shared/output/row-list-blocks.ts';
import { makePlan, runningOrderOf, type Plan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { allOversOf, bandsOf } from '@shared/pattern/index.ts';
import { textOf } from '@shared/words/index.ts';
import { sheetWords } from '@shared/words/sheet.ts';
import { TEST_DAY } from '../../day.ts';
import { allWords, itemBox, itemsOf, textBox, textsOf, wordsOn, type Box } from './items-of.ts';
import { filledProject, hemProject, PROJECTS, scarfProject } from './projects.ts';

const PAPERS: readonly PaperSize[] = ['a4', 'letter'];
const CASES = Object.keys(PROJECTS).flatMap((name) => PAPERS.map((paper) => ({ name, paper })));

interface Made {
  readonly project: ProjectAt;
  readonly plan: Plan;
  readonly sheet: SheetDocument;
}

const made = new Map<string, Made>();

function sheetOf(name: string, paper: PaperSize): Made {
  const key = `${name} ${paper}`;
  const known = made.get(key);
  if (known) return known;
  const project = (PROJECTS[name] as () => ProjectAt)();
  const plan = made.get(`${name} a4`)?.plan ?? makePlan(pieceIn(project));
  const fresh = { project, plan, sheet: placementSheet(sheetFacts(project), plan, { paper, date: TEST_DAY }) };
  made.set(key, fresh);
  return fresh;
}

/** From the leftmost to the rightmost and the highest to the lowest of some items. */
function boxOf(items: readonly SheetItem[]): Box {
  const boxes = items.map(itemBox);
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    right: Math.max(...boxes.map(({ right }) => right)),
    top: Math.min(...boxes.map(({ top }) => top)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  };
}

describe.each(CASES)('the sheet of the $name project on $paper', ({ name, paper }) => {
  it('keeps everything inside the margins', () => {
    for (const page of sheetOf(name, paper).sheet.pages) {
      const outside = itemsOf(page).filter((item) => {
        const { left, right, top, bottom } = itemBox(item);
        return left < 15.9 || right > page.widthMm - 15.9 || top < 7 || bottom > page.heightMm - 13.9;
      });
      expect(outside).toEqual([]);
    }
  });

  it('sets no text over another', () => {
    for (const page of sheetOf(name, paper).sheet.pages) {
      const boxes = textsOf(page)
        .map((item) => ({ ...textBox(item), text: textOf(item.spans) }))
        .sort((a, b) => a.top - b.top);
      const meeting: string[] = [];
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1)) {
          if (b.top >= a.bottom) break;
          if (a.left < b.right && b.left < a.right) meeting.push(`${a.text} | ${b.text}`);
        }
      });
      expect(meeting).toEqual([]);
    }
  });

  it('names the first and the last needle of every group and where to set up', () => {
    const { project, plan, sheet } = sheetOf(name, paper);
    const { isKnittable } = runningOrderOf(pieceIn(project), plan);
    const written = allWords(sheet).split('\n');
    for (const { block } of plan.groups) {
      expect(written).toContain(label(block.first));
      expect(written).toContain(label(block.last));
    }
    for (const { setUpAt } of bandsOf(plan)) {
      if (setUpAt !== null && isKnittable)
        expect(written.join(' ')).toMatch(new RegExp(`Set (pattern band|all-over) .* for row ${setUpAt + 2}:`));
    }
  });

  it('leaves no heading at the foot of a column', () => {
    for (const page of sheetOf(name, paper).sheet.pages) {
      const set = page.elements
        .filter(({ role }) => role !== 'decoration')
        .map((element) => ({ role: element.role, ...boxOf(itemsOf({ ...page, elements: [element] })) }));
      for (const heading of set.filter(({ role }) => role === 'heading')) {
        const below = set.filter(
          ({ role, top, left, right }) =>
            role !== 'heading' && top > heading.top && left < heading.left + 40 && right > heading.left,
        );
        expect({ page: page.title, heading, below: below.length > 0 }).toMatchObject({ below: true });
      }
    }
  });

  it('lists every row once', () => {
    const { project, plan } = sheetOf(name, paper);
    let next = 1;
    for (const { first, last } of rowLines(pieceIn(project), plan)) {
      expect(first).toBe(next);
      next = last + 1;
    }
    expect(next).toBe(plan.rows.length + 1);
  });

  it('numbers its pages', () => {
    const { pages } = sheetOf(name, paper).sheet;
    pages.forEach((page, index) => expect(wordsOn(page)).toContain(`Page ${index + 1} of ${pages.length}`));
  });
});

describe('what the sheet says', () => {
  // common practice, no source: hem of 100 rows folded, motif of 31 rows.
  it('sets the hem up with the row counter at 59 and patterns rows 61–91', () => {
    const project = hemProject();
    const written = allWords(
      placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper: 'a4', date: TEST_DAY }),
    ).replaceAll('\n', ' ');
    expect(written).toContain('Cast on 120 stitches, L60–R60, open: 8 rows of waste yarn and the ravel cord,');
    // The pass of row 60 chooses the needles of row 61, so all is set when the counter reads 59.
    expect(written).toMatch(
      /59 60 left \(COL\) .*Set pattern band 1 for row 61: L48 to L13, 3 copies of motif, mirrored; R12 to R47, 3 copies of motif, mirrored\./,
    );
    expect(written).toMatch(/ 60 61 right \(COR\) .*Knit row 61\./);
    expect(written).toMatch(/ 91 92 left \(COL\) .*Set the carriage to knit plain\./);
    expect(written).toContain('Hang the hem on L60–R60: 120 loops');
    // The worked placing: left group L48 … L13 and right R12 … R47, seen 13 / 24 / 13.
    expect(written).toContain(
      'Row 61, needles L60–R60 Row 61, visible 13 / 24 / 13 Row 61, pattern blocks 12 / 23 / 13',
    );
  });

  it('takes plain rows together but not over a row before which there is something to do', () => {
    const piece = pieceIn(scarfProject());
    const lines = rowLines(piece, makePlan(piece));
    const alone = lines.filter(({ first, last }) => first === last).map(({ first }) => first);
    // Hem of 12: cast on before row 1, joined before row 13, which is loose, and tight again from row 14 on;
    // set-up row 8, pattern 9 and 10, plain again from 11; a band from row 400 with its set-up row.
    expect(alone).toEqual(expect.arrayContaining([1, 7, 8, 9, 10, 11, 13, 14, 399, 400, 401, 402, 900]));
    const together = lines.filter(({ first, last }) => first < last).map(({ first, last }) => `${first}–${last}`);
    expect(together.slice(0, 2)).toEqual(['2–6', '15–92']);
  });

  it('tells a single stop of shaping among the steps, and more of them as a table', () => {
    const tables = ({ pages }: SheetDocument): number[] =>
      pages.flatMap(({ elements }) =>
        elements.flatMap((element) =>
          element.role === 'table' && element.title === sheetWords.knitting.shapingTitle
            ? [element.rows.filter(({ isHeader }) => !isHeader).length]
            : [],
        ),
      );
    const { sheet } = sheetOf('sample', 'a4');
    // 14 increases at each edge: two below the pattern, two in it among what else is done there, ten above.
    expect(tables(sheet).reduce((sum, rows) => sum + rows, 0)).toBe(2 + 10);
    // All over, without end needles: some stand between two readings of the pattern.
    const filled = filledProject();
    const patterns = filled.patterns.map((pattern) => ({ ...pattern, endNeedles: false }));
    const plan = makePlan(pieceIn({ ...filled, patterns }));
    const allOver = placementSheet(sheetFacts({ ...filled, patterns }), plan, { paper: 'a4', date: TEST_DAY });
    for (const rows of [...tables(sheet), ...tables(allOver)]) expect(rows).toBeGreaterThan(1);
  });

  it('says what the mark for a missing character means, and only where one stands', () => {
    const note = sheetWords.missingCharacters('□');
    expect(allWords(sheetOf('crowded', 'a4').sheet)).toContain(note);
    expect(allWords(sheetOf('sample', 'a4').sheet)).not.toContain('□');
    // Notes and tensions are as people wrote them, too.
    const { project, plan } = sheetOf('sample', 'a4');
    const { piece } = project;
    for (const written of [
      { ...project, notes: 'knit for 漢' },
      { ...project, piece: { ...piece, notes: 'begin slowly 👍' } },
      { ...project, piece: { ...piece, tension: { ...piece.tension, main: '7 漢' } } },
    ]) {
      const sheet = placementSheet(sheetFacts(written), plan, { paper: 'a4', date: TEST_DAY });
      expect(allWords(sheet).replaceAll('\n', ' ')).toContain(note);
    }
  });

  it('warns of moving carriage and hooks', () => {
    expect(allWords(sheetOf('sample', 'a4').sheet).replaceAll('\n', ' ')).toContain('moving carriage');
  });

  it('hatches the blank columns and brackets the repeat', () => {
    const { pages } = sheetOf('hem', 'a4').sheet;
    expect(pages.map(wordsOn).join('\n')).toContain('Hatched: blank columns of the repeat, 1 at the right.');
    expect(pages.map(wordsOn).join('\n')).toContain('Hatched: blank columns of the repeat, 1 at the left.');
    const figures = pages.flatMap(({ elements }) => elements.filter(({ role }) => role === 'figure'));
    const brackets = figures.flatMap((figure) =>
      figure.role === 'figure'
        ? figure.items.filter(
            (item) => item.kind === 'path' && item.stroke?.paint === 'accent' && item.lines.length === 4,
          )
        : [],
    );
    // One chart as on the needles, one as worn.
    expect(brackets).toHaveLength(2);
  });
});

describe('the sheet of a piece with fills', () => {
  it('says where their copies start, how many are whole, and how they meet, and shows the chart', () => {
    const project = filledProject();
    const plan = makePlan(pieceIn(project));
    const said = allWords(placementSheet(sheetFacts(project), plan, { paper: 'a4', date: TEST_DAY })).replace(
      /\s+/g,
      ' ',
    );
    expect(said).toContain('All-over 1, motif, rows 2–59');
    expect(said).toContain('Its edges are plain, so nothing has to match in the seam.');
    expect(said).toContain('All-over 2, motif, rows 60–140');
    expect(said).toContain('Each copy is moved 4 needles to the right of the one below it.');
    const { whole, leftOut } = allOversOf(plan)[1] as PlacedAllOver;
    expect(said).toContain(`${whole} copies whole and ${leftOut.length} left out.`);
    expect(said).toContain('Switch end-needle selection on.');
    expect(said).toContain('Chart: motif');
    expect(said).not.toContain(sheetWords.groups.none);
  });
});
