/** Runs of the program that keep work in one data folder, one after another or at once. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import type { Params, Services } from '@shared/host/index.ts';
import { createServices } from '../../../src-main/services/index.ts';
import { testEnvironment } from './test-environment.ts';

/** A folder of its own for each test of a file, and what is done with it. */
export function runsInEachTest() {
  let folder = '';
  let running = new Set<string>();
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'walewright-kept-'));
    running = new Set();
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  const asking = (window: string, open: readonly string[] = [], browser = 'browser-1') => ({
    asking: { window, browser, open: [window, ...open] },
  });
  const find = (services: Services, window = 'window-9', open: readonly string[] = [], browser?: string) =>
    services['recovery.find'](asking(window, open, browser));
  return {
    /** The home folder. */
    folder: (): string => folder,
    /** Where work is kept. */
    keptIn: (): string => join(folder, '.data', 'recovery'),
    /** A run of the program called `instance`. */
    run(instance: string): Services {
      running.add(instance);
      const presence = { instance, isRunning: async (other: string) => running.has(other) };
      return createServices(testEnvironment(folder, { presence }));
    },
    end: (instance: string): boolean => running.delete(instance),
    asking,
    find,
    /** The first that is found is taken; null where none is. */
    async take(services: Services, window = 'window-9', open: readonly string[] = []) {
      const [first] = await find(services, window, open);
      return first ? services['recovery.take']({ ...asking(window, open), id: first.id }) : null;
    },
  };
}

export const WORK: Params<'recovery.keep'> = {
  window: 'window-1',
  browser: 'browser-1',
  work: 'work-one',
  edition: 1,
  keptAt: '2026-01-02T03:04:05.678Z',
  name: 'Sleeve',
  text: 'work',
  file: null,
  laying: null,
};

/** {@link WORK} is kept, with other facts where they are given. */
export const keep = (services: Services, given: Partial<typeof WORK> = {}) =>
  services['recovery.keep']({ ...WORK, ...given });
