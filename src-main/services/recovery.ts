/**
 * Unsaved work, kept aside so that no crash takes it.
 *
 * Each run of the program keeps one backup under its own name, so two runs
 * never write over each other's. A run that starts takes over the newest
 * backup whose run has ended, by renaming it to its own: only one can.
 *
 * A backup is a line of JSON (where the project stood, when it was kept), the
 * text as it is, and an end mark with a hash of all before it. One without its
 * right mark is ignored.
 */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { z } from 'zod';
import { outcome } from '@shared/problem/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import type { Environment } from './environment.ts';
import { failureCode, readWhole, writeWhole, writingProblem } from './files/index.ts';
import { inTurn } from './in-turn.ts';

export type Kept = NonNullable<Result<'recovery.find'>>;

const EXTENSION = '.backup';
const headSchema = z.object({
  format: z.literal('walewright-backup'),
  version: z.literal(1),
  path: z.string().nullable(),
  keptAt: z.string(),
});

export interface Recovery {
  keep(work: Params<'recovery.keep'>): Promise<void>;
  find(): Promise<Kept | null>;
  drop(): Promise<void>;
}

export function recoveryOf({ files, now, wait, presence, dataFolder }: Environment): Recovery {
  const folder = join(dataFolder, 'recovery');
  const placeOf = (instance: string): string => join(folder, instance + EXTENSION);
  const own = placeOf(presence.instance);
  const turn = inTurn();

  async function read(place: string): Promise<Kept | null> {
    const bytes = await readWhole(files, place).catch(() => null);
    return bytes === null ? null : keptFromText(new TextDecoder().decode(bytes));
  }

  /** Backups of runs that have ended, newest first. */
  async function orphans(): Promise<readonly { place: string; kept: Kept }[]> {
    const names = await files.names(folder).catch((): readonly string[] => []);
    const found: { place: string; kept: Kept }[] = [];
    for (const name of names) {
      const instance = name.slice(0, -EXTENSION.length);
      if (!name.endsWith(EXTENSION) || instance === presence.instance) continue;
      if (await presence.isRunning(instance)) continue;
      const kept = await read(placeOf(instance));
      if (kept !== null) found.push({ place: placeOf(instance), kept });
    }
    return found.sort((a, b) => (a.kept.keptAt < b.kept.keptAt ? 1 : -1));
  }

  return {
    keep: ({ text, path }) =>
      turn(own, async () => {
        await files.makeFolder(folder).catch((error: unknown) => {
          throw writingProblem(error, folder);
        });
        const backup = keptToText({ text, path, keptAt: now().toISOString() });
        await writeWhole(files, wait, own, new TextEncoder().encode(backup));
      }),

    find: () =>
      turn(own, async () => {
        // The window was reloaded: the work kept by this very run comes first.
        const ours = await read(own);
        if (ours !== null) return ours;
        for (const { place, kept } of await orphans()) {
          // Another run that starts just now may have been quicker.
          const isTaken = await files.rename(place, own).then(
            () => true,
            () => false,
          );
          if (isTaken) return kept;
        }
        return null;
      }),

    drop: () =>
      turn(own, async () => {
        try {
          await files.unlink(own);
        } catch (error) {
          if (failureCode(error) !== 'ENOENT') throw writingProblem(error, own);
        }
      }),
  };
}

/** The text of a backup. */
export function keptToText({ text, path, keptAt }: Kept): string {
  const body = `${JSON.stringify({ format: 'walewright-backup', version: 1, path, keptAt })}\n${text}`;
  return body + endMark(body);
}

/** What was kept, or null if the backup is not whole. */
export function keptFromText(backup: string): Kept | null {
  const end = backup.lastIndexOf('\nend ');
  const body = backup.slice(0, Math.max(end, 0));
  if (end < 0 || backup.slice(end) !== endMark(body)) return null;
  const firstBreak = body.indexOf('\n');
  const head = outcome(() => headSchema.parse(JSON.parse(body.slice(0, firstBreak))));
  if (!head.ok) return null;
  return { text: body.slice(firstBreak + 1), path: head.value.path, keptAt: head.value.keptAt };
}

function endMark(body: string): string {
  return `\nend ${createHash('sha256').update(body).digest('hex')}\n`;
}
