/** Files made from a project: charts, sheets and row lists. */
import { projectFromText } from '@shared/project/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import type { Environment } from './environment.ts';
import { writeWhole } from './files/index.ts';
import { existingFolder } from './folders.ts';

export async function writeExportFiles(
  environment: Environment,
  { project, folder, kinds, paper, lengthUnit = 'cm' }: Params<'exports.write'>,
): Promise<Result<'exports.write'>> {
  const { files, wait } = environment;
  const into = await existingFolder(environment, folder);
  // Fonts and the PDF writer take a while to load; opening the window does not wait for them.
  const { writeExports } = await import('./export/index.ts');
  const written = await writeExports({
    project: projectFromText(project),
    folder: into,
    kinds,
    paper,
    lengthUnit,
    writeFile: (path, bytes) => writeWhole(files, wait, path, bytes),
  });
  return { files: [...written] };
}
