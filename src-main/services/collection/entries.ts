/** What the files of the collection hold. What is no motif is listed with the reason, and left alone. */
import { factsOf, type MotifFacts } from '@shared/collection/index.ts';
import type { Result } from '@shared/host/index.ts';
import { at, problemOf } from '@shared/problem/index.ts';
import { projectFromText } from '@shared/project/index.ts';
import type { Environment } from '../environment.ts';
import { stampOf } from '../stamp.ts';
import { readFileIn } from './folder.ts';

export type Entry = Result<'collection.look'>[number];

/** Facts that are remembered, for as many files as anybody looks at again. */
const MOST_REMEMBERED = 6000;

/** Looks at files of a folder, one by one: hundreds of them must not hold up other calls. */
export class Entries {
  /** By what a file holds: whoever changes it changes that. */
  readonly #known = new Map<string, MotifFacts>();

  constructor(private readonly environment: Pick<Environment, 'files'>) {}

  async look(folder: string, file: string): Promise<Entry> {
    try {
      const bytes = await readFileIn(this.environment, folder, file);
      const stamp = stampOf(bytes);
      return { kind: 'motif', file, stamp, ...this.#facts(stamp, file, bytes) };
    } catch (error) {
      const problem = problemOf(error);
      return problem.code === 'file-missing' ? { kind: 'gone', file } : { kind: 'unusable', file, problem };
    }
  }

  /** The text of a file that holds one motif. Throws what keeps it from being one. */
  async read(folder: string, file: string): Promise<Result<'collection.read'>> {
    const bytes = await readFileIn(this.environment, folder, file);
    const stamp = stampOf(bytes);
    this.#facts(stamp, file, bytes);
    return { text: textOf(bytes), stamp };
  }

  #facts(stamp: string, file: string, bytes: Uint8Array): MotifFacts {
    const known = this.#known.get(stamp);
    if (known) return known;
    try {
      const facts = factsOf(projectFromText(textOf(bytes)));
      if (this.#known.size >= MOST_REMEMBERED) this.#known.clear();
      this.#known.set(stamp, facts);
      return facts;
    } catch (error) {
      throw at(file, error);
    }
  }
}

function textOf(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes);
}
