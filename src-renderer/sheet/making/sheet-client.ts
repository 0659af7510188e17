/**
 * Has a sheet made by a worker, page by page: one sheet at a time, the latest
 * wins.
 *
 * A worker that is busy with another is ended: nothing that it says is wanted,
 * and it hears nothing before it is done. Where a worker cannot be had or fails,
 * the window makes the pages by itself, and lets others have a turn after each.
 */
import type { Project } from '@shared/project/index.ts';
import { drawnPages, type Drawn, type Wanted } from './drawn-pages.ts';

export interface Question {
  readonly id: number;
  readonly wanted: Wanted;
}

export interface Answer {
  readonly id: number;
  readonly drawn: Drawn;
}

/** What is needed of a `Worker`. */
export interface Helper {
  postMessage(question: Question): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Answer>) => unknown) | null;
  onerror: ((event: ErrorEvent) => unknown) | null;
}

interface Asked extends Question {
  readonly tell: (drawn: Drawn) => void;
  /** Pages that are still to come; null until the sheet is laid out. */
  left: number | null;
}

export class SheetClient {
  #helper: Helper | null = null;
  #asked: Asked | null = null;
  #count = 0;

  constructor(private readonly start: () => Helper) {}

  /** Calls `tell` with what is made, until all of it is there or another sheet is asked for. */
  make(wanted: Wanted, tell: (drawn: Drawn) => void): void {
    this.giveUp();
    const asked: Asked = {
      id: this.#count++,
      wanted: { ...wanted, project: lightened(wanted.project) },
      tell,
      left: null,
    };
    this.#asked = asked;
    try {
      this.#helper ??= this.#begin();
      this.#helper.postMessage({ id: asked.id, wanted: asked.wanted });
    } catch {
      this.#makeHere();
    }
  }

  /** Nothing more comes of the sheet that is being made. */
  giveUp(): void {
    if (!this.#asked) return;
    this.#asked = null;
    this.#end();
  }

  close(): void {
    this.giveUp();
    this.#end();
  }

  #end(): void {
    this.#helper?.terminate();
    this.#helper = null;
  }

  #begin(): Helper {
    const helper = this.start();
    helper.onmessage = ({ data }) => {
      if (data.id === this.#asked?.id) this.#tell(data.drawn);
    };
    helper.onerror = () => {
      if (this.#helper !== helper) return;
      this.#end();
      this.#makeHere();
    };
    return helper;
  }

  #makeHere(): void {
    const asked = this.#asked;
    if (!asked) return;
    const made = drawnPages(asked.wanted);
    const next = (): void => {
      if (this.#asked !== asked) return;
      const { value } = made.next();
      if (!value) return;
      this.#tell(value);
      setTimeout(next);
    };
    next();
  }

  #tell(drawn: Drawn): void {
    const asked = this.#asked;
    if (!asked) return;
    if (drawn.kind === 'problem') asked.left = 0;
    else if (drawn.kind === 'laid') asked.left = drawn.frames.length - 1;
    else if (asked.left !== null) asked.left--;
    if (asked.left === 0) this.#asked = null;
    asked.tell(drawn);
  }
}

/** Without the pictures to trace, which may be large and are on no sheet. */
function lightened(project: Project): Project {
  return { ...project, motifs: project.motifs.map((motif) => ({ ...motif, underlay: null })) };
}
