/** The bar at the top of the window alone, with a session that a test can give steps of any name. */
import { createRawSnippet, flushSync, mount } from 'svelte';
import type { Host } from '@shared/host/index.ts';
import { changeOf, sampleProject, setProject, type ChangeName } from '@shared/project/index.ts';
import { commandsOf } from '../../../src-renderer/commands/command.ts';
import { windowActions } from '../../../src-renderer/window/actions.ts';
import type { Files } from '../../../src-renderer/files/files.ts';
import { liveRune } from '../../../src-renderer/ui/live-rune.svelte.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import TopBar from '../../../src-renderer/window/TopBar.svelte';

/** What the test does in the page. */
export interface TopBarPage {
  /** Makes a step of that name; with `undone` it is taken back, so that it can be done again. */
  step(name: ChangeName, undone: boolean): void;
}

const session = new Session(sampleProject(), true, liveRune);
const target = document.getElementById('app');
if (!target) throw new Error('The page has no #app');
const files = {} as Files;
const commands = commandsOf(
  windowActions(session, files, {
    showCommands: () => undefined,
    showColourways: () => undefined,
    takeTour: () => undefined,
    print: async () => undefined,
    nameProject: () => undefined,
    keepSettings: () => undefined,
  }),
);
mount(TopBar, {
  target,
  props: {
    get file() {
      return session.file;
    },
    get isUnsaved() {
      return session.isUnsaved;
    },
    get bench() {
      return session.view.bench;
    },
    get undoName() {
      return session.undoName;
    },
    get redoName() {
      return session.redoName;
    },
    commands,
    files,
    host: {} as Host,
    onbench: () => undefined,
    name: createRawSnippet(() => ({ render: () => `<h1>${session.projectName}</h1>` })),
  },
});

let steps = 0;
const page: TopBarPage = {
  step(name, undone) {
    session.change(changeOf(name, setProject({ name: `after ${++steps}` })));
    if (undone) session.undo();
    // The page shows it before the test looks.
    flushSync();
  },
};
Object.assign(window, { topBar: page });
