/** Run as a process of its own: writes two contents in turn over one document, until it is killed. */
import { nodeFiles } from '../../src-main/services/index.ts';
import { writeWhole } from '../../src-main/services/files/index.ts';
import { contentOf } from './two-contents.ts';

const document = process.argv[2] as string;
process.stdout.write('writing\n');
for (let turn = 0; ; turn += 1) await writeWhole(nodeFiles, async () => undefined, document, contentOf(turn));
