/** The real file system. */
import { constants } from 'node:fs';
import * as fs from 'node:fs/promises';
import { failureCode, type FileOperations, type OpenedFile, type OpenHow } from './operations.ts';

const FLAGS: Record<OpenHow, number> = {
  read: constants.O_RDONLY,
  change: constants.O_RDWR,
  append: constants.O_WRONLY | constants.O_APPEND,
  new: constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL,
};

/** What a platform or file system answers that cannot flush a folder; there is nothing more to do then. */
const FOLDERS_CANNOT_BE_FLUSHED = new Set(['EINVAL', 'EISDIR', 'EPERM', 'EACCES', 'ENOTSUP', 'ENOSYS', 'EBADF']);

export const nodeFiles: FileOperations = {
  async open(path, how, mode) {
    return opened(await fs.open(path, FLAGS[how], mode));
  },
  rename: (from, to) => fs.rename(from, to),
  link: (from, to) => fs.link(from, to),
  unlink: (path) => fs.unlink(path),
  removeFolder: (folder) => fs.rmdir(folder),
  async flushFolder(folder) {
    try {
      const handle = await fs.open(folder, constants.O_RDONLY);
      try {
        await handle.sync();
      } finally {
        await handle.close();
      }
    } catch (error) {
      if (!FOLDERS_CANNOT_BE_FLUSHED.has(failureCode(error) ?? '')) throw error;
    }
  },
  async state(path) {
    const stats = await fs.stat(path);
    const kind = stats.isFile() ? 'file' : stats.isDirectory() ? 'folder' : 'other';
    return { kind, bytes: stats.size, mode: stats.mode & 0o777 };
  },
  readLink: (path) => fs.readlink(path),
  realPath: (path) => fs.realpath(path),
  names: (folder) => fs.readdir(folder),
  async makeFolder(folder, mode = 0o700) {
    await fs.mkdir(folder, { recursive: true, mode });
  },
};

function opened(handle: fs.FileHandle): OpenedFile {
  return {
    write: async (bytes) => (await handle.write(bytes, 0, bytes.length)).bytesWritten,
    read: async (into) => (await handle.read(into, 0, into.length)).bytesRead,
    setMode: (mode) => handle.chmod(mode),
    flush: () => handle.sync(),
    close: () => handle.close(),
  };
}
