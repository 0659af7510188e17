/** Files made from a project: charts, sheets and row lists. */
import { join } from 'node:path';
import { projectFromText } from '@shared/project/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import type { Environment } from './environment.ts';
import { existingFolder } from './folders.ts';
import type { Reach } from './reach.ts';
import type { Saving } from './saving.ts';

/** Writes the files, or, if some are there that nobody was asked about, says which and writes none. */
export async function writeExportFiles(
  environment: Environment,
  reach: Reach,
  saving: Saving,
  { project: text, folder, kinds, paper, date, lengthUnit = 'cm', replace }: Params<'exports.write'>,
): Promise<Result<'exports.write'>> {
  const into = await existingFolder(environment, folder);
  await reach.assertFolder(into);
  const project = projectFromText(text);
  // Fonts and the PDF writer take a while to load; opening the window does not wait for them.
  const { exportFileNames } = await import('./export/index.ts');
  const agreed = new Map(replace.map(({ name, stamp }) => [name, stamp]));
  const there: { name: string; stamp: string }[] = [];
  for (const name of exportFileNames(project, kinds)) {
    await reach.assertWritable(join(into, name));
    const stamp = await saving.stampAt(join(into, name));
    if (stamp !== null) there.push({ name, stamp });
  }
  if (there.some(({ name, stamp }) => agreed.get(name) !== stamp)) return { kind: 'asks', folder: into, there };

  const seen = new Map(there.map(({ name, stamp }) => [name, stamp]));
  const files: { path: string; bytes: number }[] = [];
  for (const { name, content } of await environment.makeExports({ project: text, kinds, paper, date, lengthUnit })) {
    const path = join(into, name);
    const stamp = seen.get(name);
    await saving.write(path, content, stamp === undefined ? { kind: 'nothing' } : { kind: 'version', stamp });
    files.push({ path, bytes: content.byteLength });
  }
  return { kind: 'written', folder: into, files };
}
