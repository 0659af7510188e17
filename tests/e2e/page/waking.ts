/** Parts of the window side by side, with a record of what each of them reads of its session after it was mounted. */
import { createRawSnippet, flushSync, mount } from 'svelte';
import type { Host } from '@shared/host/index.ts';
import { changeOf, sampleProject, setProject } from '@shared/project/index.ts';
import { commandsOf } from '../../../src-renderer/commands/command.ts';
import type { Files } from '../../../src-renderer/files/files.ts';
import { strokeChange } from '../../../src-renderer/motif/editing/strokes.ts';
import { duplicateMotif } from '../../../src-renderer/motif/editing/motifs.ts';
import Motifs from '../../../src-renderer/motif/panel/Motifs.svelte';
import YarnWarnings from '../../../src-renderer/motif/panel/YarnWarnings.svelte';
import Yarns from '../../../src-renderer/motif/strip/Yarns.svelte';
import { MotifViewModel } from '../../../src-renderer/motif/view-model.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import type { Bench } from '../../../src-renderer/session/view.ts';
import { liveRune } from '../../../src-renderer/ui/live-rune.svelte.ts';
import { windowActions } from '../../../src-renderer/window/actions.ts';
import ProjectName from '../../../src-renderer/window/ProjectName.svelte';
import StatusLine from '../../../src-renderer/window/StatusLine.svelte';
import TopBar from '../../../src-renderer/window/TopBar.svelte';

/** What the test does in the page. Each gives what woke: `pairs.motif` where what compares yarns read the motif again. */
export interface WakingPage {
  point(): readonly string[];
  announce(): readonly string[];
  paint(): readonly string[];
  rename(): readonly string[];
  recolour(): readonly string[];
  zoom(): readonly string[];
}

const session = new Session(sampleProject(), true, liveRune);
// Three motifs, so that it is seen which of them wake.
for (const id of ['second', 'third']) session.change(duplicateMotif(session.project, session.motifId, id, id).change);
const viewModel = new MotifViewModel(session);
let read: string[] = [];

/** The same, with a record of what is read of it, under the name of who reads. */
function watched<T extends object>(by: string, of: T): T {
  return new Proxy(of, {
    get(target, key) {
      read.push(`${by}.${String(key)}`);
      const value: unknown = Reflect.get(target, key, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
function place(): HTMLElement {
  const app = document.getElementById('app');
  if (!app) throw new Error('The page has no #app');
  return app.appendChild(document.createElement('div'));
}

const commands = commandsOf(
  windowActions(session, {} as Files, {
    showCommands: () => undefined,
    showColourways: () => undefined,
    takeTour: () => undefined,
    print: async () => undefined,
    nameProject: () => undefined,
    keepSettings: () => undefined,
  }),
);
const nothing = createRawSnippet(() => ({ render: () => '<p></p>' }));
// As the window and the bench give them on: each is read where it is shown.
const ofBar = watched('bar', session);
mount(TopBar, {
  target: place(),
  props: {
    get file() {
      return ofBar.file;
    },
    get isUnsaved() {
      return ofBar.isUnsaved || ofBar.inHand !== null;
    },
    get bench() {
      return ofBar.view.bench;
    },
    get undoName() {
      return ofBar.undoName;
    },
    get redoName() {
      return ofBar.redoName;
    },
    commands,
    files: {} as Files,
    host: {} as Host,
    onbench: (bench: Bench) => session.look({ bench }),
    name: nothing,
  },
});
mount(ProjectName, {
  target: place(),
  props: {
    get name() {
      return ofBar.projectName;
    },
    isNaming: false,
    tooltip: '',
    onname: () => undefined,
    ongiveup: () => undefined,
  },
});
const ofYarns = watched('yarns', session);
const pen = watched('yarns', viewModel);
mount(Yarns, {
  target: place(),
  props: {
    get yarns() {
      return ofYarns.yarns;
    },
    get mainYarn() {
      return ofYarns.mainYarn;
    },
    get colour() {
      return pen.colour;
    },
    get commands() {
      return pen.commands;
    },
    oncolour: (colour: number) => session.look({ colour }),
    editor: nothing,
  },
});
const ofPairs = watched('pairs', session);
mount(YarnWarnings, {
  target: place(),
  props: {
    get yarns() {
      return ofPairs.yarns;
    },
    get mainYarn() {
      return ofPairs.mainYarn;
    },
    get grid() {
      return ofPairs.motif.grid;
    },
  },
});
const ofMotifs = watched('motifs', session);
mount(Motifs, {
  target: place(),
  props: {
    get motifs() {
      return ofMotifs.motifs;
    },
    get shown() {
      return ofMotifs.motifId;
    },
    get yarns() {
      return ofMotifs.yarns;
    },
    get gauge() {
      return ofMotifs.piece.gauge;
    },
    commands: viewModel.commands,
    onshow: (motif: string) => session.look({ motif }),
  },
});
const line = watched('line', session);
mount(StatusLine, {
  target: place(),
  props: {
    get pointer() {
      return line.pointer;
    },
    get cursor() {
      return line.cursor;
    },
    get announcement() {
      return line.announcement;
    },
    get isPast() {
      return line.isAnnouncementPast;
    },
  },
});
flushSync();

/** What is read again because of what `work` does. */
function wokenBy(work: () => void): readonly string[] {
  flushSync();
  read = [];
  work();
  flushSync();
  return [...new Set(read)].sort();
}

let times = 0;
const page: WakingPage = {
  point: () => wokenBy(() => session.point(`Row 1, stitch ${++times}`)),
  announce: () => wokenBy(() => session.announce(`Said ${++times} times`)),
  paint: () =>
    wokenBy(() => {
      // Of another yarn than it has, whichever that is.
      const [first] = session.motif.grid.cells;
      const change = strokeChange(session.motif, 'draw', first === 1 ? 0 : 1, [{ column: 0, row: 0 }]);
      if (!change) throw new Error('Nothing was painted');
      session.change(change);
    }),
  rename: () => wokenBy(() => session.change(changeOf('rename-project', setProject({ name: `Sleeve ${++times}` })))),
  recolour: () =>
    wokenBy(() => {
      const yarns = session.yarns.map((yarn, index) => (index === 1 ? { ...yarn, name: `blue ${++times}` } : yarn));
      session.change(changeOf('yarns', setProject({ yarns })));
    }),
  zoom: () => wokenBy(() => viewModel.look({ showsNeighbours: !viewModel.state.showsNeighbours })),
};
Object.assign(window, { waking: page });
