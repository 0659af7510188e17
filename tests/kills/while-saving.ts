/** A host killed at random moments of saving: one whole version each time, no litter after the next start. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { projectFromText, projectToText, sampleProject } from '@shared/project/index.ts';
import type { Chance } from './chance.ts';

const root = resolve(import.meta.dirname, '../..');
/** Some ten saves, after the first. */
const LONGEST_MS = 120;

export interface KilledWhileSaving {
  readonly kills: number;
  /** How many of them fell between the beginning of a save and its end, as far as the document tells. */
  readonly saves: number;
}

/** Kills `kills` hosts, one after the other, over the same document. Throws at the first that left anything wrong. */
export async function killWhileSaving(kills: number, chance: Chance): Promise<KilledWhileSaving> {
  const folder = await mkdtemp(join(tmpdir(), 'walewright-kills-'));
  try {
    const home = join(folder, 'home');
    await mkdir(home);
    const document = join(home, 'sleeve.walewright');
    await writeFile(document, projectToText({ ...sampleProject(), name: 'version 0' }));
    let version = 0;
    let saves = 0;
    for (let kill = 1; kill <= kills; kill += 1) {
      const host = await startHost(folder, document, version + 1);
      const litter = await litterIn(folder, document);
      if (litter.length > 0) throw new Error(`Kill ${kill}: the next start left ${litter.join(', ')}`);
      const ms = chance() * LONGEST_MS;
      const saved = await host.killAfter(ms);
      const found = versionIn(await readFile(document, 'utf8'), `Kill ${kill}, after ${ms} ms`);
      if (found < saved || found > saved + 1) {
        throw new Error(`Kill ${kill}, after ${ms} ms: version ${saved} was saved, version ${found} is there`);
      }
      saves += found - version;
      version = found;
    }
    const last = await startHost(folder, document, version + 1);
    const litter = await litterIn(folder, document);
    await last.kill();
    if (litter.length > 0) throw new Error(`The last start left ${litter.join(', ')}`);
    return { kills, saves };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function startHost(folder: string, document: string, first: number) {
  const given = ['--import', 'tsx', 'tests/kills/endless-host.ts', folder, document, String(first)];
  const host = spawn(process.execPath, given, { cwd: root, stdio: ['pipe', 'pipe', 'inherit'] });
  const ended = once(host, 'close');
  let output = '';
  host.stdout.setEncoding('utf8').on('data', (text: string) => (output += text));
  const untilSaid = async (word: string): Promise<void> => {
    while (!output.includes(word)) {
      const end = await Promise.race([once(host.stdout, 'data').then(() => null), ended]);
      if (end !== null) throw new Error(`The host ended with ${String(end[0])} before it said "${word}"`);
    }
  };
  await untilSaid('started\n');
  const kill = async (): Promise<void> => {
    host.kill('SIGKILL');
    await ended;
  };
  return {
    kill,
    /** Lets it save, and kills it so long after its first save; gives the last version that it said was saved. */
    async killAfter(ms: number): Promise<number> {
      host.stdin.write('save\n');
      await untilSaid('saved');
      await setTimeout(ms);
      await kill();
      return Number(/saved (\d+)\n(?:saved \d*)?$/.exec(output)?.[1] ?? first - 1);
    },
  };
}

/** What lies in the folders and belongs neither to the document, nor to kept work, nor to the run that goes on. */
async function litterIn(folder: string, document: string): Promise<string[]> {
  const data = join(folder, 'data');
  const litter = (await readdir(join(folder, 'home'))).filter((name) => join(folder, 'home', name) !== document);
  const notes = await readdir(join(data, 'running'));
  const owners = new Set(notes.map((name) => name.split('.')[0]));
  if (owners.size !== 1) litter.push(...notes.map((name) => `running/${name}`));
  const kept = await readdir(join(data, 'recovery')).catch((): string[] => []);
  litter.push(...kept.filter((name) => !name.endsWith('.backup')));
  // Of one work of one window, each run's is passed by the next one's.
  if (kept.length > 1) litter.push(...kept);
  litter.push(...(await readdir(data)).filter((name) => !['running', 'recovery', 'recent.json'].includes(name)));
  return litter;
}

function versionIn(text: string, when: string): number {
  try {
    return Number(projectFromText(text).name.replace('version ', ''));
  } catch (error) {
    throw new Error(`${when}: the document is not whole`, { cause: error });
  }
}
