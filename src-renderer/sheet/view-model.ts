/** The view model of the Sheet bench, what it shows besides the project: how pages are shown, and what was written last. */
import {
  exportKinds,
  type CommandOf,
  type ExportKind,
  type Host,
  type Params,
  type Result,
} from '@shared/host/index.ts';
import type { SheetOptions } from '@shared/output/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import { projectToText } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { actionsFor, commandsOf, unless, type ActionsOf, type Commands } from '../commands/command.ts';
import type { Asking } from '../files/files.ts';
import { newId } from '../session/new-id.ts';
import type { Session } from '../session/session.ts';
import { liveFields, type LiveFields } from '../ui/live.ts';
import { PanelMemory } from '../ui/panel-memory.ts';
import type { SheetPreview } from './preview.ts';
import { Today } from './today.ts';

export type Written = Extract<Result<'exports.write'>, { kind: 'written' }>['files'][number];

/** How the last request to write files stands. */
export type Writing =
  | { readonly kind: 'none' }
  /** `far`: how many files of how many are made, once that is known. */
  | { readonly kind: 'going-on'; readonly far: { readonly made: number; readonly of: number } | null }
  | { readonly kind: 'done'; readonly folder: string; readonly files: readonly Written[] }
  | { readonly kind: 'failed'; readonly problem: Problem };

/** A page as wide as the window, or small enough to be seen whole. */
export type Fit = 'width' | 'page';

/** Long enough that a host which is quick is never asked how far it is. */
const ASK_EVERY_MS = 400;

export class SheetViewModel {
  readonly commands: Commands<CommandOf<'exports'>>;
  /** The date on what is shown, printed and written. */
  readonly today = new Today();
  /** The pages, which stay while another bench is up; null before the bench was seen, which brings what makes them. */
  preview: SheetPreview | null = null;
  #writing: Writing = { kind: 'none' };
  /** The call of the host that is going on. */
  #run: string | null = null;
  #isStopping = false;
  readonly #shown: LiveFields<{ readonly writing: Writing; readonly fit: Fit }>;
  readonly panel: PanelMemory;

  constructor(
    private readonly session: Session,
    private readonly host: Host,
    private readonly asking: Asking,
  ) {
    this.panel = new PanelMemory(session.live);
    this.#shown = liveFields({ writing: this.#writing, fit: 'width' }, session.live);
    let project = session.current;
    session.subscribe(() => {
      // What was written no longer stands for what is on the table.
      if (session.current !== project && this.#writing.kind !== 'going-on') this.#set({ kind: 'none' });
      project = session.current;
    });
    const whyNot = unless(() => this.writing.kind !== 'going-on', words.whyNot.exporting);
    const actions: ActionsOf<'exports'> = {
      ...actionsFor(
        exportKinds,
        (kind) => `write-${kind}` as const,
        (kind) => ({ whyNot, run: () => this.write([kind]) }),
      ),
      'write-all': { whyNot, run: () => this.write(exportKinds) },
    };
    this.commands = commandsOf(actions);
  }

  /** How the sheet is laid out that is shown. */
  get options(): SheetOptions {
    const { paper, lengthUnit: unit, charts } = this.session.view;
    return { paper, unit, charts, date: this.today.day };
  }

  get writing(): Writing {
    return this.#shown.now.writing;
  }

  get fit(): Fit {
    return this.#shown.now.fit;
  }

  set fit(fit: Fit) {
    this.#shown.set({ fit });
  }

  /** Asks for a folder, and before files there are replaced, and writes. Giving up changes nothing. */
  async write(kinds: readonly ExportKind[]): Promise<void> {
    if (this.#writing.kind === 'going-on') return;
    const { current: project } = this.session;
    const { paper, lengthUnit, charts, scope } = this.session.view;
    const folder = await this.asking.folder();
    if (folder === null) return;
    const text = projectToText(project.whole);
    const date = this.today.day;
    let there: Params<'exports.write'>['there'] = { kind: 'ask' };
    for (;;) {
      const run = newId();
      this.#set({ kind: 'going-on', far: null });
      const asked: Params<'exports.write'> = {
        project: text,
        at: project.at,
        scope,
        run,
        folder,
        kinds: [...kinds],
        paper,
        date,
        lengthUnit,
        charts,
        there,
      };
      const stopFollowing = this.#followRun(run);
      const written = await this.host.call('exports.write', asked);
      stopFollowing();
      if (!written.ok) return this.#set({ kind: 'failed', problem: written.problem });
      if (written.value.kind === 'written') return this.#set({ ...written.value, kind: 'done' });
      this.#set({ kind: 'none' });
      if (written.value.kind === 'stopped') return this.session.announce(words.sheetBench.stopped);
      const seen = written.value.there;
      const names = seen.map(({ name }) => name);
      const said = await this.asking.askAboutFiles(written.value.folder, names);
      if (said === null) return;
      there = said === 'replace' ? { kind: 'replace', seen } : { kind: 'number' };
    }
  }

  /** Gives up what is being made, of which nothing is written yet. */
  stop(): void {
    if (this.#run === null) return;
    this.#isStopping = true;
    void this.host.call('exports.stop', { run: this.#run });
  }

  /** Asks now and then how far a call of the host is; returns a function that stops it. */
  #followRun(run: string): () => void {
    this.#run = run;
    this.#isStopping = false;
    const timer = setInterval(() => {
      // It may have come to the host before the call that it stops.
      if (this.#isStopping) this.stop();
      void this.host.call('exports.howFar', { run }).then((answer) => {
        if (this.#run === run && answer.ok && answer.value) this.#set({ kind: 'going-on', far: answer.value });
      });
    }, ASK_EVERY_MS);
    return () => {
      clearInterval(timer);
      this.#run = null;
    };
  }

  #set(writing: Writing): void {
    this.#writing = writing;
    this.#shown.set({ writing });
  }
}
