/** Commands of the built command line, each against Node doing nothing: what a person waits for who types one. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { indexedPng } from '../../src-main/services/export/png-file.ts';
import type { Bar } from './bar.ts';
import { bestBar, wallTime } from './best.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const ROUNDS = 10;

export async function startingBars(): Promise<Bar[]> {
  const folder = mkdtempSync(join(tmpdir(), 'walewright-bench-'));
  try {
    const picture = join(folder, 'small.png');
    const indices = Uint8Array.from({ length: 24 * 20 }, (_, at) => ((at % 24) * 7 + at) % 2);
    writeFileSync(picture, indexedPng({ width: 24, height: 20, indices, colours: ['#f4efe6', '#2f6f8f'] }));
    const sample = join(folder, 'sample.walewright');
    writeFileSync(sample, projectToText(sampleProject()));
    const commands = [
      { name: '`measure` of a small picture', limit: 2, typed: ['measure', picture] },
      {
        name: '`export` of the sample',
        limit: 5,
        typed: ['export', sample, '--to', join(folder, 'made'), '--replace', '--date', '2026-01-02'],
      },
    ];
    const bars: Bar[] = [];
    for (const { name, limit, typed } of commands) {
      bars.push(
        await bestBar(
          {
            name: `${name}, against bare Node`,
            limit,
            rounds: ROUNDS,
            work: () => node([join(ROOT, 'out', 'main', 'cli.cjs'), ...typed]),
            least: () => node(['-e', '0']),
          },
          wallTime,
        ),
      );
    }
    return bars;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The length of what it printed. Throws if it failed. */
function node(given: readonly string[]): number {
  const { status, stdout, stderr } = spawnSync(process.execPath, given, { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  return stdout.length;
}
