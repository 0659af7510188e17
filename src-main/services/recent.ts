/**
 * Projects that were opened or saved lately, newest first.
 *
 * A list that cannot be read is an empty list: it is a convenience and must
 * never stand in the way of a document. Two runs that write it in the same
 * instant leave it whole, with the last one's entry.
 */
import { basename, join } from 'node:path';
import { outcome } from '@shared/problem/index.ts';
import { letters, z } from '@shared/schema/index.ts';
import type { Result } from '@shared/host/index.ts';
import type { Environment } from './environment.ts';
import { readWhole, writeWhole } from './files/index.ts';
import { inTurn } from './in-turn.ts';

const MOST_RECENT = 12;
const schema = z.object({ format: z.literal('walewright-recent'), paths: z.array(letters(4096)) });

export interface Recent {
  list(): Promise<Result<'documents.recent'>>;
  paths(): Promise<readonly string[]>;
  add(path: string): Promise<void>;
  forget(path: string): Promise<void>;
}

export function recentList({ files, wait, dataFolder }: Environment): Recent {
  const place = join(dataFolder, 'recent.json');
  const turn = inTurn();

  async function read(): Promise<readonly string[]> {
    const bytes = await readWhole(files, place).catch(() => null);
    if (bytes === null) return [];
    const parsed = outcome(() => schema.parse(JSON.parse(new TextDecoder().decode(bytes))));
    return parsed.ok ? parsed.value.paths : [];
  }

  function change(edit: (paths: readonly string[]) => readonly string[]): Promise<void> {
    return turn(place, async () => {
      const paths = edit(await read()).slice(0, MOST_RECENT);
      await files.makeFolder(dataFolder);
      const text = `${JSON.stringify({ format: 'walewright-recent', paths }, null, 2)}\n`;
      await writeWhole(files, wait, place, new TextEncoder().encode(text));
    });
  }

  const exists = (path: string): Promise<boolean> =>
    files.state(path).then(
      ({ kind }) => kind === 'file',
      () => false,
    );

  return {
    list: async () =>
      Promise.all((await read()).map(async (path) => ({ path, name: basename(path), exists: await exists(path) }))),
    paths: read,
    add: (path) => change((paths) => [path, ...paths.filter((other) => other !== path)]),
    forget: (path) => change((paths) => paths.filter((other) => other !== path)),
  };
}
