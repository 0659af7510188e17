/** The preview of the sheet, page by page, with a worker that speaks when it is told to. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { localDay } from '@shared/day/index.ts';
import { sheetToSvg, type SheetOptions } from '@shared/output/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { LOOKED_AT, projectAt, sampleProject, START_PIECE, type ProjectAt, type Scope } from '@shared/project/index.ts';
import { garmentAt } from '../../garment.ts';
import { settled } from '../../written-projects.ts';
import { SheetPreview } from '../../../src-renderer/sheet/preview.ts';
import type { SentProject } from '../../../src-renderer/worker/jobs/sent-project.ts';
import { sheetJob } from '../../../src-renderer/worker/jobs/sheet.ts';
import { sheetOf } from '../../../src-renderer/worker/jobs/sheet-of.ts';
import type { ToWorker } from '../../../src-renderer/worker/messages.ts';
import { HeldWorker, starting } from '../renderer-worker/held-worker.ts';

const OPTIONS: SheetOptions = { paper: 'a4', date: localDay(new Date(2026, 10, 26)), unit: 'cm' };
const SAMPLE = projectAt(sampleProject());
const OTHER = settled(SAMPLE, { name: 'Other' });
/** Copies that no piece is wide enough for. */
const IMPOSSIBLE = settled(SAMPLE, {
  piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 2, rows: 9 } },
});

function pagesOf(project: ProjectAt, scope = LOOKED_AT): string[] {
  const sheet = sheetOf(project, OPTIONS, scope);
  if (!sheet.ok) throw new Error(sheet.problem.code);
  return sheet.value.flatMap((part) => part()).map(sheetToSvg);
}

/** Lays out and draws a step each time it is told to. */
class PatientWorker extends HeldWorker<'sheet'> {
  #steps: Iterator<null, null, void> | null = null;

  override postMessage(message: ToWorker<'sheet'>): void {
    super.postMessage(message);
    if (message.kind !== 'ask') return;
    const { id, ask } = message;
    const given = this.asked.findLast((asked) => asked.given)?.given?.value as SentProject;
    this.#steps = sheetJob(given)(ask, (part) => this.say({ kind: 'part', id, part }));
  }
  /** Does so many steps more of what it was asked last, and says when all are done. */
  step(times: number): void {
    const id = this.asked.at(-1)?.id as number;
    for (let time = 0; time < times && this.#steps; time++) {
      const steps = this.#steps;
      const ended = outcome(() => steps.next());
      if (ended.ok && ended.value.done !== true) continue;
      this.#steps = null;
      this.say({ kind: 'ended', id, outcome: ended.ok ? { ok: true, value: null } : ended });
    }
  }
}

function started(): { preview: SheetPreview; workers: PatientWorker[] } {
  const { start, workers } = starting<'sheet', PatientWorker>(() => new PatientWorker());
  return { preview: new SheetPreview(start), workers };
}

const shown = (preview: SheetPreview) => preview.pages.map(({ drawn }) => drawn?.svg ?? null);

/** The worker is there, and has heard what is to be shown. */
async function showing(
  preview: SheetPreview,
  project: ProjectAt,
  options: SheetOptions = OPTIONS,
  scope = LOOKED_AT,
): Promise<void> {
  preview.show(project, options, scope);
  for (let turn = 0; turn < 4; turn++) await Promise.resolve();
}

describe('the preview of a sheet', () => {
  const pages = pagesOf(SAMPLE);

  it('has room for all pages with the first of them, and the others as they come', async () => {
    const { preview, workers } = started();
    await showing(preview, SAMPLE);
    expect([preview.isMaking, shown(preview)]).toEqual([true, []]);
    workers[0]?.step(1);
    expect(shown(preview)).toEqual(pages.map((svg, index) => (index === 0 ? svg : null)));
    expect(preview.pages.map(({ title }) => title)[1]).toBe(`Page 2 of ${pages.length}`);
    workers[0]?.step(1);
    expect(shown(preview).filter((svg) => svg !== null)).toEqual(pages.slice(0, 2));
    expect(preview.isMaking).toBe(true);
    workers[0]?.step(pages.length - 1);
    expect([preview.isMaking, shown(preview)]).toEqual([false, pages]);
    // The worker is kept for the next.
    await showing(preview, OTHER);
    expect(workers).toHaveLength(1);
  });

  it('is of the latest project: what is said of the one before is not heard', async () => {
    const { preview, workers } = started();
    await showing(preview, SAMPLE);
    const [worker] = workers;
    worker?.step(2);
    await showing(preview, OTHER);
    worker?.say({ kind: 'part', id: 0, part: { kind: 'page', page: { index: 2, svg: 'stale', words: 'stale' } } });
    // The sheet before stays until the other is laid out, and no page of it after that.
    expect(shown(preview).filter((svg) => svg !== null)).toEqual(pages.slice(0, 2));
    worker?.step(1);
    worker?.say({ kind: 'part', id: 0, part: { kind: 'page', page: { index: 2, svg: 'stale', words: 'stale' } } });
    expect(shown(preview)).toEqual(pagesOf(OTHER).map((svg, index) => (index === 0 ? svg : null)));
    worker?.step(pages.length + 1);
    expect(shown(preview)).toEqual(pagesOf(OTHER));
  });

  it('draws the page first that is looked at', async () => {
    const { preview, workers } = started();
    await showing(preview, SAMPLE);
    workers[0]?.step(pages.length + 1);
    preview.lookAt(2);
    await showing(preview, OTHER);
    workers[0]?.step(1);
    expect(shown(preview).findIndex((svg) => svg !== null)).toBe(2);
    workers[0]?.step(pages.length + 1);
    expect(shown(preview)).toEqual(pagesOf(OTHER));
    // Of a sheet with fewer pages the last.
    preview.lookAt(999);
    await showing(preview, SAMPLE);
    workers[0]?.step(1);
    expect(shown(preview).findIndex((svg) => svg !== null)).toBe(pages.length - 1);
  });

  it('says why there is no sheet, and has one again once there is', async () => {
    const { preview, workers } = started();
    await showing(preview, IMPOSSIBLE);
    workers[0]?.step(2);
    expect(preview.problem?.code).toBe((sheetOf(IMPOSSIBLE, OPTIONS) as { problem: { code: string } }).problem.code);
    expect([preview.isMaking, shown(preview)]).toEqual([false, []]);
    await showing(preview, SAMPLE);
    workers[0]?.step(pages.length + 1);
    expect([preview.problem, shown(preview)]).toEqual([null, pages]);
  });

  it('is not made again for the same sheet, but is on other paper or another day', async () => {
    const { preview, workers } = started();
    await showing(preview, SAMPLE);
    workers[0]?.step(pages.length + 1);
    await showing(preview, SAMPLE, { ...OPTIONS });
    expect(workers[0]?.asked).toHaveLength(1);
    await showing(preview, SAMPLE, { ...OPTIONS, paper: 'letter' });
    expect(workers[0]?.asked).toHaveLength(2);
    // The project is not sent again for it.
    expect(workers[0]?.asked[1]?.given).toBeNull();
    workers[0]?.step(pages.length * 2);
    await showing(preview, SAMPLE, { ...OPTIONS, paper: 'letter', date: localDay(new Date(2026, 10, 27)) });
    expect(preview.isMaking).toBe(true);
  });

  it('begins anew where nobody looked while it was made, and stays where it was done', async () => {
    const { preview, workers } = started();
    await showing(preview, SAMPLE);
    workers[0]?.step(2);
    preview.close();
    expect(workers[0]?.isEnded).toBe(true);
    await showing(preview, SAMPLE);
    workers[1]?.step(pages.length + 1);
    expect(shown(preview)).toEqual(pages);
    preview.close();
    await showing(preview, SAMPLE);
    expect([workers.length, shown(preview)]).toEqual([2, pages]);
  });

  describe('that takes long', () => {
    beforeEach(() => void vi.useFakeTimers());
    afterEach(() => void vi.useRealTimers());

    it('is told of, and only then', async () => {
      const { preview, workers } = started();
      await showing(preview, SAMPLE);
      workers[0]?.step(pages.length + 1);
      vi.advanceTimersByTime(10_000);
      expect(preview.isLate).toBe(false);
      await showing(preview, OTHER);
      vi.advanceTimersByTime(10_000);
      expect([preview.isMaking, preview.isLate]).toEqual([true, true]);
    });

    it('comes from the window itself where no worker can be had', async () => {
      const preview = new SheetPreview(() => Promise.reject(new Error('No workers here')));
      preview.show(SAMPLE, OPTIONS);
      await vi.runAllTimersAsync();
      expect(shown(preview)).toEqual(pages);
    });
  });
});

describe('the preview of all pieces', () => {
  const ALL: Scope = { pieces: 'all', sizes: 'this' };
  const project = garmentAt('front', 'S');
  const pages = pagesOf(project, ALL);
  const sheet = sheetOf(project, OPTIONS, ALL);
  const [first = 0, front = 0] = sheet.ok ? sheet.value.map((part) => part().length) : [];

  it('comes part by part, each with its first page, and is there once the last page of the last is', async () => {
    const { preview, workers } = started();
    await showing(preview, project, OPTIONS, ALL);
    workers[0]?.step(first);
    expect([shown(preview), preview.isMaking]).toEqual([pages.slice(0, first), true]);
    workers[0]?.step(1);
    expect(preview.pages).toHaveLength(first + front);
    const others = shown(preview).slice(first);
    expect(others.filter((svg) => svg !== null)).toEqual([pages[first]]);
    workers[0]?.step(pages.length - first - 1);
    expect([shown(preview), preview.isMaking]).toEqual([pages, false]);
  });

  it('begins with the page that is looked at in its own part', async () => {
    const { preview, workers } = started();
    preview.lookAt(first + 1);
    await showing(preview, project, OPTIONS, ALL);
    workers[0]?.step(first + 1);
    expect(shown(preview)[first]).toBeNull();
    expect(shown(preview)[first + 1]).toBe(pages[first + 1]);
  });

  it('is another sheet than that of one piece', async () => {
    const { preview, workers } = started();
    await showing(preview, project);
    workers[0]?.step(pages.length);
    expect(shown(preview)).toEqual(pagesOf(project));
    await showing(preview, project, OPTIONS, ALL);
    await showing(preview, project, OPTIONS, { ...ALL });
    expect(workers[0]?.asked).toHaveLength(2);
    workers[0]?.step(pages.length + 1);
    expect(shown(preview)).toEqual(pages);
  });
});
