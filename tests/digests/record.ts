/** The digests that were recorded, in `record.json`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from '../runner/programs.ts';
import type { BatchDigest, Digest } from './digest.ts';
import type { Version } from './generated/project-file.ts';

export interface Record {
  /** By the name of the file in `tests/fixtures/`. */
  readonly fixtures: { readonly [name: string]: Digest };
  /** By the version of the files, one for each batch. */
  readonly generated: { readonly [version in Version]: readonly BatchDigest[] };
}

const PATH = join(import.meta.dirname, 'record.json');

/** From the project's folder. */
export const RECORD_PATH = relative(root, PATH).replaceAll('\\', '/');

export function readRecord(): Record {
  return JSON.parse(readFileSync(PATH, 'utf8')) as Record;
}

export function writeRecord(record: Record): void {
  writeFileSync(PATH, `${JSON.stringify(record, null, 2)}\n`);
}
