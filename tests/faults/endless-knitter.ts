/** Run as a process of its own: counts row after row in the journal of a piece, and says each once it is kept, until it is killed. */
import { createServices } from '../../src-main/services/index.ts';
import { testEnvironment } from '../unit/services/test-environment.ts';
import { counted, tallPiece } from './tall-piece.ts';

const services = createServices(testEnvironment(process.argv[2] as string));
await services['knitting.begin']({ begun: tallPiece(), isAnew: false });
for (let reading = 0; ; reading++) {
  await services['knitting.append']({ of: tallPiece().of, after: reading, events: [counted(reading)] });
  process.stdout.write(`${reading + 1}\n`);
}
