/**
 * A disk that forgets what was not flushed.
 *
 * In memory, after what SQLite assumes of disks in its own crash tests ("How
 * SQLite Is Tested", "Atomic Commit in SQLite"; from memory): bytes that were written may be lost, wholly or in part, until the file is
 * flushed; names that were made, moved or removed may be lost until their
 * folder is; a rename happens or does not.
 */
import { dirname } from 'node:path/posix';
import type { FileOperations, OpenedFile } from '../../src-main/services/index.ts';
import { platformError } from './failing-files.ts';

interface Node {
  readonly kind: 'file' | 'folder';
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
    const node: Node = { kind: 'file', bytes, flushed: bytes, mode: 0o644 };
    this.#names.set(path, node);
    this.#flushedNames.set(path, node);
  }

  /** What a reader finds after the power was cut just now. */
  afterPowerCut(luck: Luck): Map<string, Uint8Array> {
    const files = [...this.#namesLeft(luck)].filter(([, { kind }]) => kind === 'file');
    return new Map(files.map(([path, node]) => [path, luckyBytes(luck, node)]));
  }

  /** The disk as it is found when the machine has started again. */
  startedAgain(luck: Luck): ForgetfulDisk {
    const disk = new ForgetfulDisk();
    for (const [path, node] of this.#namesLeft(luck)) {
      const bytes = luckyBytes(luck, node);
      disk.#names.set(path, { ...node, bytes, flushed: bytes });
    }
    disk.#flushedNames = new Map(disk.#names);
    return disk;
  }

  #namesLeft(luck: Luck): Map<string, Node> {
    const namesStay = luck === 'names stay' || luck === 'names and half the bytes stay';
    return namesStay ? this.#names : this.#flushedNames;
  }

  async open(path: string, how: 'read' | 'change' | 'new', mode = 0o666): Promise<OpenedFile> {
    const there = this.#names.get(path);
    if (how === 'new' && there) throw platformError('EEXIST', 'open');
    if (how !== 'new' && !there) throw platformError('ENOENT', 'open');
    const node: Node = there ?? { kind: 'file', bytes: new Uint8Array(), flushed: new Uint8Array(), mode };
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
    const inside = this.#inside(from);
    if (node.kind === 'folder' && this.#inside(to).length > 0) throw platformError('ENOTEMPTY', 'rename');
    this.#names.delete(from);
    this.#names.set(to, node);
    for (const path of inside) {
      this.#names.set(to + path.slice(from.length), this.#found(path));
      this.#names.delete(path);
    }
  }

  async link(from: string, to: string): Promise<void> {
    if (this.#names.has(to)) throw platformError('EEXIST', 'link');
    this.#names.set(to, this.#found(from));
  }

  async unlink(path: string): Promise<void> {
    if (this.#found(path).kind === 'folder') throw platformError('EISDIR', 'unlink');
    this.#names.delete(path);
  }

  async removeFolder(folder: string): Promise<void> {
    if (this.#found(folder).kind === 'file') throw platformError('ENOTDIR', 'rmdir');
    if (this.#inside(folder).length > 0) throw platformError('ENOTEMPTY', 'rmdir');
    this.#names.delete(folder);
  }

  async flushFolder(): Promise<void> {
    this.#flushedNames = new Map(this.#names);
  }

  async state(path: string): Promise<{ kind: 'file' | 'folder'; bytes: number; mode: number }> {
    const { kind, bytes, mode } = this.#found(path);
    return { kind, bytes: bytes.length, mode };
  }

  async readLink(path: string): Promise<string> {
    this.#found(path);
    throw platformError('EINVAL', 'readlink');
  }

  async realPath(path: string): Promise<string> {
    this.#found(path);
    return path;
  }

  /** The folder of a document need not have been made. */
  async names(folder: string): Promise<readonly string[]> {
    const inside = this.#inside(folder);
    if (inside.length === 0) this.#found(folder);
    return inside.map((path) => path.slice(folder.length + 1)).filter((name) => !name.includes('/'));
  }

  async makeFolder(folder: string, mode = 0o700): Promise<void> {
    const empty = new Uint8Array();
    for (let path = folder; path.includes('.walewright-'); path = dirname(path)) {
      if (!this.#names.has(path)) this.#names.set(path, { kind: 'folder', bytes: empty, flushed: empty, mode });
    }
  }

  #inside(folder: string): string[] {
    return [...this.#names.keys()].filter((path) => path.startsWith(`${folder}/`));
  }

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
