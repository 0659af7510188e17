/** The preview of the sheet, page by page, with a worker that speaks when it is told to. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { localDay } from '@shared/day/index.ts';
import { sheetToSvg, type SheetOptions } from '@shared/output/index.ts';
import { sampleProject, START_PIECE, type ProjectAt, projectAt } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';
import { drawnPages, type Drawn, type Wanted } from '../../../src-renderer/sheet/making/drawn-pages.ts';
import { SheetPreview } from '../../../src-renderer/sheet/making/preview.ts';
import { sheetOf } from '../../../src-renderer/sheet/making/sheet-of.ts';
import { WorkerClient, type Helper, type Question } from '../../../src-renderer/worker/index.ts';

const OPTIONS: SheetOptions = { paper: 'a4', date: localDay(new Date(2026, 10, 26)), unit: 'cm' };
const SAMPLE = projectAt(sampleProject());
const OTHER = settled(SAMPLE, { name: 'Other' });
/** Copies that no piece is wide enough for. */
const IMPOSSIBLE = settled(SAMPLE, {
  piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 2, rows: 9 } },
});

function pagesOf(project: ProjectAt): string[] {
  const sheet = sheetOf(project, OPTIONS);
  if (!sheet.ok) throw new Error(sheet.problem.code);
  return sheet.value.pages.map(sheetToSvg);
}

class PatientHelper implements Helper<Wanted, Drawn> {
  onmessage: Helper<Wanted, Drawn>['onmessage'] = null;
  onerror: Helper<Wanted, Drawn>['onerror'] = null;
  isEnded = false;
  #question: Question<Wanted> | null = null;
  #drawn: Iterator<Drawn> | null = null;

  get asked(): Question<Wanted> | null {
    return this.#question;
  }
  postMessage(question: Question<Wanted>): void {
    this.#question = question;
    this.#drawn = drawnPages(question.wanted);
  }
  terminate(): void {
    this.isEnded = true;
  }
  /** Says so many things more, and that all is said. */
  say(times: number): void {
    for (let time = 0; time < times; time++) {
      const { value = null } = (this.#drawn as Iterator<Drawn>).next() as { value?: Drawn };
      this.onmessage?.({ data: { id: this.#question?.id, part: value } } as MessageEvent);
    }
  }
}

function started(): { preview: SheetPreview; helpers: PatientHelper[] } {
  const helpers: PatientHelper[] = [];
  const preview = new SheetPreview(() => {
    const helper = new PatientHelper();
    helpers.push(helper);
    return helper;
  });
  return { preview, helpers };
}

const shown = (preview: SheetPreview) => preview.pages.map(({ svg }) => svg);

describe('the preview of a sheet', () => {
  const pages = pagesOf(SAMPLE);

  it('has room for all pages with the first of them, and the others as they come', () => {
    const { preview, helpers } = started();
    preview.show(SAMPLE, OPTIONS);
    expect([preview.isMaking, shown(preview)]).toEqual([true, []]);
    helpers[0]?.say(1);
    expect(shown(preview)).toEqual(pages.map((svg, index) => (index === 0 ? svg : null)));
    expect(preview.pages.map(({ title }) => title)[1]).toBe(`Page 2 of ${pages.length}`);
    helpers[0]?.say(1);
    expect(shown(preview).filter((svg) => svg !== null)).toEqual(pages.slice(0, 2));
    expect(preview.isMaking).toBe(true);
    helpers[0]?.say(pages.length - 1);
    expect([preview.isMaking, shown(preview)]).toEqual([false, pages]);
    // The worker is kept for the next.
    preview.show(OTHER, OPTIONS);
    expect(helpers).toHaveLength(1);
  });

  it('is of the latest project: what a worker says of the one before is not heard, and it is ended', () => {
    const { preview, helpers } = started();
    preview.show(SAMPLE, OPTIONS);
    helpers[0]?.say(2);
    preview.show(OTHER, OPTIONS);
    expect(helpers[0]?.isEnded).toBe(true);
    helpers[0]?.say(2);
    // The sheet before stays until the other is laid out, and no page of it after that.
    expect(shown(preview).filter((svg) => svg !== null)).toEqual(pages.slice(0, 2));
    helpers[1]?.say(1);
    helpers[0]?.say(pages.length + 1);
    expect(shown(preview)).toEqual(pagesOf(OTHER).map((svg, index) => (index === 0 ? svg : null)));
    helpers[1]?.say(pages.length + 1);
    expect(shown(preview)).toEqual(pagesOf(OTHER));
  });

  it('draws the page first that is looked at', () => {
    const { preview, helpers } = started();
    preview.show(SAMPLE, OPTIONS);
    helpers[0]?.say(pages.length + 1);
    preview.lookAt(2);
    preview.show(OTHER, OPTIONS);
    helpers[0]?.say(1);
    expect(shown(preview).findIndex((svg) => svg !== null)).toBe(2);
    helpers[0]?.say(pages.length + 1);
    expect(shown(preview)).toEqual(pagesOf(OTHER));
    // Of a sheet with fewer pages the last.
    preview.lookAt(999);
    preview.show(SAMPLE, OPTIONS);
    helpers[0]?.say(1);
    expect(shown(preview).findIndex((svg) => svg !== null)).toBe(pages.length - 1);
  });

  it('says why there is no sheet, and has one again once there is', () => {
    const { preview, helpers } = started();
    preview.show(IMPOSSIBLE, OPTIONS);
    helpers[0]?.say(2);
    expect(preview.problem?.code).toBe((sheetOf(IMPOSSIBLE, OPTIONS) as { problem: { code: string } }).problem.code);
    expect([preview.isMaking, shown(preview)]).toEqual([false, []]);
    preview.show(SAMPLE, OPTIONS);
    helpers[0]?.say(pages.length + 1);
    expect([preview.problem, shown(preview)]).toEqual([null, pages]);
  });

  it('is not made again for the same sheet, but is on other paper or another day', () => {
    const { preview, helpers } = started();
    preview.show(SAMPLE, OPTIONS);
    helpers[0]?.say(pages.length + 1);
    const asked = helpers[0]?.asked;
    preview.show(SAMPLE, { ...OPTIONS });
    expect(helpers[0]?.asked).toBe(asked);
    preview.show(SAMPLE, { ...OPTIONS, paper: 'letter' });
    expect(helpers[0]?.asked).not.toBe(asked);
    helpers[0]?.say(pages.length * 2);
    preview.show(SAMPLE, { ...OPTIONS, paper: 'letter', date: localDay(new Date(2026, 10, 27)) });
    expect(preview.isMaking).toBe(true);
  });

  it('begins anew where nobody looked while it was made, and stays where it was done', () => {
    const { preview, helpers } = started();
    preview.show(SAMPLE, OPTIONS);
    helpers[0]?.say(2);
    preview.close();
    expect(helpers[0]?.isEnded).toBe(true);
    preview.show(SAMPLE, OPTIONS);
    helpers[1]?.say(pages.length + 1);
    expect(shown(preview)).toEqual(pages);
    preview.close();
    preview.show(SAMPLE, OPTIONS);
    expect([helpers.length, shown(preview)]).toEqual([2, pages]);
  });

  describe('that takes long', () => {
    beforeEach(() => void vi.useFakeTimers());
    afterEach(() => void vi.useRealTimers());

    it('is told of, and only then', () => {
      const { preview, helpers } = started();
      preview.show(SAMPLE, OPTIONS);
      helpers[0]?.say(pages.length + 1);
      vi.advanceTimersByTime(10_000);
      expect(preview.isLate).toBe(false);
      preview.show(OTHER, OPTIONS);
      vi.advanceTimersByTime(10_000);
      expect([preview.isMaking, preview.isLate]).toEqual([true, true]);
    });

    it.each([
      [
        'cannot be had',
        () => {
          throw new Error('No workers here');
        },
      ],
      [
        'fails',
        () => {
          const helper = new PatientHelper();
          helper.postMessage = () => void helper.onerror?.({} as ErrorEvent);
          return helper;
        },
      ],
    ])('comes from the window itself where a worker %s, page by page', (_, start: () => Helper<Wanted, Drawn>) => {
      const told: Drawn[] = [];
      const client = new WorkerClient(start, drawnPages);
      client.ask({ project: SAMPLE.whole, at: SAMPLE.at, options: OPTIONS, from: 0 }, (drawn) => told.push(drawn));
      expect(told).toHaveLength(1);
      vi.advanceTimersToNextTimer();
      expect(told).toHaveLength(2);
      vi.runAllTimers();
      expect(told).toHaveLength(pages.length);
    });
  });
});

it('no picture to trace goes to the worker', () => {
  const { preview, helpers } = started();
  const underlay = {} as NonNullable<ProjectAt['motifs'][number]['underlay']>;
  const project = settled(SAMPLE, { motifs: SAMPLE.motifs.map((motif) => ({ ...motif, underlay })) });
  preview.show(project, OPTIONS);
  expect(helpers[0]?.asked?.wanted.project.motifs.map((motif) => motif.underlay)).toEqual(
    SAMPLE.motifs.map(() => null),
  );
});
