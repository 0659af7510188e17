/** The steps of printed sheets read as a knitter reads them: they are the running order, act by act. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placementSheet, sheetFacts, type SheetDocument, type SheetItem } from '@shared/output/index.ts';
import { makePlan, runningOrderOf } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { pieceIn, sampleProject, type Project } from '@shared/project/index.ts';
import { runningOrderJson } from '../../src-main/cli/json/running-order.ts';
import { TEST_DAY } from '../day.ts';
import { anyProject } from '../property/projects.ts';
import { PROJECTS } from '../unit/output/projects.ts';
import type { OrderJson } from './knitter/index.ts';
import { actRead } from './told/sentences.ts';
import { againRead, asTold, knitRead, orderRead, stopRead, type ReadStep } from './told/steps.ts';

const textsIn = (items: readonly SheetItem[]): string[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item.spans.map(({ text }) => text).join('')] : []));

/** Lines become sentences: each ends with the line that makes it whole. */
function sentencesIn(lines: readonly string[]): string[] {
  const sentences: string[] = [];
  let open = '';
  for (const line of lines) {
    open = `${open} ${line}`.trim();
    if (!open.endsWith('.') || !outcome(() => actRead(open)).ok) continue;
    sentences.push(open);
    open = '';
  }
  return open === '' ? sentences : [...sentences, open];
}

/** A row of a table with what of it stands on the next page. */
type Cells = string[][];

/** The rows of all tables of steps in order, and what is told once between them. */
function rowsOf({ pages }: SheetDocument): (Cells | string)[] {
  const rows: (Cells | string)[] = [];
  for (const element of pages.flatMap(({ elements }) => elements)) {
    if (element.role === 'paragraph') {
      const text = textsIn(element.items).join(' ');
      if (/^Rows \d+–\d+: knit them as/.test(text)) rows.push(text);
    }
    if (element.role !== 'table' || !['Knitting it', 'Shaping'].includes(element.title)) continue;
    for (const { isHeader, cells } of element.rows) {
      if (isHeader) continue;
      const read = cells.map(textsIn);
      const before = rows.at(-1);
      if (read[1]?.[0]?.endsWith(' …') && Array.isArray(before)) {
        read.forEach((lines, at) => at !== 1 && before[at]?.push(...lines));
      } else rows.push(read);
    }
  }
  return rows;
}

function heading([, counter = [], row = [], carriage = []]: Cells): string {
  const when = row[0] === 'end' ? `after row ${counter[0]}` : `before row ${row[0]}`;
  return `${when} · counter reads ${counter[0]} · carriage at the ${carriage[0]}`;
}

const SHAPED: Readonly<Record<string, (needles: string, edge: string) => string>> = {
  increase: (needles, edge) => `Increase 1 stitch at the ${edge} edge: ${needles}.`,
  decrease: (needles, edge) => `Decrease 1 stitch at the ${edge} edge: ${needles}.`,
};

function shapingRead(text: string, edge: 'left' | 'right') {
  const [, what = '', needles = ''] = /^(increase|decrease|cast off|cast on) (.+)$/.exec(text) ?? [];
  if (SHAPED[what]) return actRead(SHAPED[what](needles, edge));
  const [first = '', last = first] = needles.split('–');
  return { act: what === 'cast off' ? 'cast-off' : 'cast-on-more', edge, needles: [first, last] };
}

function readBack(sheet: SheetDocument): OrderJson {
  const told: ReadStep[] = [];
  for (const row of rowsOf(sheet)) {
    if (typeof row === 'string') {
      told.push(...againRead(row, told));
      continue;
    }
    if (row.length === 6) {
      const knit = (row[5] ?? []).join(' ');
      told.push({ stop: stopRead(heading(row), sentencesIn(row[4] ?? [])), knit: knit === '' ? null : knitRead(knit) });
      continue;
    }
    const stop = stopRead(heading(row), []);
    const [left = '', right = ''] = [row[4], row[5]].map((lines = []) => lines.join(' '));
    const acts = [
      ...(left === '' ? [] : [shapingRead(left, 'left')]),
      ...(right === '' ? [] : [shapingRead(right, 'right')]),
      ...sentencesIn(row[6] ?? []).map(actRead),
    ] as typeof stop.acts;
    told.push({ stop: { ...stop, acts }, knit: [stop.row ?? 0, Number(row[8]?.[0])] });
  }
  return orderRead(told);
}

const IN_SHAPING = /^(increase|decrease|cast-off|cast-on-more|weights|push-forward|push-back)$/;

/** In a table of shaping the order of left, right and what else is done is that of its columns. */
function sorted(order: readonly unknown[]): unknown {
  return order.map((item) => {
    const { acts } = item as { acts?: readonly { readonly act: string }[] };
    if (!acts?.every(({ act }) => IN_SHAPING.test(act))) return item;
    const key = (act: object): string => JSON.stringify(Object.entries(act).sort());
    return { ...(item as object), acts: [...acts].sort((a, b) => key(a).localeCompare(key(b))) };
  });
}

/** Null where the piece cannot be planned, or knitted as told. */
function bothOf(project: Project): { readonly read: unknown; readonly order: unknown } | null {
  const piece = pieceIn(project);
  const plan = outcome(() => makePlan(piece));
  if (!plan.ok) return null;
  const running = runningOrderOf(piece, plan.value);
  const sheet = placementSheet(sheetFacts(project), plan.value, { paper: 'a4', date: TEST_DAY });
  if (!running.isKnittable) {
    expect(rowsOf(sheet)).toEqual([]);
    return null;
  }
  return {
    read: sorted(asTold(readBack(sheet) as never)),
    order: sorted(asTold(runningOrderJson(running.order, project) as never)),
  };
}

describe('the steps of a printed sheet', () => {
  it('of the sample are its running order', () => {
    const both = bothOf(sampleProject());
    expect(both?.read).toEqual(both?.order);
    expect(both).not.toBeNull();
  });

  it.each(Object.keys(PROJECTS).filter((name) => name !== 'crowded'))(
    'of the %s project are its running order',
    (name) => {
      const both = bothOf((PROJECTS[name] as () => Project)());
      if (both) expect(both.read).toEqual(both.order);
    },
  );

  it('of any project are its running order', () => {
    let read = 0;
    fc.assert(
      fc.property(anyProject, (project) => {
        const both = bothOf(project);
        if (!both) return;
        expect(both.read).toEqual(both.order);
        read++;
      }),
      { numRuns: 260, seed: 14 },
    );
    expect(read).toBeGreaterThanOrEqual(60);
  });

  it('are not there for a piece that leaves the bed: the first page says why, and orders nothing', () => {
    const sample = sampleProject();
    const project = { ...sample, piece: { ...sample.piece, bed: { ...sample.piece.bed, needles: 60 } } };
    expect(bothOf(project)).toBeNull();
    const sheet = placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper: 'a4', date: TEST_DAY });
    const said = sheet.pages.map(({ elements }) =>
      elements
        .flatMap((element) => (element.role === 'table' || element.role === 'list' ? [] : textsIn(element.items)))
        .join(' '),
    );
    expect(said[0]).toContain('This piece cannot be knitted as it is');
    expect(said.join(' ')).not.toMatch(/Cast on|Knitting it|Row list/);
  });
});
