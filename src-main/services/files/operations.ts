/**
 * The few things the services ask of a file system.
 *
 * They are injected, so that tests can fail at the first, the second, … of
 * them and show that a document is whole after each.
 */

export interface FileState {
  readonly kind: 'file' | 'folder' | 'other';
  readonly bytes: number;
  /** Permission bits, such as 0o644. */
  readonly mode: number;
}

export interface OpenedFile {
  /** Appends from `bytes` and says how many were taken, which may be fewer than given. */
  write(bytes: Uint8Array): Promise<number>;
  /** Fills `into` from where the last read ended and says how many bytes came; 0 at the end. */
  read(into: Uint8Array): Promise<number>;
  setMode(mode: number): Promise<void>;
  /** Returns when the bytes are on the disk, not merely on their way. */
  flush(): Promise<void>;
  close(): Promise<void>;
}

/**
 * `new` fails with EEXIST if anything is there; `change` opens what is there for reading and writing, `append` to
 * write behind what it holds, and both fail with ENOENT if nothing is.
 */
export type OpenHow = 'read' | 'change' | 'append' | 'new';

/** Every operation rejects with an error that carries the platform's `code`, such as ENOENT. */
export interface FileOperations {
  /** `mode` is what a new file is made with, less the user's mask. */
  open(path: string, how: OpenHow, mode?: number): Promise<OpenedFile>;
  /** Of files and folders; what is at `to` is replaced, but no folder that holds something. */
  rename(from: string, to: string): Promise<void>;
  /** Gives a file a second name; EEXIST if anything has that name. Some file systems cannot. */
  link(from: string, to: string): Promise<void>;
  unlink(path: string): Promise<void>;
  /** ENOTEMPTY if it holds something. */
  removeFolder(folder: string): Promise<void>;
  /** Makes renames and new names in a folder outlast a power cut, where the platform can. */
  flushFolder(folder: string): Promise<void>;
  /** Follows links. */
  state(path: string): Promise<FileState>;
  /** Where a symbolic link points, as written in it; EINVAL for anything else. */
  readLink(path: string): Promise<string>;
  /** The path without any links in it. */
  realPath(path: string): Promise<string>;
  names(folder: string): Promise<readonly string[]>;
  /** Makes the folder and those above it, for this user alone unless `mode` says more; nothing if it is there. */
  makeFolder(folder: string, mode?: number): Promise<void>;
}

/** The platform's code of a failed operation, such as ENOSPC, or null. */
export function failureCode(thrown: unknown): string | null {
  const code = thrown instanceof Error ? (thrown as NodeJS.ErrnoException).code : undefined;
  return typeof code === 'string' ? code : null;
}
