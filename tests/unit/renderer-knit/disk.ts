/** Hosts that keep journals in memory. */
import type { Host, Result } from '@shared/host/index.ts';
import { beginningLine, entryLine, type Entry, type PieceKey } from '@shared/journal/index.ts';
import { problemError } from '@shared/problem/index.ts';

/** A host with one journal in memory; `fails` stands for a full disk. */
export class Disk {
  begun: { of: PieceKey; digest: string; order: string } | null = null;
  entries: Entry[] = [];
  fails = false;
  /** What is read in place of what was written. */
  spoilt: string | null = null;
  readonly host = { call: (method: string, params: never) => Promise.resolve(this.#answer(method, params)) } as Host;

  /** The pieces that were asked for, in their order. */
  readonly asked: PieceKey[] = [];

  #answer(method: string, params: never): unknown {
    if ('of' in (params as object)) this.asked.push((params as { of: PieceKey }).of);
    if (this.fails) return { ok: false, problem: problemError('host-unreachable', {}).problem };
    return { ok: true, value: this.#value(method, params) };
  }
  #value(
    method: string,
    params: { begun: never; isAnew: boolean; after: number; events: readonly Pick<Entry, 'id' | 'event'>[] },
  ): unknown {
    switch (method) {
      case 'knitting.read':
        return this.begun && { text: this.spoilt ?? this.text() };
      case 'knitting.begin': {
        const isNew = this.begun === null || params.isAnew;
        if (isNew) [this.begun, this.entries] = [params.begun, []];
        return { text: this.text(), isNew };
      }
      case 'knitting.since':
        return { entries: this.entries.slice(params.after) };
      case 'knitting.append': {
        const isKept = this.entries.length === params.after;
        if (isKept) this.write(params.events);
        return { isKept, entries: this.entries.slice(params.after) };
      }
      default:
        throw new Error(method);
    }
  }
  write(events: readonly Pick<Entry, 'id' | 'event'>[]): void {
    for (const { id, event } of events)
      this.entries.push({ number: this.entries.length + 1, id, at: '2026-11-27T10:00:00.000Z', event });
  }
  text(): string {
    if (!this.begun) throw new Error('Nothing is begun');
    let { line, check } = beginningLine(this.begun);
    let text = line;
    for (const entry of this.entries) {
      ({ line, check } = entryLine(entry, check));
      text += line;
    }
    return text;
  }
}

/** A host with a journal for each piece. */
export class Disks {
  readonly #disks = new Map<string, Disk>();
  /** The methods that were called, in their order. */
  readonly asked: string[] = [];
  /** Whoever asks by this method waits for it. */
  readonly held = new Map<string, Promise<void>>();
  fails = false;
  /** What is told of all pieces on the needles. */
  listed: Result<'knitting.list'> = [];
  readonly host = { call: (method: string, params: never) => this.#answer(method, params) } as Host;

  of({ project, piece, size, copy }: PieceKey): Disk {
    const key = JSON.stringify([project.path ?? project.name, piece.id, size.id, copy]);
    const disk = this.#disks.get(key) ?? new Disk();
    this.#disks.set(key, disk);
    return disk;
  }

  async #answer(
    method: string,
    params: {
      readonly of?: PieceKey;
      readonly begun?: { readonly of: PieceKey };
      readonly from?: PieceKey['project'];
      readonly to?: PieceKey['project'];
    },
  ): Promise<unknown> {
    const { from, to } = params;
    this.asked.push(from && to ? `${method} ${nameOf(from)} → ${nameOf(to)}` : method);
    await this.held.get(method);
    const of = params.of ?? params.begun?.of;
    if (of) {
      const disk = this.of(of);
      disk.fails = this.fails;
      return disk.host.call(method as 'knitting.read', params as never);
    }
    if (this.fails) return { ok: false, problem: problemError('host-unreachable', {}).problem };
    if (from && to) this.#move(nameOf(from), nameOf(to));
    return { ok: true, value: method === 'knitting.list' ? this.listed : {} };
  }

  #move(from: string, to: string): void {
    for (const [key, disk] of this.#disks) {
      const [project, ...piece] = JSON.parse(key) as [string, ...unknown[]];
      if (project !== from) continue;
      this.#disks.delete(key);
      this.#disks.set(JSON.stringify([to, ...piece]), disk);
    }
  }
}

function nameOf({ name, path }: PieceKey['project']): string {
  return path ?? name;
}
