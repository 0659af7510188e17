/** Motifs of the collection as the host tells of them. */
import type { Host, Result } from '@shared/host/index.ts';
import { projectFromText, type Project } from '@shared/project/index.ts';

export type Entry = Result<'collection.look'>[number];
export type Collected = Extract<Entry, { readonly kind: 'motif' }>;
export type Unusable = Extract<Entry, { readonly kind: 'unusable' }>;

/** Of several entries of one file, the last. */
export function byFile(entries: readonly Entry[]): ReadonlyMap<string, Entry> {
  return new Map(entries.map((entry) => [entry.file, entry]));
}

/** Names that several have: their files tell them apart. */
export function sharedNames(motifs: readonly Pick<Collected, 'name'>[]): ReadonlySet<string> {
  const seen = new Set<string>();
  const shared = new Set<string>();
  for (const { name } of motifs) (seen.has(name) ? shared : seen).add(name);
  return shared;
}

/** The projects that files of the collection are, each had once. */
export class CollectedProjects {
  readonly #known = new Map<string, Promise<Project | null>>();

  constructor(private readonly host: Pick<Host, 'call'>) {}

  /** As the file was when it was looked at; null if it is so no more. */
  of({ file, stamp }: Pick<Collected, 'file' | 'stamp'>): Promise<Project | null> {
    const key = `${stamp} ${file}`;
    const known = this.#known.get(key) ?? this.#read(file, stamp);
    this.#known.set(key, known);
    // It may be there again.
    void known.then((project) => project ?? this.#known.delete(key));
    return known;
  }

  async #read(file: string, stamp: string): Promise<Project | null> {
    const read = await this.host.call('collection.read', { file });
    return read.ok && read.value.stamp === stamp ? projectFromText(read.value.text) : null;
  }
}
