/** From the platform's error codes to problems that a person can act on. */
import { at, problemError, ProblemError } from '@shared/problem/index.ts';
import { failureCode } from './operations.ts';

/** What to tell about a file or folder that could not be read; what is no file error passes as it is. */
export function readingProblem(error: unknown, path: string): unknown {
  if (error instanceof ProblemError) return at(path, error);
  const code = failureCode(error);
  if (code === null) return error;
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return problemError('file-missing', {}, path);
    case 'EISDIR':
      return problemError('file-is-folder', {}, path);
    default:
      return problemError('file-not-readable', { detail: briefly(error) }, path);
  }
}

/** What to tell about a file that could not be written; what is no file error passes as it is. */
export function writingProblem(error: unknown, path: string): unknown {
  if (error instanceof ProblemError) return at(path, error);
  const code = failureCode(error);
  if (code === null) return error;
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return problemError('disk-full', {}, path);
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
    case 'ENOTDIR':
      return problemError('folder-not-writable', { detail: briefly(error) }, path);
    case 'ENOENT':
      return problemError('file-missing', {}, path);
    case 'EISDIR':
      return problemError('file-is-folder', {}, path);
    default:
      return problemError('file-not-written', { detail: briefly(error) }, path);
  }
}

/** `EACCES: permission denied, open '/a/b'` without what is said elsewhere. */
function briefly(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.replace(/^[A-Z]+: /, '').replace(/, \w+(?: '.*)?$/, '');
}
