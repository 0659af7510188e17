/** A window that keeps its work aside, and the disk behind it: a host that takes its time, or is not there. */
import { afterEach, beforeEach, vi } from 'vitest';
import type { Method, Params } from '@shared/host/index.ts';
import { patchOfColour } from '@shared/grid/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import {
  applyEdits,
  changeOf,
  editsFromText,
  paintCells,
  projectFromText,
  projectToText,
  sampleProject,
  type Project,
} from '@shared/project/index.ts';
import { hostPlace, Keeper, type WorkToKeep } from '../../../src-renderer/recovery/index.ts';
import { Session } from '../../../src-renderer/session/session.ts';

export const FILE = { path: '/home/knitter/sleeve.walewright', name: 'sleeve.walewright', stamp: 'first' };
const unreachable: Outcome<never> = { ok: false, problem: { code: 'host-unreachable', where: null, facts: {} } };

let ids = 0;

export class Desk {
  session = new Session(sampleProject(), true);
  /** What reached the disk, by the work's id, and when (ms on the test's clock). */
  readonly disk = new Map<string, { readonly work: WorkToKeep; readonly at: number }>();
  /** What the host was asked, of the methods that keep. */
  readonly asked: ('keep' | 'append')[] = [];
  isDown = false;
  /** How long the host takes to answer, ms. */
  answersAfter = 20;
  /** The most calls that were on their way at once. */
  mostGoing = 0;
  #going = 0;

  start(taken: { work: string; edition: number } | null = null): Keeper {
    const call = async (method: Method, params: unknown): Promise<Outcome<never>> => {
      this.mostGoing = Math.max(this.mostGoing, ++this.#going);
      await new Promise((resolve) => setTimeout(resolve, this.answersAfter));
      this.#going--;
      if (this.isDown) return unreachable;
      const work = params as WorkToKeep;
      if (method === 'recovery.append') {
        this.asked.push('append');
        return { ok: true, value: { isKept: this.#append(params as Params<'recovery.append'>) } as never };
      }
      if (method === 'recovery.keep') this.asked.push('keep');
      if (method === 'recovery.keep') this.disk.set(work.work, { work, at: Date.now() });
      if (method === 'recovery.drop') this.disk.delete(work.work);
      return { ok: true, value: {} as never };
    };
    return new Keeper({
      session: this.session,
      place: hostPlace({ call: call as never }),
      identity: { window: 'window-1', browser: 'browser-1' },
      taken,
      newId: () => `work-${ids++}`,
    });
  }

  /** As a host does: what changed goes behind the edition before, and nowhere else. */
  #append({ edits, ...facts }: Params<'recovery.append'>): boolean {
    const before = this.disk.get(facts.work)?.work;
    if (before?.edition !== facts.edition - 1) return false;
    const after = applyEdits(projectFromText(before.text), editsFromText(edits) ?? []);
    const work = { ...before, ...facts, name: after.name, text: projectToText(after) };
    this.disk.set(facts.work, { work, at: Date.now() });
    return true;
  }

  /** The work that was kept last. */
  kept(): WorkToKeep | undefined {
    return [...this.disk.values()].at(-1)?.work;
  }

  onDisk(): Project | null {
    const work = this.kept();
    return work ? projectFromText(work.text) : null;
  }

  /** Gives the other of two yarns to one cell. */
  paint(cell: number, gesture: string | null = null): void {
    const { motif } = this.session;
    const patch = patchOfColour(motif.grid, [cell], motif.grid.cells[cell] === 0 ? 1 : 0);
    this.session.change(changeOf('draw', paintCells(motif.id, patch)), gesture);
  }
}

/** A desk in each test of a file, on a clock that goes as it is told; `put` is handed it. */
export function deskInEachTest(put: (desk: Desk) => void): void {
  beforeEach(() => {
    vi.useFakeTimers({ now: new Date('2026-01-02T03:04:05.678Z') });
    put(new Desk());
  });
  afterEach(() => vi.useRealTimers());
}

export const cellsOf = (project: Project | null): string => (project?.motifs[0]?.grid.cells ?? []).join('');
