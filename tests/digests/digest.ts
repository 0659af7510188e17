/** What is said of project files, as digests. */
import { createHash } from 'node:crypto';
import { generatedFile, type Version } from './generated/project-file.ts';
import { saidOf, type Said } from './said.ts';

/** How many generated projects have one digest. */
export const BATCH = 50;

/** How many batches there are of each version, {@link BATCH} projects each: 9,000 in all. */
export const BATCHES: { readonly [version in Version]: number } = { 1: 12, 2: 24, 3: 24, 4: 30, 5: 30, 6: 30, 7: 30 };

/** Letters that are kept of each project's own digest, to find the one that differs. */
const SHORT = 6;

export interface Digest {
  /** SHA-256 of the plans in canonical JSON. */
  readonly plans: string;
  /** SHA-256 of the files as they are saved again. */
  readonly files: string;
}

export interface BatchDigest extends Digest {
  /** The first letters of the digest of each project, one after the other. */
  readonly each: string;
}

function sha256(...texts: readonly string[]): string {
  const hash = createHash('sha256');
  // The length keeps what ends one text from beginning the next.
  for (const text of texts) hash.update(`${text.length}:`).update(text);
  return hash.digest('hex');
}

export function digestOf({ plans, file }: Said): Digest {
  return { plans: sha256(...plans), files: sha256(file) };
}

/** Numbers of the projects of a batch. */
export function numbersOf(batch: number): number[] {
  return Array.from({ length: BATCH }, (_, index) => batch * BATCH + index);
}

/** `look` is shown each file and what is said of it. */
export function digestOfBatch(
  version: Version,
  batch: number,
  look: (file: object, answers: Said) => void = () => {},
): BatchDigest {
  const all = numbersOf(batch).map((number) => {
    const file = generatedFile(version, number);
    const answers = saidOf(JSON.stringify(file));
    look(file, answers);
    return digestOf(answers);
  });
  return {
    plans: sha256(...all.map(({ plans }) => plans)),
    files: sha256(...all.map(({ files }) => files)),
    each: all.map(({ plans, files }) => sha256(plans, files).slice(0, SHORT)).join(''),
  };
}

/** Places in the batch of the projects that differ. */
export function differingIn(recorded: BatchDigest, now: BatchDigest): number[] {
  return Array.from({ length: BATCH }, (_, index) => index).filter((index) => {
    const own = ({ each }: BatchDigest): string => each.slice(index * SHORT, (index + 1) * SHORT);
    return own(recorded) !== own(now);
  });
}
