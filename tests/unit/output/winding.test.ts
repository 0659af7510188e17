import { describe, expect, it } from 'vitest';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { sheetWords } from '@shared/words/sheet.ts';
import { TEST_DAY } from '../../day.ts';
import { allWords, tableOf } from './items-of.ts';
import { hemProject, PROJECTS } from './projects.ts';

const project = PROJECTS['sample']?.() as ProjectAt;
const plan = makePlan(pieceIn(project));
const SAMPLE = { project, plan, sheet: placementSheet(sheetFacts(project), plan, { paper: 'a4', date: TEST_DAY }) };

describe('what the sheet says of yarn to wind and strands to cut', () => {
  it('says how much yarn to wind off: a tenth more than the piece takes', () => {
    const { plan, sheet } = SAMPLE;
    const written = tableOf(sheet, sheetWords.yarn.title);
    expect(written[0]).toEqual(['Yarn', 'For', 'Metres', 'Metres + 10 %']);
    expect(written).toHaveLength(1 + plan.yarn.uses.length);
    plan.yarn.uses.forEach(({ totalMm }, index) => {
      const [, , metres, toWind] = written[index + 1] as [string, string, string, string];
      expect(Number(metres)).toBeCloseTo(totalMm / 1000, 0);
      expect(Number(toWind)).toBeCloseTo((totalMm / 1000) * 1.1, 0);
      expect(Number(toWind) / Number(metres)).toBeCloseTo(1.1, 2);
    });
  });

  it('says of each ball which group it is for, and the strands to cut by their numbers, the longest first', () => {
    const project = hemProject();
    const own = { ...project, piece: { ...project.piece, hemRows: 0 } };
    const bands = bandsOf(own).map((band) => ({
      ...band,
      groups: band.groups.map((group) => ({ ...group, hasOwnBall: true })),
    }));
    const plan = makePlan(pieceIn({ ...own, patterns: bands }));
    const sheet = placementSheet(sheetFacts({ ...own, patterns: bands }), plan, { paper: 'a4', date: TEST_DAY });
    expect(tableOf(sheet, sheetWords.yarn.title).map((cells) => cells.slice(0, 3))).toEqual([
      ['Yarn', 'Ball', 'For'],
      ['slate, main', '', 'Rows 1–100'],
      ['chalk, contrast', '1', 'Group 1, rows 36–66'],
      ['chalk, contrast', '2', 'Group 2, rows 36–66'],
      ['chalk, all 2 balls', '', ''],
    ]);
    expect(tableOf(sheet, sheetWords.strands.title('slate'))).toEqual([
      ['Strand', 'Cut', 'For', 'Rows', 'Wraps'],
      ['1–2', '2 of 65 cm', 'Left edge of groups 1–2', '36–66', '32'],
      ['3–4', '2 of 62 cm', 'Right edge of groups 1–2', '37–65', '30'],
    ]);
  });

  it('names strands that are cut alike in the order of the steps, though one is longer by a hair', () => {
    const { sheet } = SAMPLE;
    expect(tableOf(sheet, sheetWords.strands.title('slate')).map(([strand, cut]) => [strand, cut])).toEqual([
      ['Strand', 'Cut'],
      ['1', '1 of 51 cm'],
      ['2', '1 of 51 cm'],
    ]);
  });

  it('says metres alone until a yarn has a count, then grams of that yarn', () => {
    const { yarn } = sheetWords;
    const { project, plan, sheet } = SAMPLE;
    const written = allWords(sheet).split('\n');
    expect(written).toContain(yarn.columns.length.cm);
    expect(written).not.toContain(yarn.columns.weight.cm);
    const yarns = project.yarns.map((own, index) =>
      index === 0 ? { ...own, count: { system: 'tex' as const, value: 50, plies: 1 }, onHand: null } : own,
    );
    const weighed = makePlan(pieceIn({ ...project, yarns }));
    const said = allWords(
      placementSheet(sheetFacts({ ...project, yarns }), weighed, { paper: 'a4', date: TEST_DAY }),
    ).split('\n');
    const title = said.indexOf(yarn.columns.weight.cm);
    const metres = (plan.yarn.uses[0]?.totalMm ?? 0) / 1000;
    // 50 tex is 50 g in 1000 m (ISO 1144).
    expect(said.slice(title)).toContain((metres * 0.05).toFixed(0));
    expect(said.slice(title)).toContain('–');
  });
});
