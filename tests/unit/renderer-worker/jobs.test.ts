/** What each job gives, through the worker's own side: copied there and back, in slices. */
import { describe, expect, it } from 'vitest';
import { isMendable, Remedies, remediesAt } from '@shared/check/index.ts';
import { sizesTable } from '@shared/fabric/index.ts';
import { crop, gridFromText, type Grid } from '@shared/grid/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import { plannedPlaces, sheetToSvg } from '@shared/output/index.ts';
import { garmentNeed, planFor } from '@shared/plan/index.ts';
import { LOOKED_AT, pieceIn, projectAt, sampleProject, type PieceInSizes } from '@shared/project/index.ts';
import { finish, onPaper, pictureToCells, type ChartReading, type Picture, type Steps } from '@shared/reading/index.ts';
import {
  WorkerClient,
  type ChartAnswer,
  type ChartQuestion,
  type JobName,
  type Jobs,
} from '../../../src-renderer/worker/index.ts';
import { jobs } from '../../../src-renderer/worker/jobs/index.ts';
import { chartJob } from '../../../src-renderer/worker/jobs/chart.ts';
import { foundAhead } from '../../../src-renderer/worker/jobs/lookahead.ts';
import { sentProject } from '../../../src-renderer/worker/jobs/sent-project.ts';
import { sheetOf } from '../../../src-renderer/worker/jobs/sheet-of.ts';
import { localDay } from '@shared/day/index.ts';
import { garmentAt } from '../../garment.ts';
import { fullBody } from '../../long-body.ts';
import { settled } from '../../written-projects.ts';
import { blobs } from '../reading/motifs.ts';
import { ServingWorker } from './held-worker.ts';

/** All parts and the answer. Rejects with the problem. */
function done<Name extends JobName>(
  name: Name,
  given: Jobs[Name]['given'],
  ask: Jobs[Name]['ask'],
): Promise<{ parts: Jobs[Name]['part'][]; answer: Jobs[Name]['answer'] }> {
  const client = new WorkerClient<Name>(name, jobs[name] as never, async () => new ServingWorker<Name>());
  const parts: Jobs[Name]['part'][] = [];
  return new Promise((resolve, reject) =>
    client.ask(given, ask, {
      part: (part) => parts.push(part),
      answer: (answer) => resolve({ parts, answer }),
      failed: reject,
    }),
  );
}

const SAMPLE = projectAt(sampleProject());

describe('the worker', () => {
  it('measures a drawing', async () => {
    const grid = gridFromText(['X..X..'], '.X');
    expect((await done('measure', { grid, ground: 0 }, null)).answer).toEqual(measure(grid, 0));
  });

  it('looks ahead: running order and findings of a piece, and what would help with one of them', async () => {
    const piece = pieceIn(settled(fullBody(2)));
    const plan = planFor(piece);
    if (!plan.ok) throw new Error(plan.problem.code);
    const found = foundAhead(piece, plan.value);
    expect((await done('lookahead', piece, 'all')).parts).toEqual([found]);
    const mended = found.findings.filter(isMendable);
    expect(mended.length).toBeGreaterThan(0);
    for (const finding of mended) {
      const steps = remediesAt(new Remedies(piece, plan.value), finding);
      let step = steps.next();
      while (!step.done) step = steps.next();
      expect(step.value.length).toBeGreaterThan(1);
      const { parts } = await done('lookahead', piece, { remediesFor: finding.kind });
      expect(parts).toEqual([{ kind: finding.kind, remedies: step.value }]);
    }
    expect((await done('lookahead', piece, { remediesFor: 'of another plan' })).parts).toEqual([]);
  });

  it('places every size, the smallest first', async () => {
    const { parts } = await done('sizes', sentProject(SAMPLE), null);
    expect(parts).toEqual(sizesTable(SAMPLE).map((column, index) => ({ index, column })));
  });

  it('adds up the yarn of all pieces in the size, and says which of them cannot be planned', async () => {
    const project = garmentAt('sleeve', 'M');
    const [places = []] = plannedPlaces(project, { pieces: 'all', sizes: 'this' });
    const pieces = places.map(({ place, plan }) => ({ name: place.piece.name, knit: place.knit, plan }));
    const { answer } = await done('garment-yarn', sentProject(project), null);
    expect(answer).toEqual(garmentNeed(pieces, project));
    expect(answer.yarns[0]?.pieces.map(({ name, knit }) => [name, knit])).toEqual([
      ['front', 1],
      ['sleeve', 2],
    ]);
    const [front, sleeve] = project.whole.pieces as [PieceInSizes, PieceInSizes];
    const narrow = sleeve.perSize.map((one) => ({
      ...one,
      shape: { kind: 'rectangle', stitches: 3, rows: 40 } as const,
    }));
    const wrong = projectAt({ ...project.whole, pieces: [front, { ...sleeve, perSize: narrow }] }, { size: 'size-M' });
    await expect(done('garment-yarn', sentProject(wrong), null)).rejects.toMatchObject({
      code: 'groups-wider-than-piece',
      where: 'sleeve, size M',
    });
  });

  it('draws a sheet, the page that is looked at first', async () => {
    const options = { paper: 'a4', unit: 'cm', charts: 'both', date: localDay(new Date(2026, 10, 26)) } as const;
    const sheet = sheetOf(SAMPLE, options);
    if (!sheet.ok) throw new Error(sheet.problem.code);
    const { parts } = await done('sheet', sentProject(SAMPLE), { options, scope: LOOKED_AT, from: 1 });
    const pages = parts.map((part) => part.page);
    expect(pages[0]?.index).toBe(1);
    expect(pages.toSorted((a, b) => a.index - b.index).map(({ svg }) => svg)).toEqual(
      sheet.value.flatMap((part) => part()).map(sheetToSvg),
    );
    // With each the words that stand in its drawing, in their order: a browser finds them where that is not shown.
    for (const { svg, words } of pages) {
      const drawn = svg
        .replaceAll(/<[^>]*>/g, '')
        .replaceAll('&quot;', '"')
        .replaceAll('&amp;', '&');
      expect(words.replaceAll('\n', '')).toBe(drawn);
      expect(words).toMatch(/Page \d+ of \d+/);
    }
  });

  it('reads a chart out of a photo', async () => {
    const rgba = Uint8ClampedArray.from({ length: 64 * 64 * 4 }, (_, at) => (at % 4 === 3 || at % 256 < 128 ? 255 : 0));
    const picture: Picture = { width: 64, height: 64, rgba };
    const [least, most] = [4, 60];
    const question: ChartQuestion = {
      corners: [
        { x: least, y: least },
        { x: most, y: least },
        { x: most, y: most },
        { x: least, y: most },
      ],
      columns: 2,
      rows: 2,
      levels: { kind: 'colours', count: 2 },
      isByHand: true,
      isQuick: false,
      known: null,
    };
    const { answer } = await done('chart', picture, question);
    expect('reading' in answer && answer.reading?.grid.cells).toHaveLength(4);
    expect(answer).toEqual(finish(chartJob(picture)(question, () => undefined) as Steps<ChartAnswer>));
  });

  it('finds where two photos of a chart meet', async () => {
    const whole = blobs(16, 23, 2, 5);
    const read = (grid: Grid): ChartReading => ({
      grid,
      colours: ['#ffffff', '#202020'],
      ground: 0,
      confidence: new Float32Array(grid.cells.length).fill(0.9),
      doubtful: new Uint8Array(grid.cells.length),
    });
    const given = {
      first: read(crop(whole, 0, 0, 16, 14)),
      second: read(crop(whole, 0, 9, 16, 14)),
      by: 'colours',
    } as const;
    expect((await done('join', given, null)).answer).toMatchObject([{ side: 'above', shared: 5, differing: 0 }]);
  });

  it('turns a picture into cells', async () => {
    const rgba = Uint8ClampedArray.from({ length: 16 * 16 * 4 }, (_, at) => (at % 4 === 3 || at < 512 ? 255 : 0));
    const picture: Picture = { width: 16, height: 16, rgba };
    const options = {
      crop: null,
      stitches: 4,
      rows: 4,
      yarns: 2,
      reduction: 'mean',
      dithering: false,
    } as const;
    expect((await done('picture', picture, options)).answer).toEqual(finish(pictureToCells(onPaper(picture), options)));
  });
});

it('sends no picture to trace, and the same project once', () => {
  const underlay = {} as NonNullable<(typeof SAMPLE)['motifs'][number]['underlay']>;
  const project = settled(SAMPLE, { motifs: SAMPLE.motifs.map((motif) => ({ ...motif, underlay })) });
  expect(sentProject(project).whole.motifs.map((motif) => motif.underlay)).toEqual(SAMPLE.motifs.map(() => null));
  expect(sentProject(project)).toBe(sentProject(project));
});
