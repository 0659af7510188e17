/** Where the script of a thread lies: as source in tests and while developing, else beside the rest of the build. */
import { join } from 'node:path';
import { programFolder } from '../program-folder.ts';

export interface ThreadEntry {
  /** The script as source. */
  readonly source: URL;
  /** Its name in the build (`electron.vite.config.ts`), without the ending. */
  readonly built: string;
}

interface Thread {
  readonly file: string | URL;
  readonly argv: readonly string[];
}

export function threadAt({ source, built }: ThreadEntry): Thread {
  // No file of a build ends in .ts.
  return import.meta.url.endsWith('.ts')
    ? { file: new URL('./from-source.mjs', import.meta.url), argv: [source.href] }
    : { file: join(programFolder(), 'out', 'main', `${built}.cjs`), argv: [] };
}
