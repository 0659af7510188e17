/** Answers as it is told to. */
import { problemError } from '@shared/problem/index.ts';
import { answerOnce } from '../../../../src-main/services/worker/index.ts';

void answerOnce<{ readonly kind: 'double' | 'problem' | 'leave' | 'steps'; readonly pixels: Uint8Array }>(
  async ({ kind, pixels }, further) => {
    if (kind === 'steps') pixels.forEach((_, at) => further(at + 1));
    if (kind === 'problem') throw problemError('picture-truncated', { kind: 'PNG' });
    if (kind === 'leave') process.exit(0);
    return { width: pixels.length, rgba: pixels.map((pixel) => 2 * pixel) };
  },
);
