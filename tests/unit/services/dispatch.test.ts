/** Messages off the wire. */
import { describe, expect, it } from 'vitest';
import { contract, type Services } from '@shared/host/index.ts';
import { problemError } from '@shared/problem/index.ts';
import { createServices, dispatch } from '../../../src-main/services/index.ts';
import { testEnvironment } from './test-environment.ts';

const services = createServices(testEnvironment('/home/knitter'));

describe('a request', () => {
  it('that keeps the contract gets its answer', async () => {
    expect(await dispatch(services, 'host.describe', {})).toEqual({
      ok: true,
      value: {
        shell: 'browser',
        hasFileDialogs: false,
        hasPrintDialog: false,
        version: '0.0.0',
        homeFolder: '/home/knitter',
        openAtStart: null,
      },
    });
  });

  it.each(['', 'host.destroy', 'toString', '__proto__', 'constructor', 'documents', 'x'.repeat(10_000)])(
    'by the name %j is refused',
    async (method) => {
      const answer = await dispatch(services, method, {});
      expect(answer).toMatchObject({ ok: false, problem: { code: 'request-invalid' } });
      expect(JSON.stringify(answer).length).toBeLessThan(400);
    },
  );

  it.each([
    ['documents.read', undefined],
    ['documents.read', null],
    ['documents.read', {}],
    ['documents.read', { path: '' }],
    ['documents.read', { path: ['/a'] }],
    ['documents.read', { path: 'x'.repeat(5000) }],
    ['documents.read', { path: '/a', also: 1 }],
    ['documents.write', { path: '/a', text: 1, expect: { kind: 'nothing' } }],
    ['documents.write', { path: '/a', text: '', expect: null }],
    ['exports.write', { project: '', folder: '/', kinds: [], paper: 'a4', date: '2026-01-02', there: { kind: 'ask' } }],
    [
      'exports.write',
      { project: '', folder: '/', kinds: ['exe'], paper: 'a4', date: '2026-01-02', there: { kind: 'ask' } },
    ],
    [
      'exports.write',
      { project: '', folder: '/', kinds: ['rows-csv'], paper: 'a4', date: '2026-02-30', there: { kind: 'ask' } },
    ],
    ['host.describe', { surprise: true }],
  ])('%s with %j is refused before any service is asked', async (method, params) => {
    const answer = await dispatch({} as Services, method, params);
    expect(answer).toMatchObject({ ok: false, problem: { code: 'request-invalid', facts: { method } } });
  });

  it('whose service fails gets the problem as data', async () => {
    const failing: Services = {
      ...services,
      'documents.recent': async () => Promise.reject(problemError('disk-full', {}, '/a')),
      'host.describe': async () => Promise.reject(new TypeError('a bug')),
    };
    expect(await dispatch(failing, 'documents.recent', {})).toEqual({
      ok: false,
      problem: { code: 'disk-full', where: '/a', facts: {} },
    });
    expect(await dispatch(failing, 'host.describe', {})).toEqual({
      ok: false,
      problem: { code: 'unexpected', where: null, facts: { detail: 'a bug' } },
    });
  });

  it('whose service breaks the contract is not answered with what it said', async () => {
    const leaking = { ...services, 'dialogs.openFile': async () => ({ secret: 1 }) } as unknown as Services;
    const answer = await dispatch(leaking, 'dialogs.openFile', { what: 'any' });
    expect(answer).toMatchObject({ ok: false, problem: { code: 'request-invalid' } });
    expect(JSON.stringify(answer)).not.toContain('secret');
  });

  it('can be made for every method of the contract', () => {
    expect(Object.keys(services).sort()).toEqual(Object.keys(contract).sort());
  });
});
