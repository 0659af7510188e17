/** Pictures to trace, given to the host once and named in all that is kept after that. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Method, Params } from '@shared/host/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { changeOf, projectFromText, sampleProject, setMotif, setProject } from '@shared/project/index.ts';
import { hostPlace, Keeper, type WorkToKeep } from '../../../src-renderer/recovery/index.ts';
import { Session } from '../../../src-renderer/session/session.ts';

const PICTURE = `data:image/png;base64,${'A'.repeat(4000)}==`;
const HASH = 'ab'.repeat(32);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function traced(holds: boolean) {
  const session = new Session(sampleProject(), true);
  const asked: [Method, string][] = [];
  const call = async (method: Method, params: unknown): Promise<Outcome<unknown>> => {
    const { text, edits, picture } = params as Partial<WorkToKeep & Params<'recovery.append'> & { picture: string }>;
    asked.push([method, text ?? edits ?? picture ?? '']);
    if (method === 'recovery.picture' && !holds) {
      return { ok: false, problem: { code: 'host-unreachable', where: null, facts: {} } };
    }
    return { ok: true, value: { hash: HASH, isKept: true } };
  };
  new Keeper({
    session,
    place: hostPlace({ call: call as never }),
    identity: { window: 'window-1', browser: 'browser-1' },
    taken: null,
    newId: () => 'work-one',
  });
  const underlay = {
    picture: PICTURE,
    left: 0,
    bottom: 0,
    columns: 11,
    rows: 11,
    turn: 0,
    opacity: 0.5,
    isShown: true,
  };
  session.change(changeOf('add-underlay', setMotif(session.motif.id, { underlay })));
  return { session, asked };
}

it('a picture is given once, and named in the work and in what changes', async () => {
  const { session, asked } = traced(true);
  await vi.advanceTimersByTimeAsync(1000);
  session.change(changeOf('rename-project', setProject({ name: 'Cuff' })));
  await vi.advanceTimersByTimeAsync(1000);
  expect(asked.map(([method]) => method)).toEqual(['recovery.picture', 'recovery.keep', 'recovery.append']);
  expect(asked[0]?.[1]).toBe(PICTURE);
  expect(asked[1]?.[1]).toContain(`"picture": "apart:${HASH}"`);
  for (const [, said] of asked.slice(1)) expect(said).not.toContain(PICTURE);
});

it('a picture that the host does not hold stands in the work itself', async () => {
  const { session, asked } = traced(false);
  await vi.advanceTimersByTimeAsync(1000);
  const [, text = ''] = asked.find(([method]) => method === 'recovery.keep') ?? [];
  expect(projectFromText(text)).toEqual(session.project);
});
