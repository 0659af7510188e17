/**
 * The preview of the sheet: the pages that are there, and which still come.
 *
 * Until another sheet is laid out the one before stays, since most changes keep
 * most of it. Then its pages are blank but for those drawn, so that no page of
 * the one is seen among those of the other.
 */
import { createSubscriber } from 'svelte/reactivity';
import type { SheetOptions } from '@shared/output/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import type { Project, ProjectAt } from '@shared/project/index.ts';
import { WorkerClient, type Helper } from '../../worker/index.ts';
import { drawnPages, type Drawn, type PageFrame, type Wanted } from './drawn-pages.ts';

export interface PreviewPage extends PageFrame {
  /** The page as `<svg>` text; null until it is drawn. */
  readonly svg: string | null;
}

/** Waits longer than this are told. */
const LATE_MS = 500;

export class SheetPreview {
  #pages: readonly PreviewPage[] = [];
  #problem: Problem | null = null;
  #isMaking = false;
  #isLate = false;
  #pageInView = 0;
  #shown: { readonly project: ProjectAt; readonly options: SheetOptions } | null = null;
  #lateness: ReturnType<typeof setTimeout> | undefined;
  readonly #client: WorkerClient<Wanted, Drawn>;
  readonly #listeners = new Set<() => void>();
  readonly #follow: () => void;

  /** `start` makes a worker. */
  constructor(start: () => Helper<Wanted, Drawn>) {
    this.#client = new WorkerClient(start, drawnPages);
    this.#follow = createSubscriber((update) => {
      this.#listeners.add(update);
      return () => this.#listeners.delete(update);
    });
  }

  /** Empty while there is no sheet. */
  get pages(): readonly PreviewPage[] {
    this.#follow();
    return this.#pages;
  }

  /** Why there is no sheet; null while there is one, or one is being made. */
  get problem(): Problem | null {
    this.#follow();
    return this.#problem;
  }

  /** Pages are still to come, of the sheet that is shown or of another. */
  get isMaking(): boolean {
    this.#follow();
    return this.#isMaking;
  }

  /** It takes so long that it is to be told. */
  get isLate(): boolean {
    this.#follow();
    return this.#isLate;
  }

  /** The page that is looked at is the first to be drawn again. */
  lookAt(page: number): void {
    this.#pageInView = page;
  }

  /** Makes the sheet anew where it is another one. */
  show(project: ProjectAt, options: SheetOptions): void {
    if (this.#isShown(project, options)) return;
    this.#shown = { project, options };
    this.#isMaking = true;
    clearTimeout(this.#lateness);
    this.#lateness = setTimeout(() => this.#set(() => (this.#isLate = true)), LATE_MS);
    this.#set(() => (this.#isLate = false));
    const { whole, at } = project;
    const wanted = { project: lightened(whole), at, options, from: this.#pageInView };
    this.#client.ask(wanted, (drawn) => this.#set(() => this.#take(drawn)));
  }

  /** Nobody looks: gives up what is being made. */
  close(): void {
    this.#client.close();
    clearTimeout(this.#lateness);
    if (this.#isMaking) this.#shown = null;
  }

  #isShown(project: ProjectAt, { paper, date, unit, charts }: SheetOptions): boolean {
    const before = this.#shown;
    if (before?.project !== project) return false;
    const { options } = before;
    return options.paper === paper && options.date === date && options.unit === unit && options.charts === charts;
  }

  #take(drawn: Drawn): void {
    switch (drawn.kind) {
      case 'problem':
        this.#pages = [];
        this.#problem = drawn.problem;
        break;
      case 'laid':
        this.#problem = null;
        this.#pages = drawn.frames.map((frame, at) => ({
          ...frame,
          svg: at === drawn.page.index ? drawn.page.svg : null,
        }));
        break;
      case 'page': {
        const { index, svg } = drawn.page;
        this.#pages = this.#pages.map((page, at) => (at === index ? { ...page, svg } : page));
      }
    }
    this.#isMaking = this.#pages.some(({ svg }) => svg === null);
    if (!this.#isMaking) clearTimeout(this.#lateness);
  }

  #set(change: () => void): void {
    change();
    for (const listener of this.#listeners) listener();
  }
}

/** Without the pictures to trace, which may be large and are on no sheet. */
function lightened(project: Project): Project {
  return { ...project, motifs: project.motifs.map((motif) => ({ ...motif, underlay: null })) };
}
