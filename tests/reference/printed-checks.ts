/** A sheet as it is printed, read back from its PDF, and what of it has to be the plan's. */
import { expect } from 'vitest';
import { placementSheet, rowListCsv, sheetFacts } from '@shared/output/index.ts';
import { planFor, type Plan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { planJson, type PlanJson, type RowJson } from '../../src-main/cli/json/plan.ts';
import { sheetToPdf } from '../../src-main/services/export/index.ts';
import { TEST_DAY } from '../day.ts';
import { wrongWith } from '../knit/knit-plan.ts';
import { readPdf, type PageRead } from '../pdf.ts';
import { each, labelOf, positionOf } from './knitter/needles.ts';
import { csvRows } from './told/csv-rows.ts';
import { headOf, sectionsOf, sectionUnder, type Run, type Section } from './told/page.ts';
import { rowsPrinted, type PrintedRow } from './told/printed-rows.ts';
import { stepsPrinted } from './told/printed-steps.ts';
import { ballsPrinted, strandsPrinted } from './told/printed-winding.ts';
import { asTold } from './told/steps.ts';

type Order = NonNullable<PlanJson['runningOrder']>;
type Act = Extract<Order[number], { kind: 'stop' }>['acts'][number];

export interface Planned {
  readonly project: ProjectAt;
  readonly plan: Plan;
  readonly json: PlanJson;
  /** The order that the plan has; it is compared with, never read. */
  readonly order: Order;
}

export interface Printed extends Planned {
  readonly pages: readonly PageRead[];
  readonly sections: readonly Section[];
}

/** Null where the project cannot be planned, or knitted as told. */
export function planned(project: ProjectAt): Planned | null {
  const made = planFor(pieceIn(project));
  if (!made.ok) return null;
  const json = planJson(project, made.value);
  return json.runningOrder && { project, plan: made.value, json, order: json.runningOrder };
}

export async function printed(plan: Planned): Promise<Printed> {
  const sheet = placementSheet(sheetFacts(plan.project), plan.plan, { paper: 'a4', date: TEST_DAY });
  const pages = await readPdf(await sheetToPdf(sheet));
  return { ...plan, pages, sections: sectionsOf(pages) };
}

/** Lengths are printed in whole centimetres. */
export const PRINTED_IN_MM = 10;

/** Followed from the text alone, the steps come to the designed fabric. */
export function expectKnitted({ project, plan, json, sections }: Printed): void {
  const steps = stepsPrinted(sections);
  expect(wrongWith(project, plan, json, steps as never, PRINTED_IN_MM)).toEqual([]);
}

/** All that the running order says stands in the steps, and nothing else: readings, needles, yarns, balls, lengths. */
export function expectSteps({ order, sections }: Printed): void {
  expect(sorted(asTold(stepsPrinted(sections) as never))).toEqual(sorted(asTold(order as never)));
}

const IN_SHAPING = /^(increase|decrease|cast-off|cast-on-more|weights|push-forward|push-back|check)$/;

/** In a table of shaping the order of left, right and what else is done is that of its columns. */
function sorted(order: readonly unknown[]): unknown {
  return order.map((item) => {
    const { acts } = item as { acts?: readonly { readonly act: string }[] };
    if (!acts?.every(({ act }) => IN_SHAPING.test(act))) return item;
    const key = (act: object): string => JSON.stringify(Object.entries(act).sort());
    return { ...(item as object), acts: [...acts].sort((a, b) => key(a).localeCompare(key(b))) };
  });
}

/** What the row list leaves to the steps, or to its column of wraps. */
const NOT_IN_ROWS: ReadonlySet<string> = new Set(['check', 'strand', 'lay', 'wrap']);

/** Every row of the list says of its needles, wraps, carriage and acts what the plan says. */
export function expectRows({ json, order, sections }: Printed): void {
  const list = rowsPrinted(sections, contrastsOf(json));
  expect(list?.rows.map(rowSaid)).toEqual(json.rows.map((row) => rowPlanned(row, json)));
  const acts = (counter: number): unknown[] =>
    order
      .flatMap((item) => (item.kind === 'stop' && item.counter === counter ? item.acts : []))
      .filter(({ act }) => !NOT_IN_ROWS.has(act));
  for (const { row, before } of list?.rows ?? []) expect(told(before)).toEqual(told(acts(row - 1)));
  expect(told(list?.after ?? [])).toEqual(told(acts(json.rows.length)));
}

/** The file for spreadsheets has the same rows, and all acts in them but wraps. */
export function expectCsv({ project, plan, json, order }: Planned): void {
  const rows = csvRows(rowListCsv(plan, pieceIn(project)));
  expect(rows.map(({ before: _, after: __, ...row }) => row)).toEqual(
    json.rows.map((row) => ({ ...rowPlanned(row, json), section: row.section, edges: row.edges })),
  );
  const acts = (counter: number): unknown[] =>
    order
      .flatMap((item) => (item.kind === 'stop' && item.counter === counter ? item.acts : []))
      .filter(({ act }) => act !== 'wrap');
  for (const { row, before, after } of rows) {
    expect(told(before)).toEqual(told(acts(row - 1)));
    expect(told(after)).toEqual(row === rows.length ? told(acts(row)) : []);
  }
}

function told(acts: readonly unknown[]): unknown {
  return (asTold([{ kind: 'stop', acts }]) as { acts: unknown }[])[0]?.acts;
}

/** Yarns that are not main, in the order of the balls. */
export function contrastsOf({ yarn }: PlanJson): string[] {
  return [...new Set(yarn.balls.filter(({ role }) => role === 'contrast').map((ball) => ball.yarn))];
}

function rowSaid({ row, from, contrast, wraps }: PrintedRow) {
  const needles = contrast.flatMap(({ yarn, needles: spans }) =>
    spans.flatMap(([first, last]) => each([positionOf(first), positionOf(last)]).map((at) => ({ at, yarn }))),
  );
  needles.sort((a, b) => a.at - b.at);
  return { row, from, needles: needles.map(({ at, yarn }) => `${labelOf(at)} ${yarn}`), wraps };
}

function rowPlanned({ row, from, runs, wraps }: RowJson, { yarn }: PlanJson) {
  const main = yarn.balls[0]?.yarn;
  const needles = runs
    .filter((run) => run.yarn !== main)
    .flatMap((run) => each([positionOf(run.first), positionOf(run.last)]).map((at) => `${labelOf(at)} ${run.yarn}`));
  return { row, from, needles, wraps };
}

/** Every ball is there with its number, its rows and metres, and every strand with its length, rows and wraps. */
export function expectWinding({ plan, json, order, sections }: Printed): void {
  const share = 1 + plan.yarn.margin;
  const { balls, sums } = ballsPrinted(sections, Math.round(100 * plan.yarn.margin));
  expect(balls.map(({ metres: _, toWind: __, ...ball }) => ball)).toEqual(
    json.yarn.balls.map(({ metres: _, ...ball }) => ball),
  );
  balls.forEach(({ metres, toWind }, index) => {
    const planned = json.yarn.balls[index]?.metres ?? NaN;
    // Rounded to a place after the point below 100 m, and to a metre above.
    expect(Math.abs(Number(metres) - planned)).toBeLessThanOrEqual(planned < 100 ? 0.051 : 0.501);
    expect(Math.abs(Number(toWind) - planned * share)).toBeLessThanOrEqual(planned * share < 100 ? 0.051 : 0.501);
  });
  for (const yarn of new Set(balls.map((ball) => ball.yarn))) {
    const own = json.yarn.balls.filter((ball) => ball.yarn === yarn);
    const sum = sums.find((one) => one.yarn === yarn);
    expect(sum?.balls).toBe(own.length > 1 ? own.length : undefined);
    if (sum)
      expect(Number(sum.metres)).toBeCloseTo(
        own.reduce((all, { metres }) => all + metres, 0),
        0,
      );
  }
  const laid = actsOf(order, 'lay');
  for (const { ball, yarn } of laid) expect(balls.find((one) => one.ball === ball)?.yarn).toBe(yarn);
  expect(new Set(balls.flatMap(({ ball }) => ball ?? []))).toEqual(new Set(laid.map(({ ball }) => ball)));

  const strands = strandsPrinted(sections);
  const cut = actsOf(order, 'strand').filter(({ at }) => at === 'start');
  expect(strands.flatMap(({ ids }) => ids).sort((a, b) => a - b)).toEqual(
    cut.map(({ id }) => id).sort((a, b) => a - b),
  );
  for (const { ids, cm, edge, rows, wraps } of strands) {
    const made = order.flatMap((item) =>
      item.kind === 'stop'
        ? item.acts.flatMap((act) =>
            act.act === 'wrap' && ids.includes(act.strand) ? [{ row: item.row ?? 0, edge: act.edge }] : [],
          )
        : [],
    );
    expect(made).toHaveLength(wraps);
    expect([Math.min(...made.map(({ row }) => row)), Math.max(...made.map(({ row }) => row))]).toEqual(rows);
    if (edge !== 'both') expect(new Set(made.map((wrap) => wrap.edge))).toEqual(new Set([edge]));
    for (const id of ids) expect(Math.ceil((cut.find((one) => one.id === id)?.mm ?? NaN) / 10)).toBe(cm);
  }
}

function actsOf<Name extends Act['act']>(order: Order, name: Name): Extract<Act, { act: Name }>[] {
  return order.flatMap((item) =>
    item.kind === 'stop' ? item.acts.filter((act): act is Extract<Act, { act: Name }> => act.act === name) : [],
  );
}

/** No needle is named that the plan does not have, on any page. */
export function expectNeedles({ json, pages }: Printed): void {
  const NEEDLE = /\b[LR][1-9]\d*\b/g;
  const planned = new Set(JSON.stringify(json).match(NEEDLE));
  const rows = json.rows.flatMap(({ edges: [first, last] }) => each([positionOf(first), positionOf(last)]));
  for (const at of rows) planned.add(labelOf(at));
  const named = pages.flatMap(({ texts }) => texts.flatMap(({ text }) => text.match(NEEDLE) ?? []));
  expect([...new Set(named)].filter((needle) => !planned.has(needle))).toEqual([]);
}

/** What to watch: each finding of the plan once, alone or among those alike. */
export function expectFindings({ json, sections }: Printed): void {
  const section = sectionUnder(sections, /^What to watch$/);
  const entries = (section?.lines ?? []).reduce<string[]>((found, { runs }) => {
    const text = runs.map((run) => run.text).join(' ');
    if (/^[!–] /.test(text)) found.push(text.slice(2));
    else found.push(`${found.pop() ?? ''} ${text}`.trim());
    return found;
  }, []);
  const counted = entries.map((entry) => {
    const text = json.findings.find((finding) => squeezed(entry).startsWith(squeezed(finding.text)))?.text;
    if (text === undefined) return 0;
    const rest = entry.slice(text.length);
    return 1 + [...rest.matchAll(/(\d+) more places?/g)].reduce((sum, [, more]) => sum + Number(more), 0);
  });
  expect(counted.reduce((sum, count) => sum + count, 0)).toBe(json.findings.length);
}

function squeezed(text: string): string {
  return text.replaceAll(/\s/g, '');
}

/** What nobody reads at the machine may be small: how the drawing is made, and the bar to measure. */
const MAY_BE_SMALL = /^(As on the needles, drawn at |50 mm: )/;
const LEAST_PT = 10;
const LEAST_FOLLOWED_PT = 11;
/** The titles of the tables that are followed, line by line. */
const TITLES =
  /^(Done|Counter|reads|Before|row|Carriage|at|Carriage at|Do this|Then|Left edge|Right edge|Also|Stitches|then|Knit to|Row|Before the row|Needles in .*|Wrap)$/;

/** 10 pt or more for what is read at the machine; 11 for the steps with their readings and for the row list. */
export function expectLegible({ sections }: Printed): void {
  const tooSmall: Run[] = [];
  for (const { heading, lines } of sections) {
    const isFollowed = /^(Knitting it|Row list)$/.test(heading);
    const table = lines.findIndex(({ runs }) => runs[0]?.text === 'Done');
    lines.forEach(({ runs }, at) => {
      const isCaption = [at, at - 1].some((one) => MAY_BE_SMALL.test(lines[one]?.runs[0]?.text ?? ''));
      const isTitle = at < table || runs.every(({ text }) => TITLES.test(text));
      const least = isCaption ? 0 : isFollowed && !isTitle ? LEAST_FOLLOWED_PT : LEAST_PT;
      // Sizes come in single precision.
      tooSmall.push(...runs.filter(({ sizePt }) => sizePt < least - 0.001));
    });
  }
  expect(tooSmall).toEqual([]);
}

/** Over each page: the project, the piece, its size where there are several, the page and the day. */
export function expectHeads({ project, json, pages }: Printed): void {
  const size = json.size === null ? '' : `, size ${json.size}`;
  pages.forEach((page, index) => {
    expect(headOf(page)).toEqual([
      `${project.name} · ${project.piece.name}${size} · Placement sheet`,
      `Page ${index + 1} of ${pages.length} · 2 January 2026`,
    ]);
  });
}
