/** The journals of pieces on the needles, kept in the folder of the program's own data. */
import { join } from 'node:path';
import type { Params, Result } from '@shared/host/index.ts';
import type { PieceKey } from '@shared/journal/index.ts';
import { lastReading, paritySide } from '@shared/knitting/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import type { Environment } from '../environment.ts';
import { failureCode } from '../files/index.ts';
import { JournalFile } from './journal-file.ts';
import { isJournalFile, journalFile, journalsFolder } from './places.ts';

type Listed = Result<'knitting.list'>[number];

export interface Knitting {
  begin(params: Params<'knitting.begin'>): Promise<Result<'knitting.begin'>>;
  read(of: PieceKey): Promise<Result<'knitting.read'>>;
  since(params: Params<'knitting.since'>): Promise<Result<'knitting.since'>>;
  append(params: Params<'knitting.append'>): Promise<Result<'knitting.append'>>;
  list(): Promise<Listed[]>;
  savedAs(params: Params<'knitting.savedAs'>): Promise<void>;
}

export function knittingOf(environment: Pick<Environment, 'files' | 'wait' | 'now' | 'dataFolder'>): Knitting {
  const { files } = environment;
  const folder = journalsFolder(environment.dataFolder);
  const known = new Map<string, JournalFile>();

  function called(name: string): JournalFile {
    const file = known.get(name) ?? new JournalFile(environment, join(folder, name));
    known.set(name, file);
    return file;
  }
  const ofPiece = (of: PieceKey): JournalFile => called(journalFile(of));

  /** Of all pieces; none where there is no folder yet. */
  async function names(): Promise<readonly string[]> {
    const all = await files.names(folder).catch((error: unknown) => {
      if (failureCode(error) === 'ENOENT') return [];
      throw error;
    });
    return all.filter(isJournalFile);
  }

  return {
    begin: ({ begun, isAnew }) => ofPiece(begun.of).begin(begun, isAnew),
    async read(of) {
      const held = await ofPiece(of).read();
      return held && { text: new TextDecoder().decode(held.bytes) };
    },
    async since({ of, after }) {
      const held = await ofPiece(of).read();
      return { entries: held?.journal.entries.slice(after, held.followed.entries) ?? [] };
    },
    append: ({ of, after, events }) => ofPiece(of).append(after, events),
    async list() {
      const listed: Listed[] = [];
      for (const name of await names()) {
        const one = await listedAs(called(name)).catch((error: unknown): Listed => ({
          kind: 'unusable',
          file: join(folder, name),
          problem: problemOf(error),
        }));
        if (one) listed.push(one);
      }
      return listed.sort((a, b) => (countedAt(a) < countedAt(b) ? 1 : countedAt(a) > countedAt(b) ? -1 : 0));
    },
    async savedAs({ from, to }) {
      for (const name of await names()) {
        const file = called(name);
        const of = await file.read().then(
          (held) => held?.journal.begun.of,
          () => undefined,
        );
        if (of?.project.path !== from.path || (from.path === null && of.project.name !== from.name)) continue;
        const there = ofPiece({ ...of, project: to });
        if (there === file) continue;
        const isThere = await file.copyTo(there, to);
        // Nobody finds a project again that was never saved.
        if (from.path === null && isThere) await files.unlink(join(folder, name));
      }
    },
  };
}

async function listedAs(file: JournalFile): Promise<Listed | null> {
  const held = await file.read();
  if (held === null) return null;
  const { journal, followed } = held;
  const { knitting, place } = followed;
  return {
    kind: 'piece',
    of: journal.begun.of,
    reading: place.reading,
    last: lastReading(knitting),
    isFinished: place.phase === 'finished',
    carriageAt: paritySide(knitting, place.reading),
    countedAt: journal.entries[followed.entries - 1]?.at ?? null,
  };
}

function countedAt(listed: Listed): string {
  return listed.kind === 'piece' ? (listed.countedAt ?? '') : '';
}
