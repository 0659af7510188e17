/** What is told to those who chose inches. */
import { describe, expect, it } from 'vitest';
import { gaugeFrom, gaugePer, gaugeRange, toWeight, toYarnUnit } from '@shared/length/index.ts';
import { placementSheet, sheetFacts, type PathItem } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, sampleProject, type ProjectAt, projectAt } from '@shared/project/index.ts';
import { textOf } from '@shared/words/index.ts';
import { followText } from '../../../src-main/cli/text/follow.ts';
import { planText } from '../../../src-main/cli/text/plan.ts';
import { TEST_DAY } from '../../day.ts';
import { call, Folder } from '../cli/calls.ts';
import { textsOf } from './items-of.ts';
import { PROJECTS } from './projects.ts';
import { fileTextOf } from '../../written-projects.ts';

describe('yards, ounces and four inches', () => {
  // International yard and pound agreement, 1959: a yard is 0.9144 m, a pound (of 16 oz) 0.45359237 kg.
  it('are what was agreed', () => {
    expect(toYarnUnit(914.4, 'in')).toBeCloseTo(1, 12);
    expect(toWeight(453.59237, 'in')).toBeCloseTo(16, 12);
    expect(toYarnUnit(1000, 'cm')).toBe(1);
    expect(toWeight(50, 'cm')).toBe(50);
    // 4 in are 101.6 mm.
    expect(gaugePer(100, 'in')).toBeCloseTo(101.6, 12);
    expect(gaugePer(28, 'cm')).toBe(28);
  });

  it('give a gauge back as it was, and no field takes what a file does not', () => {
    for (const count of [4, 27.5, 28, 33.33]) expect(gaugeFrom(gaugePer(count, 'in'), 'in')).toBeCloseTo(count, 12);
    const bounds = { least: 3, most: 123 };
    const { least, most } = gaugeRange(bounds, 'in');
    expect(gaugeFrom(least, 'in')).toBeGreaterThanOrEqual(bounds.least);
    expect(gaugeFrom(most, 'in')).toBeLessThanOrEqual(bounds.most);
    expect(gaugeRange(bounds, 'cm')).toEqual(bounds);
  });
});

const METRIC = /\d\s?(mm|cm|m|g)\b|Metres|Grams/;

function sheetLines(project: ProjectAt): string[] {
  const { pages } = placementSheet(sheetFacts(project), makePlan(pieceIn(project)), {
    paper: 'letter',
    date: TEST_DAY,
    unit: 'in',
  });
  return pages.flatMap((page) => textsOf(page).map(({ spans }) => spans.map(({ text }) => text).join('')));
}

/** With yarns whose count is known. */
function weighed(project: ProjectAt): ProjectAt {
  return {
    ...project,
    yarns: project.yarns.map((yarn) => ({
      ...yarn,
      count: { system: 'tex' as const, value: 278, plies: 1 },
      onHand: null,
    })),
  };
}

const widthOf = ({ lines }: PathItem): number => {
  const across = lines.flat().map(([x]) => x);
  return Math.max(...across) - Math.min(...across);
};

describe('in inches', () => {
  it.each(['sample', 'hem', 'crowded'])('nothing metric is told of the %s project', (name) => {
    const project = weighed((PROJECTS[name] as (typeof PROJECTS)[string])());
    const plan = makePlan(pieceIn(project));
    const told = [
      ...sheetLines(project),
      ...followText(project, plan, 'in').split('\n'),
      ...planText(project, plan, 'in').split('\n'),
    ];
    expect(told.filter((line) => METRIC.test(line))).toEqual([]);
    const all = told.join('\n');
    for (const found of [/ in 4 in\b/, /Yards/, /Ounces/, / yd, [\d.]+ oz\./, / \d+ in\b/]) expect(all).toMatch(found);
  });

  it('the bar to measure the page by is two inches, and 5 cm for others', () => {
    const project = projectAt(sampleProject());
    const barOf = (unit: 'cm' | 'in') => {
      const { pages } = placementSheet(sheetFacts(project), makePlan(pieceIn(project)), {
        paper: 'a4',
        date: TEST_DAY,
        unit,
      });
      const element = pages[0]?.elements.find(
        (one) =>
          one.role === 'paragraph' &&
          one.items.some((item) => item.kind === 'text' && /if it measures/.test(textOf(item.spans))),
      );
      const items = element?.role === 'paragraph' ? element.items : [];
      const [bar] = items.flatMap((item) => (item.kind === 'path' ? [widthOf(item)] : []));
      const said = items.flatMap((item) => (item.kind === 'text' ? [textOf(item.spans)] : [])).join(' ');
      return { bar, said: said.slice(0, said.indexOf(':')) };
    };
    // International inch: 25.4 mm.
    expect(barOf('in')).toEqual({ bar: expect.closeTo(2 * 25.4, 9), said: '2 in' });
    expect(barOf('cm')).toEqual({ bar: expect.closeTo(50, 9), said: '50 mm' });
  });

  it('the command line tells them where it is asked to', async () => {
    const folder = new Folder();
    try {
      const file = folder.file('sample.walewright', fileTextOf(projectAt(sampleProject())));
      expect((await call('follow', file, '--unit', 'in')).out).toMatch(/Main yarn slate: [\d.]+ yd/);
      expect((await call('plan', file, '--unit', 'in')).out).toMatch(/\([\d.]+ in\)/);
      expect((await call('plan', file)).out).toMatch(/Main yarn slate: [\d.]+ m\./);
    } finally {
      folder.remove();
    }
  });
});
