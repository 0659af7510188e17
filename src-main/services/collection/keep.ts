/** Keeping a motif in the collection. */
import { isSameName, onlyMotif } from '@shared/collection/index.ts';
import { MOST_COLLECTED_BYTES, type Params, type Result } from '@shared/host/index.ts';
import { problemError } from '@shared/problem/index.ts';
import { projectFromText, projectToText } from '@shared/project/index.ts';
import type { Environment } from '../environment.ts';
import { safeFileName } from '../export/file-name.ts';
import { PROJECT_ENDING } from '../file-kinds.ts';
import { processesHere, writingProblem } from '../files/index.ts';
import { writeExpected, type Expectation } from '../saving.ts';
import { stampOf } from '../stamp.ts';
import type { Entries, Entry } from './entries.ts';
import { listFiles, pathInside, type CollectionFolder } from './folder.ts';

type Asked = Params<'collection.keep'>;
type Kept = Result<'collection.keep'>;
type Namesake = Extract<Entry, { kind: 'motif' }>;

/**
 * Writes the motif whole or not at all. Throws what reading its text throws,
 * `motifs-several`, `file-too-large`, `file-changed-elsewhere` for one that is
 * to be replaced and is another by now, and what writing throws.
 */
export async function keepMotif(
  environment: Pick<Environment, 'files' | 'wait'>,
  entries: Entries,
  where: CollectionFolder,
  { text, there: said }: Asked,
): Promise<Kept> {
  const project = projectFromText(text);
  const { name } = onlyMotif(project);
  const bytes = new TextEncoder().encode(projectToText(project));
  if (bytes.length > MOST_COLLECTED_BYTES) {
    throw problemError('file-too-large', { bytes: bytes.length, most: MOST_COLLECTED_BYTES }, name);
  }
  const { files } = environment;
  if (where.isOwn) await files.makeFolder(where.folder);
  if (said.kind === 'replace') {
    await write(environment, where, said.file, bytes, { kind: 'version', stamp: said.stamp });
    return { kind: 'kept', as: 'replaced', file: said.file };
  }
  const listed = (await listFiles(environment, where)).files;
  if (said.kind === 'ask') {
    const there = await namesakes(entries, where, listed, name);
    const same = there.find(({ stamp }) => stamp === stampOf(bytes));
    if (same) return { kind: 'kept', as: 'same', file: same.file };
    if (there.length > 0) {
      return {
        kind: 'asks',
        there: there.map(({ file, stamp, name: called, width, height }) => ({
          file,
          stamp,
          name: called,
          width,
          height,
        })),
      };
    }
  }
  const file = freeName(safeFileName(name, 'motif'), await files.names(where.folder));
  await write(environment, where, file, bytes, { kind: 'nothing' });
  return { kind: 'kept', as: 'new', file };
}

/** The motifs that are called so. */
async function namesakes(
  entries: Entries,
  { folder }: CollectionFolder,
  listed: readonly string[],
  name: string,
): Promise<Namesake[]> {
  const found: Namesake[] = [];
  for (const file of listed) {
    const entry = await entries.look(folder, file);
    if (entry.kind === 'motif' && isSameName(entry.name, name)) found.push(entry);
  }
  return found;
}

/** `star.walewright`, or with the lowest number that no file has, in capitals or not. */
function freeName(name: string, names: readonly string[]): string {
  const taken = new Set(names.map((one) => one.normalize('NFC').toLowerCase()));
  for (let number = 1; ; number++) {
    const file = `${number === 1 ? name : `${name} (${number})`}${PROJECT_ENDING}`;
    if (!taken.has(file.toLowerCase())) return file;
  }
}

async function write(
  { files, wait }: Pick<Environment, 'files' | 'wait'>,
  { folder }: CollectionFolder,
  file: string,
  bytes: Uint8Array,
  expected: Expectation,
): Promise<void> {
  const path = await pathInside(files, folder, file).catch((error: unknown) => {
    throw writingProblem(error, folder);
  });
  await writeExpected({ files, wait, processes: processesHere }, path, bytes, expected);
}
