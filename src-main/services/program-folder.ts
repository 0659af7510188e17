/** Where the program itself lies. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of our package.json, whether this runs as source, as a build or packed into an installer. */
export function programFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('The program lies outside its own package');
    folder = above;
  }
  return folder;
}

/** The version in our package.json. */
export function programVersion(): string {
  const { version } = JSON.parse(readFileSync(join(programFolder(), 'package.json'), 'utf8')) as { version: string };
  return version;
}

/** Where the build puts the page. */
export function pageFolder(): string {
  return join(programFolder(), 'out', 'renderer');
}
