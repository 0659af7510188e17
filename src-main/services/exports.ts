/** Files made from a project: charts, sheets and row lists. */
import { join } from 'node:path';
import { LOOKED_AT, projectAt, projectFromText } from '@shared/project/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import type { Environment } from './environment.ts';
import { existingFolder } from './folders.ts';
import type { Reach } from './reach.ts';
import type { Expectation, Saving } from './saving.ts';

/** Where a file is written, and what must be there. */
interface Target {
  readonly path: string;
  readonly expected: Expectation;
}

/** A call that makes files. */
interface Run {
  made: number;
  of: number;
  readonly stopping: AbortController;
}

export interface Exports {
  /** Writes the files, or, if some are there that nobody has answered about, says which and writes none. */
  write(asked: Params<'exports.write'>): Promise<Result<'exports.write'>>;
  howFar(run: string): Result<'exports.howFar'>;
  stop(run: string): void;
}

export function exportsOf(environment: Environment, reach: Reach, saving: Saving): Exports {
  const runs = new Map<string, Run>();
  return {
    async write(asked) {
      const run: Run = { made: 0, of: 0, stopping: new AbortController() };
      if (asked.run !== undefined) runs.set(asked.run, run);
      try {
        return await writeExportFiles(environment, reach, saving, asked, run);
      } finally {
        if (asked.run !== undefined) runs.delete(asked.run);
      }
    },
    howFar(name) {
      const run = runs.get(name);
      return run ? { made: run.made, of: run.of } : null;
    },
    stop: (name) => runs.get(name)?.stopping.abort(new Stopped()),
  };
}

/** The person gave up. */
class Stopped extends Error {}

async function writeExportFiles(
  environment: Environment,
  reach: Reach,
  saving: Saving,
  {
    project: text,
    folder,
    at,
    scope = LOOKED_AT,
    kinds,
    paper,
    date,
    lengthUnit = 'cm',
    charts = 'both',
    there: said,
  }: Params<'exports.write'>,
  run: Run,
): Promise<Result<'exports.write'>> {
  const into = await existingFolder(environment, folder);
  await reach.assertFolder(into);
  const project = projectAt(projectFromText(text), at);
  // Fonts and the PDF writer take a while to load; opening the window does not wait for them.
  const { exportFileNames, numberedNames } = await import('./export/index.ts');
  const names = exportFileNames(project, kinds, scope);
  run.of = names.length;
  for (const name of names) await reach.assertWritable(join(into, name));

  const targets = new Map<string, Target>();
  if (said.kind === 'number') {
    const free = await numberedNames(names, (name) => saving.isTaken(join(into, name)));
    for (const [name, numbered] of free)
      targets.set(name, { path: join(into, numbered), expected: { kind: 'nothing' } });
  } else {
    const agreed = new Map(said.kind === 'ask' ? [] : said.seen.map(({ name, stamp }) => [name, stamp]));
    const there: { name: string; stamp: string }[] = [];
    for (const name of names) {
      const path = join(into, name);
      const stamp = await saving.stampAt(path);
      if (stamp !== null) there.push({ name, stamp });
      targets.set(name, { path, expected: stamp === null ? { kind: 'nothing' } : { kind: 'version', stamp } });
    }
    if (there.some(({ name, stamp }) => agreed.get(name) !== stamp)) return { kind: 'asks', folder: into, there };
  }

  const wanted = { project: text, at: project.at, scope, kinds, paper, date, lengthUnit, charts };
  const { signal } = run.stopping;
  try {
    const made = await environment.makeExports(wanted, { signal, further: (count) => void (run.made = count) });
    signal.throwIfAborted();
    return { kind: 'written', folder: into, files: await written(made, targets, saving) };
  } catch (thrown) {
    if (thrown instanceof Stopped) return { kind: 'stopped' };
    throw thrown;
  }
}

async function written(
  made: readonly { readonly name: string; readonly content: Uint8Array }[],
  targets: ReadonlyMap<string, Target>,
  saving: Saving,
): Promise<{ path: string; bytes: number }[]> {
  const files: { path: string; bytes: number }[] = [];
  for (const { name, content } of made) {
    const target = targets.get(name);
    if (target === undefined) throw new Error(`${name} was made unannounced`);
    await saving.write(target.path, content, target.expected);
    files.push({ path: target.path, bytes: content.byteLength });
  }
  return files;
}
