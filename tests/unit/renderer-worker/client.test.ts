/** The window's side of the worker, with workers that speak when they are told to. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { measure, type Measure } from '@shared/motif/repeat/index.ts';
import { ProblemError, problemError, type Problem } from '@shared/problem/index.ts';
import { WorkerClient, type Drawing, type Helper, type Job } from '../../../src-renderer/worker/index.ts';
import { measureJob } from '../../../src-renderer/worker/jobs/measure.ts';
import { HeldWorker, starting } from './held-worker.ts';

const FIRST: Drawing = { grid: gridFromText(['X.X.'], '.X'), ground: 0 };
const SECOND: Drawing = { grid: gridFromText(['X..X..'], '.X'), ground: 0 };
const measured = ({ grid, ground }: Drawing): Measure => measure(grid, ground);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** What a started worker was told to do, and what was heard of it. */
function started(job: Job<'measure'> | null = measureJob, start?: () => Promise<Helper<'measure'>>) {
  const made = starting<'measure', HeldWorker<'measure'>>(() => new HeldWorker());
  const client = new WorkerClient('measure', job, start ?? made.start);
  const heard: (readonly [string, unknown])[] = [];
  const ask = (name: string, drawing: Drawing): void =>
    client.ask(drawing, null, {
      progress: () => heard.push([name, 'progress']),
      answer: (answer) => heard.push([name, answer]),
      failed: (problem: Problem) => heard.push([name, problem.code]),
    });
  return { client, ask, heard, workers: made.workers };
}
const turn = () => vi.advanceTimersByTimeAsync(0);
const answerTo = (worker: HeldWorker<'measure'> | undefined, drawing: Drawing, at = -1): void => {
  const id = worker?.asked.at(at)?.id as number;
  worker?.say({ kind: 'opened', id });
  worker?.say({ kind: 'ended', id, outcome: { ok: true, value: measured(drawing) } });
};

describe('a client of the worker', () => {
  it('gives what the worker answers, and keeps the worker for the next question', async () => {
    const { ask, heard, workers } = started();
    ask('first', FIRST);
    await turn();
    answerTo(workers[0], FIRST);
    ask('second', SECOND);
    await vi.advanceTimersByTimeAsync(10_000);
    answerTo(workers[0], SECOND);
    expect(heard).toEqual([
      ['first', measured(FIRST)],
      ['second', measured(SECOND)],
    ]);
    expect(workers).toHaveLength(1);
  });

  it('sends what is given once, and again to another worker', async () => {
    const { client, ask, workers } = started();
    for (const given of [FIRST, FIRST, SECOND]) {
      ask('any', given);
      await turn();
      answerTo(workers[0], given);
    }
    expect(workers[0]?.asked.map(({ given }) => given?.value ?? null)).toEqual([FIRST, null, SECOND]);
    client.close();
    ask('any', SECOND);
    await turn();
    expect(workers[1]?.asked.map(({ given }) => given?.value)).toEqual([SECOND]);
  });

  it('hears nothing more of a question once there is a later one, and ends a worker that does not let go', async () => {
    const { ask, heard, workers } = started();
    ask('first', FIRST);
    await turn();
    ask('second', SECOND);
    const [busy] = workers;
    busy?.say({ kind: 'progress', id: 0, progress: null });
    expect([heard, busy?.isEnded]).toEqual([[], false]);
    await vi.advanceTimersByTimeAsync(100);
    expect([busy?.isEnded, workers.length]).toEqual([true, 2]);
    answerTo(busy, FIRST, 0);
    answerTo(workers[1], SECOND);
    expect(heard).toEqual([['second', measured(SECOND)]]);
  });

  it('keeps a worker that lets go in time', async () => {
    const { ask, heard, workers } = started();
    ask('first', FIRST);
    await turn();
    ask('second', SECOND);
    workers[0]?.say({ kind: 'ended', id: 0, outcome: null });
    await vi.advanceTimersByTimeAsync(10_000);
    answerTo(workers[0], SECOND);
    expect(heard).toEqual([['second', measured(SECOND)]]);
    expect([workers.length, workers[0]?.isEnded]).toEqual([1, false]);
  });

  it('does not end a worker that still opens what the next question is about as well', async () => {
    const { ask, heard, workers } = started();
    ask('first', FIRST);
    await turn();
    ask('again', FIRST);
    await vi.advanceTimersByTimeAsync(10_000);
    expect([workers.length, workers[0]?.isEnded]).toEqual([1, false]);
    answerTo(workers[0], FIRST);
    expect(heard).toEqual([['again', measured(FIRST)]]);
  });

  it('is not kept waiting by questions that follow each other quickly', async () => {
    const { ask, workers } = started();
    ask('first', FIRST);
    await turn();
    for (let time = 0; time < 4; time++) {
      ask(`later ${time}`, { ...SECOND });
      await vi.advanceTimersByTimeAsync(30);
    }
    expect(workers[0]?.isEnded).toBe(true);
  });

  it('stops: the worker is told, and nothing is heard of it any more', async () => {
    const { client, ask, heard, workers } = started();
    ask('first', FIRST);
    await turn();
    client.stop();
    expect(workers[0]?.heard.at(-1)).toEqual({ kind: 'stop', id: 0 });
    answerTo(workers[0], FIRST);
    await vi.advanceTimersByTimeAsync(10_000);
    expect([heard, workers[0]?.isEnded]).toEqual([[], false]);
  });

  it('closes: the worker is ended, also one that is still starting', async () => {
    const { client, ask, heard, workers } = started();
    ask('first', FIRST);
    client.close();
    await turn();
    expect(workers.map(({ isEnded }) => isEnded)).toEqual([true]);
    ask('second', SECOND);
    await turn();
    client.close();
    answerTo(workers[1], SECOND);
    expect([heard, workers[1]?.isEnded]).toEqual([[], true]);
  });

  it('asks a worker that is still starting the latest question alone', async () => {
    const { ask, workers } = started();
    ask('first', FIRST);
    ask('second', SECOND);
    await turn();
    expect(workers).toHaveLength(1);
    expect(workers[0]?.asked.map(({ given }) => given?.value)).toEqual([SECOND]);
  });

  it('may be asked again by whoever hears an answer', async () => {
    const { client, workers } = started();
    const heard: Measure[] = [];
    const listener = {
      answer: (answer: Measure) => {
        heard.push(answer);
        if (heard.length === 1) client.ask(SECOND, null, listener);
      },
      failed: () => undefined,
    };
    client.ask(FIRST, null, listener);
    await turn();
    answerTo(workers[0], FIRST);
    answerTo(workers[0], SECOND);
    expect(heard).toEqual([measured(FIRST), measured(SECOND)]);
  });

  it('tells what a job fails with', async () => {
    const { ask, heard, workers } = started();
    ask('first', FIRST);
    await turn();
    const problem: Problem = { code: 'unexpected', where: null, facts: { detail: 'Out of order' } };
    workers[0]?.say({ kind: 'ended', id: 0, outcome: { ok: false, problem } });
    expect(heard).toEqual([['first', 'unexpected']]);
  });
});

describe('a client without a worker', () => {
  it.each([
    ['cannot be had', undefined],
    ['dies before it answers', (worker: HeldWorker<'measure'>) => worker.die()],
    ['answers what cannot be read', (worker: HeldWorker<'measure'>) => worker.onmessageerror?.({} as MessageEvent)],
  ] as const)('does the work in the window where one %s, and asks a new one the next time', async (_, end) => {
    const workers: HeldWorker<'measure'>[] = [];
    let isBroken = true;
    const { ask, heard } = started(measureJob, async () => {
      if (isBroken && !end) throw new Error('No workers here');
      const worker = new HeldWorker<'measure'>();
      workers.push(worker);
      return worker;
    });
    ask('first', FIRST);
    await turn();
    if (end) end(workers[0] as HeldWorker<'measure'>);
    await vi.runAllTimersAsync();
    expect(heard).toEqual([['first', measured(FIRST)]]);
    isBroken = false;
    const before = workers.length;
    ask('second', SECOND);
    await turn();
    answerTo(workers[before], SECOND);
    expect(heard.at(-1)).toEqual(['second', measured(SECOND)]);
  });

  it('gives up in the window too what is no longer wanted', async () => {
    // Each step takes longer than a frame.
    let steps = 0;
    vi.spyOn(performance, 'now').mockImplementation(() => steps * 20);
    const endless: Job<'measure'> = () => () => ({
      next: () => {
        steps++;
        return { done: false, value: null };
      },
    });
    const { client, ask, heard } = started(endless, () => Promise.reject(new Error('No workers here')));
    ask('first', FIRST);
    await vi.advanceTimersByTimeAsync(5);
    client.stop();
    const before = steps;
    await vi.advanceTimersByTimeAsync(1000);
    expect([steps - before, heard.filter(([, what]) => what !== 'progress')]).toEqual([0, []]);
    expect(before).toBeGreaterThan(0);
  });

  it('tells why there is none where the window does not know how', async () => {
    const start = vi.fn(() => Promise.reject<Helper<'measure'>>(problemError('host-unreachable', {})));
    const client = new WorkerClient('measure', null, start);
    const failed = vi.fn();
    const ask = (): void => client.ask(FIRST, null, { answer: () => undefined, failed });
    ask();
    await turn();
    expect(failed.mock.calls.map(([{ code }]) => code)).toEqual(['host-unreachable']);
    const worker = new HeldWorker<'measure'>();
    start.mockResolvedValue(worker);
    ask();
    await turn();
    worker.die();
    expect(failed.mock.calls.map(([{ code }]) => code)).toEqual(['host-unreachable', 'unexpected']);
  });

  it('tells what it cannot do in the window either', async () => {
    const failing: Job<'measure'> = () => () => {
      throw new ProblemError({ code: 'unexpected', where: null, facts: { detail: 'Out of order' } });
    };
    const { ask, heard } = started(failing, () => Promise.reject(new Error('No workers here')));
    ask('first', FIRST);
    await vi.runAllTimersAsync();
    expect(heard).toEqual([['first', 'unexpected']]);
  });

  it('hands a copy over that takes its time, with whatever is asked last of it', async () => {
    const made = starting<'measure', HeldWorker<'measure'>>(() => new HeldWorker());
    const transfer = [new ArrayBuffer(8)];
    const copy = vi.fn(async (value: Drawing) => {
      await new Promise((resolve) => setTimeout(resolve, 300));
      return { value: { ...value }, transfer };
    });
    const client = new WorkerClient('measure', null, made.start, copy);
    const answers: string[] = [];
    const ask = (name: string, given: Drawing): void =>
      client.ask(given, null, { answer: () => answers.push(name), failed: () => undefined });
    const wait = (ms: number) => vi.advanceTimersByTimeAsync(ms);

    ask('first', FIRST);
    await wait(200);
    ask('second', FIRST);
    await wait(200);
    const [worker] = made.workers;
    expect(worker?.heard.map((message) => message.kind === 'ask' && message.given)).toEqual([{ value: FIRST }]);
    expect(worker?.transfers).toEqual([transfer]);
    answerTo(worker, FIRST);
    ask('third', FIRST);
    answerTo(worker, FIRST);
    expect([answers, copy.mock.calls.length, made.workers.length]).toEqual([['second', 'third'], 1, 1]);

    // What is stopped before it is copied is never asked; the next question has a copy of its own.
    ask('fourth', SECOND);
    client.stop();
    await wait(1000);
    expect(worker?.asked).toHaveLength(2);
    ask('fifth', SECOND);
    await wait(1000);
    answerTo(made.workers.at(-1), SECOND);
    expect(answers.at(-1)).toBe('fifth');
    expect(copy).toHaveBeenCalledTimes(3);
  });

  it('says so where there is no room for a copy', async () => {
    const made = starting<'measure', HeldWorker<'measure'>>(() => new HeldWorker());
    const client = new WorkerClient('measure', null, made.start, () => Promise.reject(new RangeError('no room')));
    const failed = vi.fn();
    client.ask(FIRST, null, { answer: vi.fn(), failed });
    await vi.advanceTimersByTimeAsync(0);
    expect(failed).toHaveBeenCalledExactlyOnceWith(expect.objectContaining({ code: 'unexpected' }));
  });
});
