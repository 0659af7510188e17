/** Run as a process of its own: announces a run in a folder, says its name, then idles or is busy for ever. */
import { announcePresence } from '../../../src-main/services/index.ts';

const [folder = '', how] = process.argv.slice(2);
const { instance } = await announcePresence(folder);
process.stdout.write(`${instance}\n`, () => {
  if (how === 'busy') for (;;);
  setInterval(() => undefined, 1000);
});
