/** File operations that fail when they are told to. */
import type { FileOperations, OpenedFile } from '../../src-main/services/index.ts';

/** Stands for the end of the process: nothing that comes after it is carried out. */
export class Crash extends Error {}

export type Fault =
  /** The operation is not done and answers with the platform's code. */
  | { readonly kind: 'error'; readonly code: string }
  /** The operation is not done, and nothing after it either. */
  | { readonly kind: 'crash' }
  /** A write takes one byte of what it is given; anything else works. */
  | { readonly kind: 'short' };

export interface FailingFiles {
  readonly files: FileOperations;
  /** Operations asked for so far, by name. */
  readonly asked: readonly string[];
}

/** `files` with `fault` at the `nth` operation (1 being the first), once and for all or once only. */
export function failing(files: FileOperations, fault: Fault, nth: number, lasts: 'once' | 'for good'): FailingFiles {
  const asked: string[] = [];
  let hasCrashed = false;

  async function guarded<T>(name: string, operation: () => Promise<T>): Promise<T> {
    if (hasCrashed) throw new Crash();
    asked.push(name);
    const isHit = lasts === 'once' ? asked.length === nth : asked.length >= nth;
    if (isHit && fault.kind === 'crash') {
      hasCrashed = true;
      throw new Crash();
    }
    if (isHit && fault.kind === 'error') throw platformError(fault.code, name);
    return operation();
  }

  function isShort(): boolean {
    const next = asked.length + 1;
    return fault.kind === 'short' && (lasts === 'once' ? next === nth : next >= nth);
  }

  function watched(file: OpenedFile): OpenedFile {
    return {
      write: (bytes) => {
        const given = isShort() ? bytes.subarray(0, 1) : bytes;
        return guarded('write', () => file.write(given));
      },
      read: (into) => guarded('read', () => file.read(into)),
      setMode: (mode) => guarded('setMode', () => file.setMode(mode)),
      flush: () => guarded('flush', () => file.flush()),
      // A real descriptor is given back even where the close is to fail.
      close: () => guarded('close', async () => undefined).finally(() => file.close()),
    };
  }

  return {
    asked,
    files: {
      open: (path, how, mode) => guarded(`open ${how}`, async () => watched(await files.open(path, how, mode))),
      rename: (from, to) => guarded('rename', () => files.rename(from, to)),
      link: (from, to) => guarded('link', () => files.link(from, to)),
      removeFolder: (folder) => guarded('removeFolder', () => files.removeFolder(folder)),
      realPath: (path) => guarded('realPath', () => files.realPath(path)),
      unlink: (path) => guarded('unlink', () => files.unlink(path)),
      flushFolder: (folder) => guarded('flushFolder', () => files.flushFolder(folder)),
      state: (path) => guarded('state', () => files.state(path)),
      readLink: (path) => guarded('readLink', () => files.readLink(path)),
      names: (folder) => guarded('names', () => files.names(folder)),
      makeFolder: (folder, mode) => guarded('makeFolder', () => files.makeFolder(folder, mode)),
    },
  };
}

/** An error as Node makes it. */
export function platformError(code: string, operation: string): NodeJS.ErrnoException {
  return Object.assign(new Error(`${code}: made to fail, ${operation}`), { code });
}
