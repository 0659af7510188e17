import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import { MeasureClient, type Helper, type Question } from '../../../src-renderer/motif/measuring/measure-client.ts';

/** A worker that answers when it is told to. */
class PatientHelper implements Helper {
  onmessage: Helper['onmessage'] = null;
  onerror: Helper['onerror'] = null;
  readonly asked: Question[] = [];
  isEnded = false;

  postMessage(question: Question): void {
    this.asked.push(question);
  }
  terminate(): void {
    this.isEnded = true;
  }
  answer(at = this.asked.length - 1): void {
    const question = this.asked[at] as Question;
    const data = { id: question.id, measure: measure(question.grid, question.ground) };
    this.onmessage?.({ data } as MessageEvent);
  }
}

const first = gridFromText(['X.X.'], '.X');
const second = gridFromText(['X..X..'], '.X');

function started(): { client: MeasureClient; helpers: PatientHelper[] } {
  const helpers: PatientHelper[] = [];
  const client = new MeasureClient(() => {
    const helper = new PatientHelper();
    helpers.push(helper);
    return helper;
  });
  return { client, helpers };
}

describe('measuring beside the page', () => {
  it('gives what the worker measured, and keeps the worker for the next drawing', async () => {
    const { client, helpers } = started();
    const one = client.measure(first, 0);
    helpers[0]?.answer();
    expect(await one).toEqual(measure(first, 0));
    const two = client.measure(second, 0);
    helpers[0]?.answer();
    expect((await two)?.repeat.width).toBe(3);
    expect(helpers).toHaveLength(1);
  });

  it('asks once for a drawing that two wait for', async () => {
    const { client, helpers } = started();
    const waiting = [client.measure(first, 0), client.measure(first, 0)];
    helpers[0]?.answer();
    expect((await Promise.all(waiting)).map((measured) => measured?.repeat.width)).toEqual([2, 2]);
    expect(helpers[0]?.asked).toHaveLength(1);
  });

  it('gives up a drawing when a later one is asked for, and drops its answer', async () => {
    const { client, helpers } = started();
    const stale = client.measure(first, 0);
    const current = client.measure(second, 0);
    expect(await stale).toBeNull();
    expect(helpers[0]?.isEnded).toBe(true);
    helpers[0]?.answer();
    helpers[1]?.answer();
    expect((await current)?.width).toBe(6);
  });

  it('measures a drawing again for another ground', async () => {
    const { client, helpers } = started();
    const stale = client.measure(first, 0);
    const current = client.measure(first, 1);
    expect(await stale).toBeNull();
    helpers[1]?.answer();
    expect((await current)?.ground).toBe(1);
  });

  it.each([
    [
      'cannot be started',
      new MeasureClient(() => {
        throw new Error('no workers here');
      }),
    ],
    [
      'fails',
      new MeasureClient(() => {
        const helper = new PatientHelper();
        queueMicrotask(() => helper.onerror?.({} as ErrorEvent));
        return helper;
      }),
    ],
  ])('measures on the page where a worker %s', async (_, client) => {
    expect(await client.measure(second, 0)).toEqual(measure(second, 0));
  });
});
