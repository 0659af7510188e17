/** Work in a thread of its own, which is ended at its limit. */
import { describe, expect, it } from 'vitest';
import { ProblemError } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { inWorker, type Limit, type ThreadEntry } from '../../../src-main/services/worker/index.ts';

const thread = (name: string): ThreadEntry => ({
  source: new URL(`./threads/${name}.ts`, import.meta.url),
  built: 'not-built',
});
const ample: Limit = { work: 'picture', seconds: 30, megabytes: 600 };

async function problemIn(run: Promise<unknown>) {
  const thrown = await run.then(
    () => null,
    (error: unknown) => error,
  );
  expect(thrown).toBeInstanceOf(ProblemError);
  return (thrown as ProblemError).problem;
}

describe('a job in a thread', () => {
  it('answers, and what it was given in buffers has moved to it', async () => {
    const pixels = Uint8Array.of(1, 2, 3);
    const asked = { kind: 'double', pixels };
    expect(await inWorker(thread('answers'), asked, ample, [pixels.buffer])).toEqual({
      width: 3,
      rgba: Uint8Array.of(2, 4, 6),
    });
    expect(pixels.length).toBe(0);
  });

  it('throws the problem that it met', async () => {
    const asked = { kind: 'problem', pixels: Uint8Array.of(1) };
    expect(await problemIn(inWorker(thread('answers'), asked, ample))).toEqual({
      code: 'picture-truncated',
      where: null,
      facts: { kind: 'PNG' },
    });
  });

  it('tells how far it is', async () => {
    const steps: number[] = [];
    const asked = { kind: 'steps', pixels: Uint8Array.of(1, 2, 3) };
    await inWorker(thread('answers'), asked, ample, [], { further: (count) => steps.push(count) });
    expect(steps).toEqual([1, 2, 3]);
  });

  it('is ended when its signal is aborted, before it begins too, with the reason of that', async () => {
    const stopping = new AbortController();
    const given = { signal: stopping.signal };
    const run = inWorker(thread('never-ends'), null, ample, [], given);
    stopping.abort(new Error('given up'));
    await expect(run).rejects.toThrow('given up');
    await expect(inWorker(thread('never-ends'), null, ample, [], given)).rejects.toThrow('given up');
  });

  it('that goes without an answer is an error', async () => {
    const asked = { kind: 'leave', pixels: Uint8Array.of(1) };
    await expect(inWorker(thread('answers'), asked, ample)).rejects.toThrow('without an answer');
  });

  it('that never ends is ended when its time is over', async () => {
    const problem = await problemIn(inWorker(thread('never-ends'), null, { ...ample, seconds: 0.2 }));
    expect(problem).toMatchObject({ code: 'work-stopped', facts: { work: 'picture', limit: 'time', amount: 0.2 } });
    expect(words.problems.sentence(problem)).toContain('stopped');
  });

  it.each(['bytes', 'objects'])('that fills memory with %s is ended at its limit', async (kind) => {
    const before = process.memoryUsage.rss();
    const problem = await problemIn(inWorker(thread('takes-memory'), kind, { ...ample, megabytes: 150 }));
    expect(problem).toMatchObject({ code: 'work-stopped', facts: { limit: 'memory', amount: 150 } });
    // Between two looks it can take more, but not without end.
    expect(process.memoryUsage.rss() - before).toBeLessThan(1_000_000_000);
  });
});
