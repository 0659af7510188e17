/**
 * Kept work is whole after every failure: at the first operation on files that
 * writes behind it, at the second, …; and the next that is kept is all of it.
 */
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Services } from '@shared/host/index.ts';
import { editsToText, projectFromText, projectToText, sampleProject, setProject } from '@shared/project/index.ts';
import { createServices, nodeFiles, type FileOperations } from '../../src-main/services/index.ts';
import { keptWorkFromText } from '../../src-main/services/kept-journal.ts';
import { testEnvironment } from '../unit/services/test-environment.ts';
import { failing, type Fault } from './failing-files.ts';

/** More operations than writing a line asks for. */
const MOST_OPERATIONS = 50;

let folder: string;
beforeEach(async () => (folder = await mkdtemp(join(tmpdir(), 'walewright-since-'))));
afterEach(() => rm(folder, { recursive: true, force: true }));

const FACTS = {
  window: 'window-1',
  work: 'work-one',
  keptAt: '2026-01-02T03:04:05.678Z',
  file: null,
  laying: null,
};
const named = (name: string) => projectToText({ ...sampleProject(), name });
const keep = (services: Services, edition: number, name: string) =>
  services['recovery.keep']({ ...FACTS, browser: 'browser-1', edition, name, text: named(name) });
const append = async (services: Services, edition: number, name: string) =>
  (await services['recovery.append']({ ...FACTS, edition, edits: editsToText([setProject({ name })]) })).isKept;

/** The name of the project that is kept now; throws if anything of it cannot be read. */
async function keptName(): Promise<string> {
  const place = join(folder, '.data', 'recovery');
  const [name = ''] = (await readdir(place)).filter((each) => each.endsWith('.backup'));
  const kept = keptWorkFromText(await readFile(join(place, name), 'utf8'));
  if (kept === null || kept.rest === 'damaged') throw new Error('What is kept cannot be read');
  return projectFromText(kept.text).name;
}

/** Services over files that work until `fault` is armed for the `nth` operation from then on. */
function faulty(fault: Fault, nth: number, lasts: 'once' | 'for good') {
  let current: FileOperations = nodeFiles;
  const files = new Proxy(nodeFiles, { get: (_, key: keyof FileOperations) => current[key] });
  const services = createServices(testEnvironment(folder, { files }));
  const made = failing(nodeFiles, fault, nth, lasts);
  return { services, asked: made.asked, arm: () => (current = made.files), mend: () => (current = nodeFiles) };
}

describe('writing behind kept work while operations fail', () => {
  it.each<[string, Fault, 'once' | 'for good']>([
    ['with an error of the device, once', { kind: 'error', code: 'EIO' }, 'once'],
    ['with a full disk', { kind: 'error', code: 'ENOSPC' }, 'for good'],
    ['with the end of the program', { kind: 'crash' }, 'for good'],
    ['with writes that take a part', { kind: 'short' }, 'for good'],
  ])('%s, leaves what was kept before or what is kept now', async (_, fault, lasts) => {
    let failures = 0;
    for (let nth = 1; nth <= MOST_OPERATIONS; nth++) {
      await rm(join(folder, '.data'), { recursive: true, force: true });
      const { services, asked, arm, mend } = faulty(fault, nth, lasts);
      await keep(services, 1, 'first');
      expect(await append(services, 2, 'second')).toBe(true);
      arm();
      const isKept = await append(services, 3, 'third').catch(() => {
        failures++;
        return null;
      });
      expect(isKept === true ? ['third'] : ['second', 'third']).toContain(await keptName());
      mend();
      if (isKept === null) {
        // A line may stand there in part: nothing goes behind it before all is kept anew.
        expect(await append(services, 4, 'lost')).toBe(false);
        await keep(services, 4, 'fourth');
        expect(await append(services, 5, 'fifth')).toBe(true);
        expect(await keptName()).toBe('fifth');
      }
      if (asked.length < nth) {
        if (fault.kind !== 'short') expect(failures).toBeGreaterThanOrEqual(4);
        return;
      }
    }
    throw new Error('Writing never passed');
  });
});
