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
import { LOOKED_AT, type ProjectAt, type Scope } from '@shared/project/index.ts';
import { WorkerClient, type DrawnPage, type DrawnSheet, type Helper, type PageFrame } from '../worker/index.ts';
import { sentProject } from '../worker/jobs/sent-project.ts';
import { sheetJob } from '../worker/jobs/sheet.ts';

export interface PreviewPage extends PageFrame {
  /** Null until it comes. */
  readonly drawn: Pick<DrawnPage, 'svg' | 'words'> | null;
}

/** Waits longer than this are told. */
const LATE_MS = 500;

export class SheetPreview {
  #pages: readonly PreviewPage[] = [];
  #problem: Problem | null = null;
  /** No part of the sheet is still to be laid out. */
  #isLaid = false;
  #isMaking = false;
  #isLate = false;
  #pageInView = 0;
  #shown: { readonly project: ProjectAt; readonly options: SheetOptions; readonly scope: Scope } | null = null;
  #lateness: ReturnType<typeof setTimeout> | undefined;
  readonly #client: WorkerClient<'sheet'>;
  readonly #listeners = new Set<() => void>();
  readonly #follow: () => void;

  /** `start` makes a worker, where it is not the program's own. */
  constructor(start?: () => Promise<Helper<'sheet'>>) {
    this.#client = new WorkerClient('sheet', sheetJob, start);
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

  /** Makes the sheet anew where it is another one: of the piece that is looked at, or as much as the scope says. */
  show(project: ProjectAt, options: SheetOptions, scope: Scope = LOOKED_AT): void {
    if (this.#isShown(project, options, scope)) return;
    this.#shown = { project, options, scope };
    this.#isMaking = true;
    clearTimeout(this.#lateness);
    this.#lateness = setTimeout(() => this.#set(() => (this.#isLate = true)), LATE_MS);
    this.#set(() => (this.#isLate = false));
    this.#client.ask(
      sentProject(project),
      { options, scope, from: this.#pageInView },
      {
        part: (drawn) => this.#set(() => this.#take(drawn)),
        answer: () => undefined,
        failed: (problem) => this.#set(() => this.#fail(problem)),
      },
    );
  }

  /** Nobody looks: gives up what is being made. */
  close(): void {
    this.#client.close();
    clearTimeout(this.#lateness);
    if (this.#isMaking) this.#shown = null;
  }

  #isShown(project: ProjectAt, { paper, date, unit, charts }: SheetOptions, { pieces, sizes }: Scope): boolean {
    const before = this.#shown;
    if (before?.project !== project) return false;
    const { options, scope } = before;
    if (scope.pieces !== pieces || scope.sizes !== sizes) return false;
    return options.paper === paper && options.date === date && options.unit === unit && options.charts === charts;
  }

  #fail(problem: Problem): void {
    this.#pages = [];
    this.#problem = problem;
    this.#rest();
  }

  #take(drawn: DrawnSheet): void {
    switch (drawn.kind) {
      case 'laid': {
        const { before, frames, page, isLast } = drawn;
        this.#problem = null;
        this.#isLaid = isLast;
        this.#pages = [
          ...this.#pages.slice(0, before),
          ...frames.map((frame, at) => ({ ...frame, drawn: before + at === page.index ? page : null })),
        ];
        break;
      }
      case 'page': {
        const { page } = drawn;
        this.#pages = this.#pages.map((shown, at) => (at === page.index ? { ...shown, drawn: page } : shown));
      }
    }
    if (this.#isLaid && this.#pages.every(({ drawn }) => drawn !== null)) this.#rest();
  }

  #rest(): void {
    this.#isMaking = false;
    clearTimeout(this.#lateness);
  }

  #set(change: () => void): void {
    change();
    for (const listener of this.#listeners) listener();
  }
}
