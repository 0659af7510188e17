/** A decoder that fills memory for ever: `bytes` in typed arrays, `objects` in values that V8 counts. */
import { answerOnce } from '../../../../src-main/services/worker/index.ts';

void answerOnce<'bytes' | 'objects'>(async (kind) => {
  const kept: unknown[] = [];
  for (;;)
    kept.push(kind === 'bytes' ? new Uint8Array(4 * 1024 * 1024).fill(1) : { row: kept.length, of: [kept.length] });
});
