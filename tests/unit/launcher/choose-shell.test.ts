/** Electron where it can be had, else the browser. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chooseShell, type Surroundings } from '../../../src-main/launcher/choose-shell.ts';
import { failureNotes } from '../../../src-main/launcher/failure-note.ts';

const electron = { folder: '/node_modules/electron', version: '45.0.0' };

/** A machine where the installer answers `obstacle`; it records how often it was run. */
function machine(given: {
  hasDisplay?: boolean;
  isInstalled?: boolean;
  hasBinary?: boolean;
  obstacle?: string | null;
  hasFailedBefore?: boolean;
}): Surroundings & { runs: number; notes: string[] } {
  let hasBinary = given.hasBinary ?? false;
  const notes: string[] = given.hasFailedBefore ? ['45.0.0'] : [];
  return {
    runs: 0,
    notes,
    hasDisplay: given.hasDisplay ?? true,
    electron: (given.isInstalled ?? true) ? electron : null,
    binary: () => (hasBinary ? '/electron' : null),
    async fetch() {
      this.runs += 1;
      hasBinary = (given.obstacle ?? null) === null;
      return given.obstacle ?? null;
    },
    failure: {
      noted: async (version) => (notes.includes(version) ? `/notes/${version}` : null),
      note: async (version) => void notes.push(version),
    },
  };
}

describe('the shell that opens', () => {
  it.each([
    ['the binary is there', { hasBinary: true }, { shell: 'electron', binary: '/electron' }, 0],
    ['it can be fetched', {}, { shell: 'electron', binary: '/electron' }, 1],
    [
      'it cannot be fetched',
      { obstacle: 'fetch failed' },
      { shell: 'browser', why: { kind: 'fetch-failed', detail: 'fetch failed' } },
      1,
    ],
    [
      'it could not be fetched before',
      { obstacle: 'fetch failed', hasFailedBefore: true },
      { shell: 'browser', why: { kind: 'fetch-failed-before', note: '/notes/45.0.0' } },
      0,
    ],
    ['Electron is not installed', { isInstalled: false }, { shell: 'browser', why: { kind: 'not-installed' } }, 0],
    [
      'there is no display',
      { hasBinary: true, hasDisplay: false },
      { shell: 'browser', why: { kind: 'no-display' } },
      0,
    ],
  ] as const)('when %s', async (_case, given, choice, runs) => {
    const here = machine(given);
    expect(await chooseShell(null, here)).toEqual(choice);
    expect(here.runs).toBe(runs);
  });

  it('is the browser when asked, and nothing is fetched', async () => {
    const here = machine({ hasBinary: true });
    expect(await chooseShell('browser', here)).toEqual({ shell: 'browser', why: { kind: 'asked' } });
    expect(here.runs).toBe(0);
  });

  it.each([
    ['could not be fetched before, but now can', { hasFailedBefore: true }, 'electron', 1],
    ['cannot be fetched', { obstacle: 'fetch failed' }, null, 1],
    ['has no display', { hasBinary: true, hasDisplay: false }, null, 0],
    ['is not installed', { isInstalled: false }, null, 0],
  ] as const)('is Electron or none when it is asked for and %s', async (_case, given, shell, runs) => {
    const here = machine(given);
    expect((await chooseShell('electron', here)).shell).toBe(shell);
    expect(here.runs).toBe(runs);
  });

  it('waits for the installer at one start only, for each version', async () => {
    const here = machine({ obstacle: 'fetch failed' });
    await chooseShell(null, here);
    await chooseShell(null, here);
    expect([here.runs, here.notes]).toEqual([1, ['45.0.0']]);
  });
});

describe('the note of a failed fetch', () => {
  it('stands in the data folder, for its version alone', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'walewright-note-'));
    const notes = failureNotes(join(folder, 'data'));
    expect(await notes.noted('45.0.0')).toBeNull();
    await notes.note('45.0.0');
    expect(await notes.noted('45.0.0')).toBe(join(folder, 'data', 'electron-45.0.0-not-fetched'));
    expect(await notes.noted('46.0.0')).toBeNull();
    await rm(folder, { recursive: true });
  });
});
