/** The Electron shell: one window around the page, with the platform's menu and dialogs. */
import { join } from 'node:path';
import { app, dialog, session } from 'electron';
import { START_WINDOW } from '@shared/host/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { createServices, ownDataFolder, thisMachine, type Shell } from '../services/index.ts';
import { answerCalls } from './calls.ts';
import { platformDialogs } from './dialogs.ts';
import { lockDownPages, lockDownSession } from './lock-down.ts';
import { setMenu } from './menu.ts';
import { namedFile } from './named-file.ts';
import { declarePageProtocol, servePage } from './page-protocol.ts';
import { platformPrinting } from './printing.ts';
import { openWindow, type MainWindow } from './window.ts';

interface StartedAgain {
  readonly file: string | null;
}

let window: MainWindow | null = null;
let openAtStart = namedFile(process.argv, app.isPackaged, process.cwd());
/** Files that the person named at a start, or gave to the program since. */
const named = new Set(openAtStart === null ? [] : [openAtStart]);

/** Opens the file in the window that is there, or in the one that will be. */
function openFile(path: string | null): void {
  if (path !== null) named.add(path);
  if (window === null) openAtStart = path ?? openAtStart;
  else {
    window.show();
    if (path !== null) window.tell({ kind: 'open', path });
  }
}

async function start(): Promise<void> {
  const browser = () => window?.browser ?? null;
  const shell: Shell = {
    kind: 'electron',
    get openAtStart() {
      return openAtStart;
    },
    isNamed: (path) => named.has(path),
    dialogs: platformDialogs(browser),
    print: platformPrinting(browser),
    setWindowState: (state) => window?.setState(state),
    noteDocument: (path) => app.addRecentDocument(path),
    noteProblem: ({ code }) => void process.stderr.write(`walewright: ${code}\n`),
  };
  const { environment, leave } = await thisMachine(shell);
  await app.whenReady();
  lockDownSession(session.defaultSession);
  await servePage(session.defaultSession);
  const services = createServices(environment);
  answerCalls(services, browser);
  setMenu((command) => window?.tell({ kind: 'command', command }));
  window = openWindow((await services['settings.read']({})).window ?? START_WINDOW);
  window.browser.on('closed', () => (window = null));
  app.on('window-all-closed', () => app.quit());
  // Not waited for: a presence that is left behind answers nobody, and so counts as ended.
  app.on('will-quit', () => void leave());
}

app.setPath('userData', join(ownDataFolder(), 'electron'));
app.enableSandbox();
declarePageProtocol();
lockDownPages();

// A second start hands its file to the first and ends.
if (app.requestSingleInstanceLock({ file: openAtStart } satisfies StartedAgain)) {
  app.on('second-instance', (_event, _given, _folder, again) => openFile((again as StartedAgain).file));
  // macOS names files by an event, before or after the start.
  app.on('open-file', (event, path) => {
    event.preventDefault();
    openFile(path);
  });
  start().catch((error: unknown) => {
    dialog.showErrorBox(words.shell.program, words.problems.sentence(problemOf(error)));
    app.exit(1);
  });
} else {
  app.quit();
}
