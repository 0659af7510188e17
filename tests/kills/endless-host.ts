/**
 * Run as a process of its own: the services of a host that saves a project over
 * and over and keeps work aside beside it, until it is killed. Says `started`
 * once it stands, begins when it is told to, and says which version is saved.
 */
import { once } from 'node:events';
import { sampleProject, projectToText } from '@shared/project/index.ts';
import { createServices, thisMachine } from '../../src-main/services/index.ts';
import { silentShell } from '../unit/services/test-environment.ts';

const [folder = '', document = '', first = '1'] = process.argv.slice(2);
const { environment } = await thisMachine(silentShell, { dataFolder: `${folder}/data`, homeFolder: folder });
const services = createServices(environment);
const say = (line: string): Promise<void> => new Promise((done) => process.stdout.write(`${line}\n`, () => done()));

await say('started');
await once(process.stdin, 'data');
let { stamp } = await services['documents.read']({ path: document });
const work = { window: 'window-1', browser: 'browser-1', work: 'work-one' };
for (let version = Number(first); ; version += 1) {
  const text = projectToText({ ...sampleProject(), name: `version ${version}` });
  const facts = { laying: null, edition: version, keptAt: environment.now().toISOString(), name: `version ${version}` };
  await services['recovery.keep']({ ...work, ...facts, text, file: { path: document, stamp } });
  ({ stamp } = await services['documents.write']({ path: document, text, expect: { kind: 'version', stamp } }));
  await say(`saved ${version}`);
  await services['recovery.drop']({ window: work.window, work: work.work });
}
