/**
 * A knitter who has nothing but the Knit bench: each stop is read off the page
 * as it is written there, and what was read is handed to the simulated knitter,
 * who has to come out with the fabric as it was designed.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from '@playwright/test';
import { planFor } from '@shared/plan/index.ts';
import { pieceIn, projectAt, projectFromText, sampleProject, type ProjectAt } from '@shared/project/index.ts';
import { planJson } from '../../src-main/cli/json/plan.ts';
import { wrongWith } from '../knit/knit-plan.ts';
import { labels } from '../reference/told/sentences.ts';
import { orderRead, stepRead } from '../reference/told/steps.ts';
import { expect, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';
import { settled } from '../written-projects.ts';

/** Lengths are told in whole centimetres. */
const TOLD_IN_MM = 10;

/** What stands on the page at one reading. */
interface Seen {
  readonly reading: number;
  readonly way: string;
  readonly acts: readonly string[];
  /** `Row 25, in pattern`; null at the end. */
  readonly row: string | null;
  /** `L36–L34`, as they stand in the row's card. */
  readonly runs: readonly string[];
  readonly bed: string;
}

/** Reads the page and presses the large button, until the piece is off the needles. */
async function knitFromThePage(page: Page): Promise<Seen[]> {
  return page.evaluate(async () => {
    const text = (element: Element | null | undefined): string => element?.textContent?.trim() ?? '';
    const seen: {
      reading: number;
      way: string;
      acts: string[];
      row: string | null;
      runs: string[];
      bed: string;
    }[] = [];
    for (;;) {
      const main = document.querySelector('main') as HTMLElement;
      const reading = text(main.querySelector('.reading'));
      const row = main.querySelector('section.row');
      seen.push({
        reading: Number(reading),
        way: main.querySelector('.way svg')?.getAttribute('aria-label') ?? '',
        acts: [...main.querySelectorAll('.todo li label')].map(text),
        row: row && text(row.querySelector('h2')),
        runs: [...main.querySelectorAll('section.row .run')].map(text),
        bed: main.querySelector('.bed svg')?.getAttribute('aria-label') ?? '',
      });
      const button = main.querySelector<HTMLButtonElement>('[data-ends-row]');
      if (!button) throw new Error(`There is no way on from ${reading}`);
      button.click();
      // The row is on the disk before the page says so.
      const isOver = (): boolean =>
        row ? text(main.querySelector('.reading')) !== reading : main.querySelector('[data-ends-row]') === null;
      while (!isOver()) await new Promise((resolve) => setTimeout(resolve, 5));
      if (!row) return seen;
    }
  });
}

const fixture = (name: string): ProjectAt =>
  projectAt(projectFromText(readFileSync(resolve(import.meta.dirname, '../fixtures', `${name}.walewright`), 'utf8')));

const SAMPLE = projectAt(sampleProject());

const PIECES: readonly (readonly [about: string, project: ProjectAt])[] = [
  ['the sample', SAMPLE],
  ['a hemmed sleeve', settled(SAMPLE, { piece: { ...SAMPLE.piece, hemRows: 20 } })],
  ['a cuff that is all hem', fixture('harbour-hem-3')],
  ['the largest of three sizes of an all-over', projectAt(fixture('graded-sleeve-4').whole, { size: 'size-3' })],
  [
    'own balls',
    twelveStitchMotif([2, 2], {
      piece: { shape: { kind: 'rectangle', stitches: 60, rows: 40 } },
      band: {
        groups: twelveStitchMotif([2, 2])
          .patterns.flatMap((band) => (band.kind === 'band' ? band.groups : []))
          .map((group) => ({ ...group, hasOwnBall: true })),
      },
    }),
  ],
];

for (const [about, project] of PIECES) {
  test(`${about} is finished as designed by who reads the page alone`, async ({ page, start, home }) => {
    await start();
    writeFileSync(join(home, 'piece.walewright'), textOf(project));
    await page.keyboard.press('Control+O');
    await new FilePanel(page).openProject('piece.walewright', project.name);
    await page.getByRole('button', { name: 'Knit', exact: true }).click();
    await expect(page.getByRole('button', { name: 'Row done' })).toBeVisible();
    if (project.sizes.length > 1) await page.getByLabel('Size').selectOption(project.at.size);
    await expect(page.getByText(`Row 1 of ${project.piece.shape.rows}`, { exact: true })).toBeVisible();
    const seen = await knitFromThePage(page);
    await expect(page.getByRole('main').getByRole('status')).toHaveText('This piece is off the needles.');

    const planned = planFor(pieceIn(project));
    if (!planned.ok) throw new Error(planned.problem.code);
    const json = planJson(project, planned.value);
    const side = ({ way }: Seen): string => (/from the left/.test(way) ? 'left (COL)' : 'right (COR)');
    const steps = seen.map((stop, at) => {
      const isEnd = stop.row === null;
      // The end has no way to go: the carriage stands where the last row brought it.
      const before = seen[at - 1];
      const at_ = isEnd && before ? (/from the left/.test(before.way) ? 'right (COR)' : 'left (COL)') : side(stop);
      const when = isEnd ? `after row ${stop.reading}` : `before row ${stop.reading + 1}`;
      const heading = `${when} · counter reads ${stop.reading} · carriage at the ${at_}`;
      return stepRead(heading, isEnd ? stop.acts : [...stop.acts, `Knit row ${stop.reading + 1}.`]);
    });
    expect(wrongWith(project, planned.value, json, orderRead(steps) as never, TOLD_IN_MM)).toEqual([]);

    // Row by row the card and the bed say the needles that the plan puts into contrast.
    for (const stop of seen.slice(0, -1)) {
      const { contrast } = json.rows[stop.reading] as (typeof json.rows)[number];
      const isPattern = stop.row?.endsWith('in pattern') === true;
      const wanted = isPattern
        ? contrast.flatMap(([first, last]) => labels(first === last ? first : `${first}–${last}`))
        : [];
      expect(stop.runs.flatMap(labels), `row ${stop.reading + 1}`).toEqual(wanted);
      const forward = /, (\d+) forward$/.exec(stop.bed)?.[1] ?? '0';
      expect(Number(forward), `the bed at ${stop.reading}`).toBe(wanted.length);
    }
  });
}
