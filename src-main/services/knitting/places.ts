/** Where the journals of pieces on the needles lie, and what their files are called. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { PieceKey } from '@shared/journal/index.ts';

const EXTENSION = '.journal';
/** Of a piece that was begun anew since, and of what cannot be read to its end. */
const ASIDE = { ended: '.ended', unread: '.unread' } as const;

/** The folder of all journals, in the folder of the program's own data. */
export function journalsFolder(dataFolder: string): string {
  return join(dataFolder, 'knitting');
}

/** The file of a piece: by the project's file, or its name where it has none, and by ids, which renaming leaves alone. */
export function journalFile({ project, piece, size, copy }: PieceKey): string {
  const whose = project.path === null ? ['unsaved', project.name] : ['saved', project.path];
  const hash = createHash('sha256').update(JSON.stringify([...whose, piece.id, size.id, copy]));
  return `${hash.digest('hex').slice(0, 32)}${EXTENSION}`;
}

export function isJournalFile(name: string): boolean {
  return /^[0-9a-f]{32}\.journal$/.test(name);
}

/** The name under which bytes of a journal are put aside: the same for the same bytes. */
export function asideFile(file: string, bytes: Uint8Array, why: keyof typeof ASIDE): string {
  const hash = createHash('sha256').update(bytes).digest('hex').slice(0, 8);
  return `${file.slice(0, -EXTENSION.length)}.${hash}${ASIDE[why]}`;
}
