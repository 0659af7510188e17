/**
 * A disk that forgets what was not flushed.
 *
 * In memory, after what SQLite assumes of disks in its own crash tests ("How
 * SQLite Is Tested", "Atomic Commit in SQLite"; from memory): bytes that were written may be lost, wholly or in part, until the file is
 * flushed; names that were made, moved or removed may be lost until their
 * folder is; a rename happens or does not.
 */
import type { FileOperations, OpenedFile } from '../../src-main/services/index.ts';
import { platformError } from './failing-files.ts';

interface Node {
  bytes: Uint8Array;
  flushed: Uint8Array;
  mode: number;
}

/** How much of what was never flushed stays after a power cut. */
export const LUCK = ['nothing stays', 'bytes stay', 'names stay', 'names and half the bytes stay'] as const;
export type Luck = (typeof LUCK)[number];

export class ForgetfulDisk implements FileOperations {
  #names = new Map<string, Node>();
  #flushedNames = new Map<string, Node>();

  /** A file that has been on the disk for long. */
  put(path: string, bytes: Uint8Array): void {
    const node = { bytes, flushed: bytes, mode: 0o644 };
    this.#names.set(path, node);
    this.#flushedNames.set(path, node);
  }

  /** What a reader finds after the power was cut just now. */
  afterPowerCut(luck: Luck): Map<string, Uint8Array> {
    const namesStay = luck === 'names stay' || luck === 'names and half the bytes stay';
    const names = namesStay ? this.#names : this.#flushedNames;
    return new Map([...names].map(([path, node]) => [path, luckyBytes(luck, node)]));
  }

  async open(path: string, how: 'read' | 'change' | 'new', mode = 0o666): Promise<OpenedFile> {
    const there = this.#names.get(path);
    if (how === 'new' && there) throw platformError('EEXIST', 'open');
    if (how !== 'new' && !there) throw platformError('ENOENT', 'open');
    const node = there ?? { bytes: new Uint8Array(), flushed: new Uint8Array(), mode };
    this.#names.set(path, node);
    let at = 0;
    return {
      write: async (bytes) => {
        node.bytes = new Uint8Array([...node.bytes, ...bytes]);
        return bytes.length;
      },
      read: async (into) => {
        const part = node.bytes.subarray(at, at + into.length);
        into.set(part);
        at += part.length;
        return part.length;
      },
      setMode: async (given) => void (node.mode = given),
      flush: async () => void (node.flushed = node.bytes),
      close: async () => undefined,
    };
  }

  async rename(from: string, to: string): Promise<void> {
    const node = this.#found(from);
    this.#names.delete(from);
    this.#names.set(to, node);
  }

  async unlink(path: string): Promise<void> {
    this.#found(path);
    this.#names.delete(path);
  }

  async flushFolder(): Promise<void> {
    this.#flushedNames = new Map(this.#names);
  }

  async state(path: string): Promise<{ kind: 'file'; bytes: number; mode: number }> {
    const { bytes, mode } = this.#found(path);
    return { kind: 'file', bytes: bytes.length, mode };
  }

  async readLink(path: string): Promise<string> {
    this.#found(path);
    throw platformError('EINVAL', 'readlink');
  }

  async names(): Promise<readonly string[]> {
    return [...this.#names.keys()];
  }

  async makeFolder(): Promise<void> {}

  #found(path: string): Node {
    const node = this.#names.get(path);
    if (!node) throw platformError('ENOENT', 'find');
    return node;
  }
}

function luckyBytes(luck: Luck, { bytes, flushed }: Node): Uint8Array {
  switch (luck) {
    case 'bytes stay':
      return bytes;
    case 'names and half the bytes stay':
      return flushed === bytes ? bytes : bytes.subarray(0, bytes.length >> 1);
    case 'nothing stays':
    case 'names stay':
      return flushed;
  }
}
