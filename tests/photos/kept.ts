/**
 * Outcomes of photographs on disk, one a line, so that a long run may be
 * stopped at any time and goes on where it was.
 */
import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Kind } from '../generate/charts/kinds.ts';
import type { LampKind } from '../generate/charts/lamps.ts';
import type { Found } from './found.ts';
import type { Outcome } from './tried.ts';

/** What came of one photograph: read with its corners known, and with nothing said. */
export interface KeptOutcome {
  readonly seed: number;
  readonly kind: Kind;
  readonly lamp: LampKind;
  readonly known: Outcome | null;
  readonly found: Found | null;
  /** Read as it was found; null where another chart was. */
  readonly asFound: Outcome | null;
}

interface Line extends KeptOutcome {
  /** What was photographed and how, in words. */
  readonly setting: string;
  /** Which reader read which drawing: {@link sourcesNow} of that day. */
  readonly sources: string;
}

export class KeptOutcomes {
  readonly #file: string | null;
  readonly #setting: string;
  readonly #lines = new Map<number, Line>();
  readonly #sources = sourcesNow();

  /** Of one `setting`, as they stand in `file`; none where it is null or not there yet. */
  constructor(file: string | null, setting: string) {
    this.#file = file;
    this.#setting = setting;
    if (file === null || !existsSync(file)) return;
    for (const text of readFileSync(file, 'utf8').split('\n')) {
      const line = lineOf(text);
      if (line?.setting === setting) this.#lines.set(line.seed, line);
    }
  }

  get(seed: number): KeptOutcome | null {
    return this.#lines.get(seed) ?? null;
  }

  isOfToday(seed: number): boolean {
    return this.#lines.get(seed)?.sources === this.#sources;
  }

  keep(outcome: KeptOutcome): void {
    const line: Line = { ...outcome, setting: this.#setting, sources: this.#sources };
    this.#lines.set(outcome.seed, line);
    if (this.#file !== null) appendFileSync(this.#file, `${JSON.stringify(line)}\n`);
  }
}

/** Null where a run was stopped while it wrote the line. */
function lineOf(text: string): Line | null {
  try {
    const line = JSON.parse(text) as Line;
    // JSON has no infinity: where nothing was found, the corners are infinitely far off.
    return line.found === null ? line : { ...line, found: { ...line.found, off: line.found.off ?? Infinity } };
  } catch {
    return null;
  }
}

/** Changes with every change of the reader and of what draws the photographs. */
function sourcesNow(): string {
  const digest = createHash('sha256');
  for (const folder of ['src-shared/reading', 'tests/generate/charts']) {
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
    for (const file of files.sort()) digest.update(readFileSync(join(folder, file)));
  }
  return digest.digest('hex').slice(0, 12);
}
