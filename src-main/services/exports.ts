/** Files made from a project: charts, sheets and row lists. */
import { join } from 'node:path';
import { projectAt, projectFromText } from '@shared/project/index.ts';
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

/** Writes the files, or, if some are there that nobody has answered about, says which and writes none. */
export async function writeExportFiles(
  environment: Environment,
  reach: Reach,
  saving: Saving,
  {
    project: text,
    folder,
    at,
    kinds,
    paper,
    date,
    lengthUnit = 'cm',
    charts = 'both',
    there: said,
  }: Params<'exports.write'>,
): Promise<Result<'exports.write'>> {
  const into = await existingFolder(environment, folder);
  await reach.assertFolder(into);
  const project = projectAt(projectFromText(text), at);
  // Fonts and the PDF writer take a while to load; opening the window does not wait for them.
  const { exportFileNames, numberedNames } = await import('./export/index.ts');
  const names = exportFileNames(project, kinds);
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

  const files: { path: string; bytes: number }[] = [];
  for (const { name, content } of await environment.makeExports({
    project: text,
    at: project.at,
    kinds,
    paper,
    date,
    lengthUnit,
    charts,
  })) {
    const target = targets.get(name);
    if (target === undefined) throw new Error(`${name} was made unannounced`);
    await saving.write(target.path, content, target.expected);
    files.push({ path: target.path, bytes: content.byteLength });
  }
  return { kind: 'written', folder: into, files };
}
