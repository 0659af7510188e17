/** Which files the program reads and which it writes, told by what is in them. */
import { basename, extname } from 'node:path';
import { at, problemError } from '@shared/problem/index.ts';
import { isProjectFile } from '@shared/project/index.ts';
import { checkPictureFile, isSvg } from '@shared/reading/index.ts';

export const PROJECT_ENDING = '.walewright';

/** A project by another name, as earlier hands may have saved it: read, and saved back, but never made. */
const OTHER_PROJECT_ENDING = '.json';

/** Each ending that the program writes, and whether bytes are of that kind. */
const WRITTEN = {
  [PROJECT_ENDING]: isProjectFile,
  [OTHER_PROJECT_ENDING]: isProjectFile,
  // PNG (ISO/IEC 15948), 5.2; PDF (ISO 32000), 7.5.2.
  '.png': (bytes) => begins(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
  '.svg': isSvg,
  '.pdf': (bytes) => begins(bytes, [0x25, 0x50, 0x44, 0x46, 0x2d]),
  '.csv': isTable,
} satisfies Record<string, (bytes: Uint8Array) => boolean>;

type WrittenEnding = keyof typeof WRITTEN;

/** Endings of the pictures that are opened. */
const PICTURES: ReadonlySet<string> = new Set(['.png', '.svg', '.jpg', '.jpeg', '.webp', '.pbm', '.bmp']);

/** What a list of files says of one by its name: what can be opened or has been exported. Null for others, which are nobody's business. */
export function kindByName(name: string): 'project' | 'picture' | 'other' | null {
  const ending = extname(name).toLowerCase();
  if (ending === PROJECT_ENDING) return 'project';
  if (PICTURES.has(ending)) return 'picture';
  return Object.hasOwn(WRITTEN, ending) && ending !== OTHER_PROJECT_ENDING ? 'other' : null;
}

export function isProjectName(name: string): boolean {
  return [PROJECT_ENDING, OTHER_PROJECT_ENDING].includes(extname(name).toLowerCase());
}

/** The ending of a file that the program writes. Throws `path-closed`. */
export function writtenEnding(path: string): WrittenEnding {
  const ending = extname(path).toLowerCase();
  if (!Object.hasOwn(WRITTEN, ending)) throw problemError('path-closed', { why: 'ending' }, path);
  return ending as WrittenEnding;
}

/** Throws `path-closed` for an ending under which the program saves back what was there, and makes nothing. */
export function assertMade(path: string): void {
  if (writtenEnding(path) === OTHER_PROJECT_ENDING) throw problemError('path-closed', { why: 'ending' }, path);
}

/**
 * Throws `file-of-other-kind` if what is at `path` is not what the program
 * writes under such a name. What is empty holds nothing to lose.
 */
export function assertOurKind(path: string, bytes: Uint8Array): void {
  if (bytes.length > 0 && !WRITTEN[writtenEnding(path)](bytes)) throw problemError('file-of-other-kind', {}, path);
}

/** Throws `project-not-ours`, or what `checkPictureFile` throws, for what the program does not open. */
export function assertOpens(path: string, bytes: Uint8Array): void {
  if (isProjectFile(bytes)) return;
  if (isProjectName(basename(path))) throw problemError('project-not-ours', {}, path);
  try {
    checkPictureFile(bytes);
  } catch (error) {
    throw at(path, error);
  }
}

function begins(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

/** Text whose first line has as many columns as a row list, as this program or a spreadsheet writes it. */
function isTable(bytes: Uint8Array): boolean {
  if (bytes.includes(0)) return false;
  const [first = ''] = new TextDecoder().decode(bytes.subarray(0, 4096)).split(/\r?\n/, 1);
  return first.split(/[,;\t]/).length >= 5;
}
