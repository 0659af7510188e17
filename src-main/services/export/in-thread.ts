/**
 * Making files from a project off the event loop: a sheet of many pages
 * takes seconds, in which the host would answer no other window and keep
 * nobody's work.
 */
import { LOOKED_AT, type Place } from '@shared/project/index.ts';
import { inWorker, type Limit, type ThreadEntry, type Waiting } from '../worker/index.ts';
import type { ExportRequest, MadeFile } from './index.ts';

/** What is to be made, with the project as the text of its file, and which piece of it in which size. */
export type ExportsAsked = Omit<ExportRequest, 'project'> & { readonly project: string; readonly at: Place };

const THREAD: ThreadEntry = { source: new URL('./thread.ts', import.meta.url), built: 'export-thread' };

/** Far more than the largest piece takes, so that what never ends is ended. */
const EXPORT_LIMIT: Limit = { work: 'export', seconds: 300, megabytes: 3000 };
/** Of all pieces in all sizes, many at once. */
const EXPORT_ALL_LIMIT: Limit = { ...EXPORT_LIMIT, seconds: 3000 };

/** Throws what `makeExports` throws, `work-stopped`, and the reason of the signal that stops it. */
export async function makeExportsInThread(asked: ExportsAsked, waiting: Waiting = {}): Promise<MadeFile[]> {
  const { pieces, sizes } = asked.scope ?? LOOKED_AT;
  const isOfOne = pieces === 'this' && sizes === 'this';
  return (await inWorker(THREAD, asked, isOfOne ? EXPORT_LIMIT : EXPORT_ALL_LIMIT, [], waiting)) as MadeFile[];
}
