/** The charts of a printed sheet as an eye finds them: in pictures of its pages at 150 dpi. */
import { expect, test } from '@playwright/test';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { copiesIn } from '@shared/pattern/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { sheetToPdf } from '../../src-main/services/export/index.ts';
import { TEST_DAY } from '../day.ts';
import { onNeedles } from '../reference/on-needles.ts';
import { readChart, readSheet } from '../reference/sheet-charts-read-back.ts';
import { PROJECTS } from '../unit/output/projects.ts';
import { coloursAt, type Spot } from './page/pdf-picture.ts';

/** Of a cell's width and height at each side: the lines between cells are there. */
const RIM = 0.12;

for (const name of ['sample', 'sixteen', 'three', 'large']) {
  test(`each cell of the charts of the ${name} project has the yarn of its stitch`, async ({ page }) => {
    const project = (PROJECTS[name] as () => ProjectAt)();
    const plan = makePlan(pieceIn(project));
    const sheet = placementSheet(sheetFacts(project), plan, { paper: 'a4', date: TEST_DAY });
    const pdf = await sheetToPdf(sheet);
    const { charts } = await readSheet(pdf);
    const spots = charts.flatMap(({ xs, ys, page: on }) =>
      ys.slice(1).flatMap((bottom, line) =>
        xs.slice(1).map((right, column): Spot => {
          const [left, top] = [xs[column] as number, ys[line] as number];
          const [across, down] = [(right - left) * RIM, (bottom - top) * RIM];
          return { page: on, left: left + across, right: right - across, top: top + down, bottom: bottom - down };
        }),
      ),
    );
    const colours = await coloursAt(page, pdf, spots, 150);
    let at = 0;
    const seen = charts.map((chart) => ({
      ...chart,
      colours: chart.colours.map((line) => line.map(() => colours[at++] as string)),
    }));

    for (const id of new Set(copiesIn(plan).map(({ motif }) => motif))) {
      const called = project.motifs.find((motif) => motif.id === id)?.name;
      const needles = onNeedles(plan, id).map((row) => row.map((yarn) => project.yarns[yarn]?.colour));
      for (const [way, cells] of [
        ['needles', needles],
        ['worn', needles.map((row) => row.toReversed())],
      ] as const) {
        const drawn = readChart(seen.filter((chart) => chart.name === called && chart.way === way));
        expect(drawn, `${called}, ${way}`).toEqual(cells);
      }
    }
  });
}
