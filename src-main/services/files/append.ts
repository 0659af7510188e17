/** Writing behind what a file of the program's own holds. */
import { fill } from './aside.ts';
import type { FileOperations } from './operations.ts';
import { writingProblem } from './problems.ts';

/**
 * Writes `bytes` behind what the file holds; when it returns they are on the
 * disk. Where it fails, or the machine does, a part of them may stand there.
 * Throws `file-missing` if there is no such file, and what `writeWhole` throws.
 */
export async function append(files: FileOperations, path: string, bytes: Uint8Array): Promise<void> {
  try {
    await fill(await files.open(path, 'append'), bytes, null);
  } catch (error) {
    throw writingProblem(error, path);
  }
}
