import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { makePlan, runningOrderOf } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { projectAt, pieceIn, sampleProject, type ProjectAt } from '@shared/project/index.ts';
import { runningOrderJson } from '../../../src-main/cli/json/running-order.ts';
import { followText } from '../../../src-main/cli/text/follow.ts';
import { anyProject } from '../../property/projects.ts';
import { asTold, followRead } from '../../reference/told/steps.ts';
import { PROJECTS } from '../output/projects.ts';
import type { KnittingStopJson, ToSetJson } from '../../../src-main/cli/json/stops.ts';
import type { PlanJson } from '../../../src-main/cli/json/plan.ts';
import { call, callJson, Folder } from './calls.ts';
import { fileTextOf } from '../../written-projects.ts';

/** What is read back from the text, beside what the order is; null where there is none. */
function bothOf(project: ProjectAt): { readonly read: unknown; readonly order: unknown } | null {
  const piece = pieceIn(project);
  const plan = outcome(() => makePlan(piece));
  if (!plan.ok) return null;
  const running = runningOrderOf(piece, plan.value);
  if (!running.isKnittable) return null;
  const text = followText(project, plan.value);
  return {
    read: asTold(followRead(text) as never),
    order: asTold(runningOrderJson(running.order, project) as never),
  };
}

type FollowJson = PlanJson & {
  readonly stops: readonly KnittingStopJson[] | null;
  readonly toSet: readonly ToSetJson[] | null;
};

const folder = new Folder();
afterAll(() => folder.remove());
const sample = folder.file('sample.walewright', fileTextOf(projectAt(sampleProject())));
const wide = folder.file(
  'wide.walewright',
  fileTextOf({
    ...projectAt(sampleProject()),
    machine: { ...projectAt(sampleProject()).machine, bed: { needles: 60, pitchMm: 4.5 } },
  }),
);

describe('follow', () => {
  it('reads out what to have at hand, and every reading with what is done there', async () => {
    const { out } = await call('follow', sample);
    expect(out).toContain('To have at hand\n  Main yarn slate: ');
    expect(out).toContain(
      'Before row 9 · counter reads 8 · carriage at the right (COR)\n  Increase 1 stitch at the left edge: L49.\n  Increase 1 stitch at the right edge: R49.\n  Knit rows 9–17, until the counter reads 17.',
    );
    expect(out.trimEnd()).toMatch(/Cast off all 124 stitches, [^.]*\.$/);
  });

  it('gives as JSON the order that plan gives', async () => {
    const { runningOrder } = await callJson<PlanJson>('plan', sample);
    expect(runningOrder?.length).toBeGreaterThan(20);
    expect((await callJson<PlanJson>('follow', sample)).runningOrder).toEqual(runningOrder);
  });

  it('gives no order for a piece wider than the bed, and says why', async () => {
    const { out } = await call('follow', wide);
    expect(out).toContain('This piece cannot be knitted as it is');
    expect(out).toContain('leave the bed');
    expect(out).not.toContain('Cast on');
    expect((await callJson<PlanJson>('follow', wide)).runningOrder).toBeNull();
  });

  it('goes on from a row, and says what is set at the machine before it', async () => {
    const { out } = await call('follow', sample, '--from', '41');
    expect(out).toContain(
      'To go on with row 41\n  The carriage stands at the right (COR).\n  Set the row counter to 40.\n',
    );
    expect(out).toContain('  Thread chalk into feeder 2.\n');
    expect(out).toContain(
      '  Push 12 needles forward for row 41, and all others back: L33–L31, L19–L17, R17–R19, R31–R33.\n',
    );
    expect(out).not.toContain('Cast on');
    expect(out).not.toContain('counter reads 39');
    expect(out).toContain('Before row 41 · counter reads 40 · carriage at the right (COR)');
    expect(out.trimEnd()).toMatch(/Cast off all 124 stitches, [^.]*\.$/);
  });

  it('goes on in the middle of rows before which nothing is done', async () => {
    const { out } = await call('follow', sample, '--from', '12');
    expect(out).toContain('Before row 12 · counter reads 11 · carriage at the left (COL)\n  Knit rows 12–17, until');
    expect((await call('follow', sample, '--from', '17')).out).toContain(
      'counter reads 16 · carriage at the right (COR)\n  Knit row 17.',
    );
  });

  it('from the first row on is all of it', async () => {
    expect((await call('follow', sample, '--from', '1')).out).toBe((await call('follow', sample)).out);
  });

  it('gives as JSON each reading with its row, from a row on', async () => {
    const all = await callJson<FollowJson>('follow', sample);
    expect(all.stops?.map(({ counter }) => counter)).toEqual(Array.from({ length: 141 }, (_, reading) => reading));
    const from = await callJson<FollowJson>('follow', sample, '--from', '41');
    expect(from.stops).toEqual(all.stops?.slice(40));
    expect(from.runningOrder).toEqual(all.runningOrder);
    expect(from.stops?.[0]).toMatchObject({
      counter: 40,
      carriageAt: 'right',
      carriageTo: 'left',
      row: { row: 41, carriage: 'pattern', selectedCount: 12, feeders: { 1: 'slate', 2: 'chalk' }, wraps: ['R34'] },
      goesOn: { rows: 1, to: 41 },
    });
    expect(from.toSet).toContainEqual({ set: 'yarn-in', feeder: 2, yarn: 'chalk', ball: null });
    expect(from.toSet).toContainEqual({ set: 'strand-waits', id: 2, needle: 'L35' });
    expect(await callJson<FollowJson>('follow', wide)).toMatchObject({ stops: null, toSet: null });
  });

  it.each(['0', '141', '-3', 'x', '4.5'])('refuses to go on from %j', async (row) => {
    const { status, warned } = await call('follow', sample, `--from=${row}`);
    expect(status).toBe(1);
    expect(warned).toContain(`--from: "${row}" is not a whole number from 1 to 140.`);
  });

  it.each(Object.keys(PROJECTS))('tells the running order of the %s project without loss', (name) => {
    const both = bothOf((PROJECTS[name] as () => ProjectAt)());
    if (both) expect(both.read).toEqual(both.order);
  });

  it('tells any running order without loss, what comes again told once', () => {
    let told = 0;
    fc.assert(
      fc.property(anyProject, (project) => {
        const both = bothOf(project);
        if (!both) return;
        expect(both.read).toEqual(both.order);
        told++;
      }),
      { numRuns: 240, seed: 13 },
    );
    expect(told).toBeGreaterThan(60);
  });
});
