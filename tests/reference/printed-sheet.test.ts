/**
 * The printed sheet read back from its PDF, by a reader that knows the text
 * alone: a knitter who follows it comes to the designed fabric, and all that it
 * says is what `plan --json` says.
 */
import { describe, expect, it } from 'vitest';
import { sampleProject, type ProjectAt, projectAt } from '@shared/project/index.ts';
import { wrongWith } from '../knit/knit-plan.ts';
import { projectsOf } from '../knit/tried.ts';
import {
  expectCsv,
  expectFindings,
  expectHeads,
  expectKnitted,
  expectLegible,
  expectNeedles,
  expectRows,
  expectSteps,
  expectWinding,
  planned,
  printed,
  type Printed,
  PRINTED_IN_MM,
} from './printed-checks.ts';
import { sectionsOf } from './told/page.ts';
import { stepsPrinted } from './told/printed-steps.ts';
import { WORKED } from './worked-pieces.ts';

const CHECKS: readonly (readonly [title: string, check: (sheet: Printed) => void])[] = [
  ['can be knitted from', expectKnitted],
  ['tells the running order, act by act', expectSteps],
  ['lists every row as it is planned', expectRows],
  ['has its rows in the file for spreadsheets too', expectCsv],
  ['says what to wind and to cut, ball by ball', expectWinding],
  ['names no needle that is not in the plan', expectNeedles],
  ['says each thing to watch once', expectFindings],
  ['is set in 10 pt or more, steps and rows in 11', expectLegible],
  ['says over each page what it belongs to', expectHeads],
];

const sheets = new Map<string, Promise<Printed>>();

function sheetOf(name: string): Promise<Printed> {
  const known = sheets.get(name);
  if (known) return known;
  const plan = planned((WORKED[name] as () => ProjectAt)());
  if (!plan) throw new Error(`${name} cannot be knitted`);
  const sheet = printed(plan);
  sheets.set(name, sheet);
  return sheet;
}

describe.each(Object.keys(WORKED))('the sheet of %s', (name) => {
  it.each(CHECKS)('%s', async (_, check) => check(await sheetOf(name)));
});

describe('the sheets of random projects', () => {
  const plans = projectsOf(500, 21).flatMap((project) => planned(project) ?? []);

  it.each(Array.from({ length: 12 }, (_, at) => 5 * at))('from %i on are read back and knitted from', async (from) => {
    const five = plans.slice(from, from + 5);
    expect(five).toHaveLength(5);
    for (const plan of five) {
      const sheet = await printed(plan);
      for (const [, check] of CHECKS) check(sheet);
    }
  });

  it('and the files for spreadsheets have the same rows', () => {
    expect(plans.length).toBeGreaterThan(200);
    for (const plan of plans) expectCsv(plan);
  });
});

describe('what is read', () => {
  /** What comes of the sample where one text of its sheet is another. */
  async function changed(from: string, to: string): Promise<string[]> {
    const { project, plan, json, pages } = await sheetOf('the sample');
    const isIt = ({ text }: { text: string }): boolean => text.replace(/^•\s*/, '') === from;
    expect(pages.flatMap(({ texts }) => texts.filter(isIt)).length).toBeGreaterThan(0);
    const others = pages.map(({ texts }) => ({
      texts: texts.map((run) => (isIt(run) ? { ...run, text: run.text.replace(from, to) } : run)),
    }));
    return wrongWith(project, plan, json, stepsPrinted(sectionsOf(others)) as never, PRINTED_IN_MM);
  }

  it.each([
    ['Thread chalk into feeder 2.', 'Hang the weights.'],
    ['Switch needle selection on.', 'Switch needle selection off.'],
    ['Set the carriage to knit the pattern.', 'Set the carriage to knit plain.'],
    ['increase R49', 'increase R50'],
    ['125', '126'],
  ])('is the text alone: with %s become %s the piece cannot be knitted', async (from, to) => {
    expect(await changed(from, from)).toEqual([]);
    expect(await changed(from, to)).not.toEqual([]);
  });

  it('is nothing where a piece leaves the bed: the first page says why, and there are no steps', async () => {
    const sample = projectAt(sampleProject());
    const bed = { ...sample.machine.bed, needles: 60 };
    expect(planned({ ...sample, machine: { ...sample.machine, bed } })).toBeNull();
  });
});
