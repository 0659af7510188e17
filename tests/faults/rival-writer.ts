/**
 * Run as a process of its own: writes documents of its own content when told
 * to, and says for each whether it was written. Each line it reads is JSON:
 * the path, and the text that must be there, or null for a new document.
 */
import { createInterface } from 'node:readline';
import { problemError, problemOf } from '@shared/problem/index.ts';
import { nodeFiles } from '../../src-main/services/index.ts';
import { processesHere, writeChecked } from '../../src-main/services/files/index.ts';
import { setTimeout } from 'node:timers/promises';

const own = new TextEncoder().encode(`written by ${process.argv[2]}\n`.repeat(2000));
const disk = { files: nodeFiles, wait: (ms: number) => setTimeout(ms), processes: processesHere };

process.stdout.write('ready\n');
for await (const line of createInterface(process.stdin)) {
  const { path, over } = JSON.parse(line) as { path: string; over: string | null };
  const answer = await writeChecked(disk, path, own, (there) => {
    if ((there === null ? null : new TextDecoder().decode(there)) !== over)
      throw problemError('file-changed-elsewhere', {});
  }).then(
    () => 'saved',
    (error: unknown) => problemOf(error).code,
  );
  process.stdout.write(`${answer}\n`);
}
