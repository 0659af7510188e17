/** A decoder that never ends, as a hostile picture would like one to be. */
import { answerOnce } from '../../../../src-main/services/worker/index.ts';

void answerOnce(async () => {
  for (let pixel = 0; ; pixel = (pixel + 1) % 7) if (pixel > 7) return pixel;
});
