/**
 * Making files from a project off the event loop: a sheet of many pages
 * takes seconds, in which the host would answer no other window and keep
 * nobody's work.
 */
import type { Place } from '@shared/project/index.ts';
import { inWorker, type Limit, type ThreadEntry } from '../worker/index.ts';
import type { ExportRequest, MadeFile } from './index.ts';

/** What is to be made, with the project as the text of its file, and which piece of it in which size. */
export type ExportsAsked = Omit<ExportRequest, 'project'> & { readonly project: string; readonly at: Place };

const THREAD: ThreadEntry = { source: new URL('./thread.ts', import.meta.url), built: 'export-thread' };

/** Far more than the largest piece takes, so that what never ends is ended. */
const EXPORT_LIMIT: Limit = { work: 'export', seconds: 300, megabytes: 3000 };

/** Throws what `makeExports` throws, and `work-stopped`. */
export async function makeExportsInThread(asked: ExportsAsked): Promise<MadeFile[]> {
  return (await inWorker(THREAD, asked, EXPORT_LIMIT)) as MadeFile[];
}
