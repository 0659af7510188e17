/** `npm start`: opens the program in Electron if it can be had, else in a browser. */
import { join, resolve } from 'node:path';
import { problemOf } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import { ownTerminal } from '../browser-host/index.ts';
import { ownDataFolder, programFolder } from '../services/index.ts';
import { startArguments } from './arguments.ts';
import { chooseShell, type Surroundings } from './choose-shell.ts';
import { hasDisplay, sandboxFlags } from './display.ts';
import { electronBinary, electronPackage } from './electron-package.ts';
import { failureNotes } from './failure-note.ts';
import { FETCH_PATIENCE_MS, fetchElectron } from './fetch-electron.ts';
import { runBrowser } from './run-browser.ts';
import { runElectron } from './run-electron.ts';

const say = (line: string): void => console.log(line);

function surroundings(dataFolder: string): Surroundings {
  return {
    hasDisplay: hasDisplay(process.env, process.platform),
    electron: electronPackage(),
    binary: electronBinary,
    async fetch(electron) {
      say(terminalWords.launcher.fetching(electron.version));
      return fetchElectron(electron, {
        workFolder: join(dataFolder, 'fetching'),
        patienceMs: FETCH_PATIENCE_MS,
        lookEveryMs: 500,
        progress: (megabytes) => say(terminalWords.launcher.fetched(megabytes)),
      });
    },
    failure: failureNotes(dataFolder),
  };
}

async function start(given: readonly string[]): Promise<void> {
  const { shell, file, wantsHelp } = startArguments(given);
  if (wantsHelp) return say(terminalWords.launcher.usage);

  const dataFolder = ownDataFolder();
  const openAtStart = file === null ? null : resolve(file);
  const choice = await chooseShell(shell, surroundings(dataFolder));
  if (choice.shell === null) {
    console.error(terminalWords.launcher.noElectron(choice.why));
    process.exitCode = 1;
    return;
  }
  let why = choice.shell === 'browser' ? choice.why : null;
  if (choice.shell === 'electron') {
    const flags = sandboxFlags(process.platform, process.getuid?.() ?? null);
    const ended = await runElectron(choice.binary, [...flags, programFolder(), ...(openAtStart ? [openAtStart] : [])]);
    if (ended === null) return;
    if (shell === 'electron') throw new Error(ended);
    why = { kind: 'electron-ended', detail: ended };
  }
  if (why !== null) await runBrowser({ why, dataFolder, openAtStart, terminal: ownTerminal() });
}

start(process.argv.slice(2)).then(
  // Whatever still listens must not keep the process.
  () => process.exit(),
  (error: unknown) => {
    console.error(words.problems.sentence(problemOf(error)));
    process.exit(1);
  },
);
